package rules

import (
	"fmt"
	"iter"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var seriesConverters = &Rule{
	Name:  "series-converters",
	Title: "loads of constant power in series do not share the voltage",
	Says:  "does not share the voltage",
	Doc: "A load of constant power takes the more current the less voltage it has. Of two in series the one that gets a little less pulls itself down " +
		"further, and the other gets the rest: no operating point holds, whatever the solution of the network says. Such are LED lamps with a " +
		"driver, converters, radios.",
	Formula:  "none: it is a question of how they behave",
	Limits:   "one load of constant power in a string",
	Why:      "one cuts out on low voltage while the other gets all of it and fails",
	Change:   "feed each by itself, from a converter where the system voltage is too high for it",
	Severity: "danger: where such a string is on, nothing of the network can be worked out",
	Source:   "common practice, no source",
	Bad: `
loads:
  left lamp: {power: 5 W, rated at: 6 V, behaves: constant power, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  right lamp: {power: 5 W, rated at: 6 V, behaves: constant power, at: rear, in series with: left lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`,
	Good: `
loads:
  left lamp: {power: 5 W, rated at: 6 V, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  right lamp: {power: 5 W, rated at: 6 V, behaves: resistor, at: rear, in series with: left lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`,
	Run: func(p *Pass) {
		var dark []string // situations without an operating point
		for _, s := range p.allSolutions() {
			if s.Status == solve.Collapsed {
				dark = append(dark, s.Situation.Name)
			}
		}
		for converters := range p.converters() {
			for _, b := range converters {
				fin := ofPart(finding.Danger, b.Part)
				fin.Cause = converters[0].Part.Name
				what := fmt.Sprintf("%s is in series with %s, both of constant power: they do not share the voltage", b.Part.Name,
					wording.And(names(others(converters, b))))
				if len(dark) > 0 {
					what += "; nothing can be worked out in " + wording.And(dark)
				}
				p.say(fin, "%s", what)
			}
		}
	},
}

// converters goes through the loads of constant power of strings that have several.
func (f *facts) converters() iter.Seq[[]*circuit.Branch] {
	return func(yield func([]*circuit.Branch) bool) {
		for string := range f.strings() {
			var list []*circuit.Branch
			for _, b := range string {
				if b.Load.Behaves == design.ConstantPower {
					list = append(list, b)
				}
			}
			if len(list) > 1 && !yield(list) {
				return
			}
		}
	}
}

// amongConverters tells of a load of such a string, of which it is said that nothing is worked out.
func (f *facts) amongConverters(b *circuit.Branch) bool {
	for list := range f.converters() {
		if b.InSeries(list[0]) {
			return true
		}
	}
	return false
}

// collapsesInSeries tells of a solution that failed where converters in series have no operating
// point: that is said of them.
func (f *facts) collapsesInSeries(s *solve.Solution) bool {
	if s.Status == solve.Collapsed {
		for range f.converters() {
			return true
		}
	}
	return false
}
