package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var hotBundle = &Rule{
	Name:  "hot-bundle",
	Title: "a bundle is too hot for the insulation of a wire in it",
	Says:  "overheated by the wires beside it",
	Doc: "A wire that carries next to nothing is as hot as the place between the wires around it. The run is worked " +
		"out with the rated currents of what is on in each situation; the hottest counts. Wires that make " +
		"the heat themselves are wire-over-current. One finding per run and type of wire.",
	Formula:  "heat balance of the run: losses of its wires, air outside, cover by its current factor",
	Limits:   "class from the library",
	Why:      "a thin signal wire of a low class softens among hot ones and shorts to them",
	Change:   "use a wire of its neighbours' class, route it apart, or use thicker wire for those that heat",
	Severity: "advice above the class less the practice's margin; fault above the class; danger from 10 K above it, the spread of the heat balance",
	Source: "heat balance of a bundle (Churchill-Chu 1975, IEC 60287 scheme), held against published bundle curves; classes " +
		"of ISO 6722 and SAE J1128 (one source)",
	Bad: `
places: {battery tray: {ambient: 70 °C}, rear: {ambient: 70 °C}}
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  heat fuse: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
loads:
  heater: {current: 10.83 A, rated at: 14.3 V, behaves: resistor, at: rear, own switch: yes, stays live: "has its own switch", fed by: heat fuse, wire: {insulation: ISO 6722 thin wall class D, size: 1.5 mm²}, returns to: battery negative, return wire: {insulation: ISO 6722 thin wall class D, size: 1.5 mm²}}
  tail lamp: {power: 1 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {insulation: SAE J1128 GPT, size: 16 AWG}, returns to: frame}
situations:
  heated: {engine: cruise, on: [heater, tail lamp]}
accepted:
  - {rule: fuse-over-wire, part: tail lamp, wire: feed, severity: danger, figure: 2 A of 44 mA, reason: "shown for the place only"}
`,
	Mended: []string{"SAE J1128 GPT", "SAE J1128 GXL", `accepted:
  - {rule: fuse-over-wire, part: tail lamp, wire: feed, severity: danger, figure: 2 A of 44 mA, reason: "shown for the place only"}
`, ""},
	Run: func(p *Pass) {
		for _, b := range p.c.Bundles {
			p.judgeMedium(b)
		}
	},
}

// mediumSpreadK is how far the balance may be out where a bundle is 80 K above the air:
// published curves lie within 7 % of the current, 14 % of the rise.
const mediumSpreadK = 10

func (p *Pass) judgeMedium(b *circuit.Bundle) {
	for _, w := range b.Wires {
		a := p.allowed(w)
		if !a.known() || circuit.RunAmbientC(b.Run) >= a.LimitC {
			continue
		}
		if in, placeC := p.hottestAmong(b, w); over(placeC, a.LimitC) {
			p.reportMedium(w, b, in, placeC)
		}
	}
}

// hottestAmong is how hot a wire gets in the situations in which it is others that heat
// the run; -Inf where there is none.
func (f *facts) hottestAmong(b *circuit.Bundle, w *circuit.Wire) (in *design.Situation, placeC float64) {
	placeC = math.Inf(-1)
	for i, s := range f.c.Design.Situations {
		if h, ok := b.HeatIn(i, w); ok && (!h.Warms || f.idle(w)) && h.ConductorC > placeC {
			in, placeC = s, h.ConductorC
		}
	}
	return in, placeC
}

// idle tells of a wire that lies among others that it never carries more than a tenth of
// what it may carry alone, which warms it by a hundredth: what they make of it is hot-bundle.
func (f *facts) idle(w *circuit.Wire) bool {
	a := f.allowed(w)
	return a.Beside.RiseK > 0 && f.cornerAmps(w.Branch)(corner.AtWorst).decisive() <= a.FreeAirA*a.CoverShare*a.AltShare/10
}

func (p *Pass) reportMedium(w *circuit.Wire, b *circuit.Bundle, in *design.Situation, placeC float64) {
	t := w.Spec.Type
	severity := graver(over(placeC, t.ClassC), finding.Advice, finding.Fault)
	fin := ofWire(graver(over(placeC, t.ClassC+mediumSpreadK), severity, finding.Danger), w)
	fin.Cause = b.Run.Name + ", " + t.Name
	fin.Situation = in.Name
	value, most := quantity.Against(placeC, t.ClassC, quantity.Temperature)
	atMost(&fin, "between the wires", placeC, t.ClassC, "°C")
	p.say(fin, "the other wires in run %[2]q heat %[1]s to %[3]s; its insulation %[4]s is class %[5]s",
		w.Text(), b.Run.Name, value, t.Name, most)
}
