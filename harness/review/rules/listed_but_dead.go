package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var listedButDead = &Rule{
	Name:  "listed-but-dead",
	Title: "a situation lists a load that has no power in it",
	Says:  "listed as on, without power",
	Doc: "Loads that a situation names as on and that draw nothing in it, though they do in another: the key is off, a " +
		"relay at rest, or a switch open that the load does not need by itself. `on: all` names none. A load that draws in no situation is " +
		"load-never-on.",
	Formula:  "none",
	Limits:   "none",
	Why:      "either the list or the wiring is not what was meant: the situation was checked without this load",
	Change:   "take it from the list, or feed it so that it can be on there; `closed` names switches to be closed besides",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 6 A, supervised: no}
loads:
  tail lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [tail lamp, work lamp]}
  camp: {key: off, on: [work lamp]}
`,
	Mended: []string{"  camp: {key: off, on: [work lamp]}\n", "  camp: {on: [work lamp]}\n"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			b := loadBranch(part)
			if b == nil || !p.draws(b) {
				continue // see load-never-on
			}
			p.reportIn(part, p.situationsWhere(func(s *solve.Solution) bool {
				return p.names(s.Situation, b.Load.Load) && !s.LoadOn[b.Index] && !bothOn(s, b) && !p.unmet(s, b)
			}), "%s: listed as on in %q, but without power there")
		}
	},
}

// names tells whether a situation lists a load by name, not as one of all; the only load of a design
// is all of them.
func (f *facts) names(s *design.Situation, l *design.Load) bool {
	return !s.All && len(f.d.Loads) > 1 && lists(s, l)
}

// reportIn asks about a load in the first of some situations, if any.
func (p *Pass) reportIn(part *circuit.Part, in []string, sentence string) {
	if len(in) == 0 {
		return
	}
	fin := ofPart(finding.Advice, part)
	fin.Situation, fin.Leave = in[0], true // the first, whatever is listed twice
	p.say(fin, sentence, part.Name, in[0])
}

// situationsWhere names the solved situations of the design, not the derived ones,
// in which something holds.
func (f *facts) situationsWhere(holds func(*solve.Solution) bool) (list []string) {
	for _, s := range f.usable {
		if !s.Situation.Derived && holds(s) {
			list = append(list, s.Situation.Name)
		}
	}
	return list
}
