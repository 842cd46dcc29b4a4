package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var wireBelowMinimum = &Rule{
	Name:  "wire-below-minimum",
	Title: "a wire is thinner than the practice allows",
	Says:  "thinner than allowed",
	Doc: "The copper area of every wire against the smallest conductor of the practice, and against the " +
		"smallest for places that move when one of its ends moves or a run it is in flexes. Wires of relay coils, electronics and sensors that carry less than 1 A may have 0.35 mm², and on boats those in a sheath 0.75 mm².",
	Formula: "area ≥ minimum",
	Limits:  "the practice's least mm² and least flexing mm²",
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
		for _, w := range p.c.Wires {
			if w.Spec.Size != nil {
				p.judgeMinimum(w)
			}
		}
	},
}

func (p *Pass) judgeMinimum(w *circuit.Wire) {
	least, severity, key, where := p.practice.MinMm2, finding.Advice, "least mm2", ""
	if at := flexesAt(w); at != "" && p.practice.MinFlexMm2 > least {
		least, severity, key, where = p.practice.MinFlexMm2, finding.Fault, "least flexing mm2", " where it flexes at "+at
	}
	mm2 := w.Spec.Size.AreaMm2
	enough := func(least float64) bool { return mm2 >= least*0.995 } // sizes are nominal: 16 AWG is 1.31 mm² or 1.307
	if enough(least) || severity == finding.Advice && enough(p.leastOf(w)) {
		return
	}
	fin := ofWire(severity, w)
	value, most := quantity.Against(mm2, least, quantity.Area)
	atLeast(&fin, "area", mm2, least, "mm²")
	fin.Source = p.limitSource(key, false)
	p.say(fin, "%s has %s of copper; the minimum is %s%s",
		w.Text(), value, most, where)
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
