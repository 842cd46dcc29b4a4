package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var converterOverloaded = &Rule{
	Name:  "converter-overloaded",
	Title: "the loads of a converter take more than it gives",
	Says:  "too much for the converter",
	Doc: "What all loads and coils that a converter feeds draw together at the voltage that it holds, in every situation, against its rating. " +
		"Nothing is added for starts of motors and lamps: what a converter gives for a moment is its maker's figure.",
	Formula:  "sum of what is on, at the voltage held ≤ rating of the converter",
	Limits:   "`rating A` of the type",
	Why:      "it limits its current: the voltage of everything behind it falls, or it switches off and tries again",
	Change:   "fit a larger converter, or a second one for some of the loads, or run fewer at once",
	Severity: "fault; danger where a critical load is among them",
	Source:   "current limiting of converters: common practice, no source; ratings: library",
	Bad: `
system: 24 V
battery: {chemistry: AGM, capacity: 20 Ah, rate: 10 h, resistance: 20 mΩ, at: battery tray}
charging: {regulated: 28.4 V, output: {1300 rpm: 14 A, 3000 rpm: 24 A}, idle: 1300 rpm, cruise: 3000 rpm, hot derating: 0 %}
chargers:
  dropper: {type: 24 V to 12 V converter 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm², length: 100 mm}}
fuses:
  lamp fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: keyed feed, wire: {size: 4 mm², length: 100 mm}}
  left end: {type: blade C, rating: 5 A, at: battery tray, fed by: dropper, wire: {size: 4 mm², length: 100 mm}}
  right end: {type: blade C, rating: 5 A, at: battery tray, fed by: dropper, wire: {size: 4 mm², length: 100 mm}}
  seat end: {type: blade C, rating: 5 A, at: battery tray, fed by: dropper, wire: {size: 4 mm², length: 100 mm}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 30 A, spare: 20 A, supervised: no}
loads:
  left heater: {power: 40 W, behaves: resistor, at: rear, fed by: left end, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
  right heater: {power: 40 W, behaves: resistor, at: rear, fed by: right end, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
  tail lamp: {power: 40 W, behaves: resistor, at: rear, fed by: seat end, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
`,
	Mended: []string{"power: 40 W", "power: 30 W"},
	Run: func(p *Pass) {
		for part, x := range each[*design.Charger](p.facts) {
			if x.Converts() {
				p.judgeConverter(part, x)
			}
		}
	},
}

func (p *Pass) judgeConverter(part *circuit.Part, x *design.Charger) {
	most, in, critical := 0.0, "", false
	for _, s := range p.allSolutions() {
		a, c := p.askedOf(part, x, s)
		if a > most {
			most, in = a, s.Situation.Name
		}
		critical = critical || c
	}
	if !over(most, x.Type.RatingA) {
		return
	}
	fin := ofPart(graver(critical, finding.Fault, finding.Danger), part)
	fin.Situation = in
	atMost(&fin, "asked of the converter", most, x.Type.RatingA, "A")
	p.say(fin, "%s is asked for %s in %q; it gives %s", part.Name, amps(most), in, quantity.Plain(x.Type.RatingA, quantity.Current))
}

// askedOf is what draws behind a converter in a situation, at the voltage that it holds, and
// whether a critical load does.
func (f *facts) askedOf(part *circuit.Part, x *design.Charger, s *solve.Solution) (a float64, critical bool) {
	for _, b := range f.c.Branches {
		switch {
		case f.c.ConverterOf(b.A) != part || b.Follows(): // what follows in series draws the same
		case b.Load != nil && s.LoadOn[b.Index]:
			a += f.c.DrawAtA(b, x.HeldV())
			critical = critical || b.Load.Load.Critical
		case b.IsCoil() && s.BranchA[b.Index] != 0:
			a += f.c.DrawAtA(b, x.HeldV())
		}
	}
	return a, critical
}
