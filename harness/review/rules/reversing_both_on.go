package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var reversingBothOn = &Rule{
	Name:  "reversing-both-on",
	Title: "both halves of a reversing contactor are on at once",
	Says:  "both directions at once",
	Doc: "Every motor between the two halves of a reversing contactor, or between two changeover relays that rest on " +
		"the return: whether both coils are on in a situation. Both ends of the motor are on the feed then, and it does not turn. " +
		"Nor does one with both ends on one half, in every situation.",
	Formula:  "in each situation at most one of the two coils on",
	Limits:   "none",
	Why:      "the motor is braked where it is meant to run, and a contactor of four single contacts is a short circuit then",
	Change:   "work the coils by one switch with a middle position, or feed each through the break contact of the other half",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lift fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
  pilot: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  up: {rating: 5 A, at: battery tray, momentary: yes, fed by: pilot, wire: {size: 1 mm², length: 100 mm}}
  down: {rating: 5 A, at: battery tray, momentary: yes, fed by: pilot, wire: {size: 1 mm², length: 100 mm}}
relays:
  raise: {form: mini changeover, at: battery tray, fed by: lift fuse, wire: {size: 1 mm², length: 100 mm}, returns to: frame, return wire: {size: 1 mm², length: 100 mm}, coil: {fed by: up, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
  lower: {form: mini changeover, at: battery tray, fed by: lift fuse, wire: {size: 1 mm², length: 100 mm}, returns to: frame, return wire: {size: 1 mm², length: 100 mm}, coil: {fed by: down, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  lift: {current: 2 A, rated at: 12 V, behaves: motor, inrush: {peak: 1.5, time: 50 ms}, protected motor: yes, on for: 10 s, every: 5 min, at: rear, fed by: raise, wire: {size: 1 mm²}, returns to: lower, return wire: {size: 1 mm²}}
situations:
  lifting: {engine: cruise, on: [lift]}
  lowering: {engine: cruise, reversed: [lift]}
  both pressed: {engine: cruise, closed: [up, down]}
`,
	Mended: []string{"closed: [up, down]", "closed: [up]"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if b := loadBranch(part); b != nil && b.Load.Reverses {
				p.judgeBothOn(part, b)
			}
		}
	},
}

func (p *Pass) judgeBothOn(part *circuit.Part, b *circuit.Branch) {
	near, far := b.Halves()
	fin := ofPart(finding.Fault, part)
	if onOneHalf(b) {
		fin.Change = "lead one end to the other half"
		p.say(fin, "both ends of %s are on the same contact of %s, so it never runs", part.Name, near.Terminals[0].Part.Name)
		return
	}
	i := slices.IndexFunc(p.usable, func(s *solve.Solution) bool { return bothOn(s, b) })
	if i < 0 {
		return
	}
	fin.Situation = p.usable[i].Situation.Name
	p.say(fin, "%s and %s are both on in %q, so %s does not turn", near.Terminals[0].Part.Name, far.Terminals[0].Part.Name,
		fin.Situation, part.Name)
}

// onOneHalf tells whether both ends of a motor that is to run either way are on one
// contact.
func onOneHalf(b *circuit.Branch) bool {
	if !b.Load.Reverses {
		return false
	}
	near, far := b.Halves()
	return near == far
}

// bothOn tells whether both ends of a motor that runs either way are on the feed.
func bothOn(s *solve.Solution, b *circuit.Branch) bool {
	if !b.Load.Reverses {
		return false
	}
	near, far := b.Halves()
	fed := func(n *circuit.Node) bool {
		return slices.ContainsFunc(n.FedBy(), func(x *circuit.Branch) bool { return s.Closed[x.Index] })
	}
	return fed(near) && fed(far)
}
