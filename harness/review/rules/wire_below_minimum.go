package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var wireBelowMinimum = &Rule{
	Name:  "wire-below-minimum",
	Title: "a wire is thinner than the practice allows, or than is laid to what it serves",
	Says:  "thinner than allowed",
	Doc: "The copper area of every wire against the smallest conductor of the practice, and against the " +
		"smallest for places that move when one of its ends moves or a run it is in flexes. Wires of relay coils, electronics and sensors that carry less than 1 A may have 0.35 mm², and on boats those in a sheath 0.75 mm². " +
		"The wires of a load between it and its fuse, and its return up to where others join it, and those of a charger, at its input and its output, also against the `least wire` of the library or the design, which holds however short they are. " +
		"An AWG size counts as the metric one it is taken for.",
	Formula: "area ≥ minimum",
	Limits:  "the practice's least mm² and least flexing mm²; `least wire` of the load or charger",
	Why: "whatever its current, a thin wire breaks at the crimp when it is pulled or bent " +
		"often",
	Change:   "use the next size up",
	Severity: "advice; fault where it flexes",
	Source: "ISO 10133:2012 clause 7.7 on boats, 1 mm² (one source); 33 CFR 183.425(d) to (f) ask for 18 AWG in a sheath and 16 AWG " +
		"alone, and (g) leaves out electronics below 1 A and pigtails of less than 7 in (two sources); common practice on vehicles",
	Mend: MendWire,
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 0.35 mm²}, returns to: frame}
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`,
	Mended: []string{"size: 0.35 mm²", "size: 1 mm²"},
	Run: func(p *Pass) {
		asked := p.askedWires()
		for _, w := range p.c.Wires {
			if w.Spec.Size != nil && !p.judgeMinimum(w) {
				p.judgeAsked(w, asked[w])
			}
		}
	},
}

// judgeMinimum reports a wire too thin to last.
func (p *Pass) judgeMinimum(w *circuit.Wire) (reported bool) {
	least, severity, key, where := p.practice.MinMm2, finding.Advice, "least mm2", ""
	if at := flexesAt(w); at != "" && p.practice.MinFlexMm2 > least {
		least, severity, key, where = p.practice.MinFlexMm2, finding.Fault, "least flexing mm2", " where it flexes at "+at
	}
	mm2 := w.Spec.Size.AreaMm2
	enough := func(least float64) bool { return mm2 >= least*0.995 } // sizes are nominal: 16 AWG is 1.31 mm² or 1.307
	if enough(least) || severity == finding.Advice && enough(p.leastOf(w)) {
		return false
	}
	fin := ofWire(severity, w)
	value, most := quantity.Against(mm2, least, quantity.Area)
	atLeast(&fin, "area", mm2, least, "mm²")
	fin.Source = p.limitSource(key, false)
	p.say(fin, "%s has %s of copper; the minimum is %s%s",
		w.Text(), value, most, where)
	return true
}

// asked is the least wire to a device, in mm², with the device and its source.
type asked struct {
	mm2        float64
	of, source string
}

const ownFigure = "the design's own figure"

// askedWires are the wires for which a load or charger asks a thickness.
func (p *Pass) askedWires() map[*circuit.Wire]asked {
	list := map[*circuit.Wire]asked{}
	ask := func(a asked, way []*circuit.Branch) {
		for _, b := range way {
			if b.Wire != nil && a.mm2 > list[b.Wire].mm2 {
				list[b.Wire] = a
			}
		}
	}
	for part, x := range each[*design.Load](p.facts) {
		if b := loadBranch(part); b != nil && x.LeastMm2.Given() {
			source := ownFigure
			if x.LeastMm2.Pos.Line == 0 {
				source = x.Type.Wire.Source.String()
			}
			ask(asked{x.LeastMm2.Value, part.Name, source}, p.ownWay(b))
		}
	}
	for part, x := range each[*design.Charger](p.facts) {
		a := asked{x.Type.Wire.Mm2, part.Name, x.Type.Wire.Source.String()}
		if x.LeastMm2.Given() {
			a.mm2, a.source = x.LeastMm2.Value, ownFigure
		}
		ask(a, p.chargerCable(part.Output()))
		if in := part.Converts(); in != nil {
			feed, back := p.inputWay(in)
			ask(a, append(feed, back...))
		}
	}
	return list
}

// ownWay is what carries the current of one load alone: from its fuse to it, and back to where others join it.
func (p *Pass) ownWay(load *circuit.Branch) (way []*circuit.Branch) {
	alone := func(draws []*circuit.Branch) bool {
		return !slices.ContainsFunc(draws, func(b *circuit.Branch) bool { return b.Part != load.Part })
	}
	for n := load.A; len(n.FedBy()) == 1; n = n.FedBy()[0].A {
		b := n.FedBy()[0]
		if below := p.c.BelowBranch(b); !alone(below.Loads) || !alone(below.Coils) {
			break
		}
		if way = append(way, b); b.Kind == circuit.FuseBranch {
			break
		}
	}
	for n := load.B; len(n.ReturnsBy()) == 1 && alone(p.c.DrawsBack(n.ReturnsBy()[0])); n = n.ReturnsBy()[0].B {
		way = append(way, n.ReturnsBy()[0])
	}
	return way
}

// gaugeShare is how much thinner than a metric size the AWG size is that is taken for it: 14 AWG, 2.08 mm², for 2.5 mm².
const gaugeShare = 0.8

// judgeAsked reports a wire thinner than what it serves asks for.
func (p *Pass) judgeAsked(w *circuit.Wire, a asked) {
	mm2 := w.Spec.Size.AreaMm2
	if !over(gaugeShare*a.mm2, mm2) {
		return
	}
	fin := ofWire(finding.Advice, w)
	value, least := quantity.Against(mm2, a.mm2, quantity.Area)
	atLeast(&fin, "area", mm2, a.mm2, "mm²")
	fin.Why, fin.Change = "its margin of volts goes in joints and at its start, and its terminals take no more warmth", "use the size that it asks for"
	fin.Source = a.source
	p.say(fin, "%s has %s of copper; to %s at least %s is laid", w.Text(), value, a.of, least)
}

// The smallest conductors of what is no ordinary wire: of control currents, which vehicle wire
// is made for (common practice, no source), and of boats in a sheath (ISO 10133:2012 clause 7.7,
// 33 CFR 183.425(d): 18 AWG). controlA is up to where 33 CFR 183.425(g) leaves electronics out.
const controlMm2, sheathedMm2, controlA = 0.35, 0.75, 1.0

// leastOf is the smallest that such a wire may have; +Inf for others.
func (p *Pass) leastOf(w *circuit.Wire) float64 {
	switch {
	case controls(w) && p.cornerAmps(w.Branch)(corner.AtWorst).Corner < controlA:
		return controlMm2
	case p.practice.Afloat && w.Spec.Sheathed:
		return sheathedMm2
	}
	return math.Inf(1)
}

// controls tells of the wires of relay coils, electronics and sensors.
func controls(w *circuit.Wire) bool {
	if w.Branch == nil {
		return false
	}
	if w.Role == circuit.CoilFeedWire || w.Role == circuit.CoilReturnWire {
		return true
	}
	end := w.To
	if w.Role == circuit.ReturnWire {
		end = w.From
	}
	l, ok := end.Part.Source.(*design.Load)
	return ok && (l.Sign == design.SignElectronics || l.Sign == design.SignSensor)
}

// flexesAt names the run or place where a wire is bent in use; "" when nowhere.
func flexesAt(w *circuit.Wire) string {
	for _, b := range w.Route {
		if b.Run.Flexes {
			return b.Run.Name
		}
	}
	for _, t := range []*circuit.Terminal{w.From, w.To} {
		if len(w.Route) > 0 && t.Part.Place != nil && t.Part.Place.Moves {
			return t.Part.Place.Name
		}
	}
	return ""
}
