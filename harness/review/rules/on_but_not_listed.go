package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

var onButNotListed = &Rule{
	Name:  "on-but-not-listed",
	Title: "a load is on in a situation that does not list it",
	Says:  "on, though not listed",
	Doc: "Loads without a switch of their own that draw with the engine running in a situation whose list leaves them out, while " +
		"another situation lists them: nothing separates them from the key, or another load's switch feeds them too. " +
		"A load that no situation names, or that `stays live`, is taken to be on with the feed.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the list says that it can be off; it cannot, and whoever counts by the list counts too little",
	Change:   "list it there, or give it a switch: `own switch: yes`, or a switch in its feed",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  work lamp: {power: 5 W, behaves: resistor, own switch: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
situations:
  day: {engine: cruise, on: [work lamp]}
  night: {engine: cruise, on: [tail lamp]}
`,
	Mended: []string{"behaves: resistor, at", "behaves: resistor, own switch: yes, at"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			b := loadBranch(part)
			if b == nil || staysLive(part) || !p.listed(b.Load.Load) {
				continue
			}
			p.reportIn(part, p.situationsWhere(func(s *solve.Solution) bool {
				return s.Situation.EngineRPM > 0 && s.LoadOn[b.Index] && !lists(s.Situation, b.Load.Load)
			}), "%s: on in %q though not listed; no switch of its own cuts it off")
		}
	},
}

// listed tells whether a situation of the design lists a load by name.
func (f *facts) listed(l *design.Load) bool {
	return slices.ContainsFunc(f.d.Situations, func(s *design.Situation) bool { return !s.Derived && f.names(s, l) })
}

// lists tells whether a load is among those that a situation has on.
func lists(s *design.Situation, l *design.Load) bool { return slices.Contains(s.On, l) }
