package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var noSwitchPosition = &Rule{
	Name:  "no-switch-position",
	Title: "no position of a switch gives what a situation has on",
	Says:  "no position gives all that is on",
	Doc: "Switches with positions, in each situation: the position that the situation says, or else the one that gives what is on, " +
		"the least else besides. Reported when loads that a situation lists get nothing there and would in another position: " +
		"what the switch cannot do, or a position that is not the one meant. `on: all` asks for no position.",
	Formula: "the loads that are on and behind the switch ⊆ the loads that one position gives",
	Limits:  "none",
	Why:     "the lamps that belong together do not burn together: a boat under way without its stern light",
	Change: "give the position the output that is missing, as in `navigation: [bow, stern]`, take a switch with such a position, " +
		"or correct the situation",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
switches:
  lights: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, positions: {off: none, ride: tail, camp: work}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lights tail, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lights work, wire: {size: 1 mm²}, returns to: frame}
situations:
  night: {engine: cruise, on: [tail lamp, work lamp]}
  halt: {engine: idle, on: [work lamp]}
`,
	Mended: []string{"camp: work", "camp: [tail, work]", "halt: {engine: idle, on: [work lamp]}", "halt: {engine: idle, on: [tail lamp, work lamp]}"},
	Run: func(p *Pass) {
		said := map[string]bool{}
		for _, s := range p.usable {
			_, unmet := circuit.Positions(p.c, s.Situation)
			for _, u := range unmet {
				p.reportUnmet(s.Situation, u, said)
			}
		}
	},
}

// reportUnmet reports a switch once for the same loads.
func (p *Pass) reportUnmet(s *design.Situation, u circuit.Unmet, said map[string]bool) {
	list := wording.And(names(u.Loads))
	if id := u.Switch.Name + "\x00" + list; said[id] {
		return
	} else {
		said[id] = true
	}
	fin := ofPart(finding.Fault, p.c.PartOf(u.Switch))
	fin.Situation = s.Name
	p.say(fin, "%s has no position that gives all that is on in %q: %s without power", u.Switch.Name, s.Name, list)
}

// unmet tells whether a load has no power because of the position of a switch.
func (f *facts) unmet(s *solve.Solution, b *circuit.Branch) bool {
	_, unmet := circuit.Positions(f.c, s.Situation)
	for _, u := range unmet {
		for _, x := range u.Loads {
			if x == b {
				return true
			}
		}
	}
	return false
}
