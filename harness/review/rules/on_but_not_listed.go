package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var onButNotListed = &Rule{
	Name:  "on-but-not-listed",
	Title: "a load is on in a situation that does not list it",
	Says:  "on, though not listed",
	Doc: "Loads without a switch of their own that draw in a situation whose list leaves them out, while " +
		"another situation lists them: nothing separates them from the key or the battery switch, or another load's switch feeds them too. " +
		"A load that no situation names is taken to be on with the feed, unless it is made for moments, such as a horn or a winch (`on for` of its type): " +
		"then nothing but the key parts it from the battery, and it runs without end, listed or not. One that `stays live`, or whose feed does, is meant to be, and so is one " +
		"whose float or other switch the situation has `closed` for it alone. What is on with the key off and every switch open is live-with-key-off.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the list says that it can be off; it cannot, and whoever counts by the list counts too little",
	Change:   "list it there, or give it a switch: `own switch: yes`, or a switch in its feed",
	Severity: "advice; fault for a load made for moments that nothing but the key switches",
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
		always, keyed := p.live(untouched, nil), p.live(conditions{key: true}, conditional)
		for _, part := range p.partsOf(circuit.Load) {
			b := loadBranch(part)
			if b != nil && forMoments(b.Load.Load) && keyed.draws(b) && !always.draws(b) && !staysLive(part) {
				p.reportWithoutButton(part, b.Load.Load)
				continue
			}
			if b == nil || staysLive(part) || !p.listed(b.Load.Load) || always.draws(b) && !p.keyless().rest.draws(b) {
				continue
			}
			p.reportIn(part, p.situationsWhere(func(s *solve.Solution) bool {
				in := s.Situation
				return s.LoadOn[b.Index] && !lists(in, b.Load.Load) && !p.closedFor(b, in) &&
					!(in.Key == design.KeyOff && always.draws(b))
			}), "%s: on in %q though not listed; no switch of its own cuts it off")
		}
	},
}

// forMoments tells of a load that is made to be on for a moment and off again, such as a
// horn; a radio sends for moments, but draws no more than it may in between.
func forMoments(l *design.Load) bool {
	return l.Type != nil && l.Type.OnForS > 0 && l.Behaves != design.ConstantPower
}

// conditional tells of the contact of a tap that is live with a condition of the vehicle,
// such as its horn button.
func conditional(b *circuit.Branch) bool { return b.Closer != nil && b.Closer.Key.Condition() }

func (p *Pass) reportWithoutButton(part *circuit.Part, l *design.Load) {
	fin := ofPart(finding.Fault, part)
	fin.Why = "it is on as long as the key is: it overheats, flattens the battery, and cannot be used"
	fin.Change = "put a switch or a button into its feed or its relay's coil, or say `own switch: yes` where it has one"
	p.say(fin, "%s is made to be on for %s at most, and nothing but the key switches it", part.Name, l.OnForS.Text)
}

// closedFor tells whether a situation has a switch closed by hand that feeds a load, and
// no load that is listed.
func (f *facts) closedFor(b *circuit.Branch, s *design.Situation) bool {
	return slices.ContainsFunc(f.branchesOf(circuit.ContactBranch), func(gate *circuit.Branch) bool {
		if gate.Closer == nil || !slices.Contains(s.Closed, gate.Closer.Switch) {
			return false
		}
		below := f.drawsBelow(gate.B)
		return slices.Contains(below, b) && !slices.ContainsFunc(below, func(d *circuit.Branch) bool {
			return d.Load != nil && lists(s, d.Load.Load)
		})
	})
}

// listed tells whether a situation of the design lists a load by name.
func (f *facts) listed(l *design.Load) bool {
	return slices.ContainsFunc(f.d.Situations, func(s *design.Situation) bool { return !s.Derived && f.names(s, l) })
}

// lists tells whether a load is among those that a situation has on.
func lists(s *design.Situation, l *design.Load) bool { return slices.Contains(s.On, l) }
