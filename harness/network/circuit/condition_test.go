package circuit_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// A tap that is live with a condition is so in the situations that name it, whatever the
// key; with the key off only where a situation of the design says so.
func TestConditionTap(t *testing.T) {
	const text = start + `
vehicle loads: {horn: {power: 40 W, when: horn}, beam: {power: 60 W, when: [main beam, camp]}}
taps: {button: {at: a, hot: horn, fuse: 5 A}, dip: {at: a, hot: main beam, fuse: 5 A}}
loads:
  at horn: {power: 5 W, behaves: resistor, at: a, fed by: button, returns to: stud}
  at beam: {power: 5 W, behaves: resistor, at: a, fed by: dip, returns to: stud}
situations:
  day: {}
  night: {with: main beam}
  camp: {key: off, with: horn}
`
	c := build(t, "t.yaml", text)
	var contacts []*circuit.Branch
	for _, b := range c.Branches {
		if b.Closer != nil && b.Closer.Key != "" {
			contacts = append(contacts, b)
		}
	}
	own := func(s *design.Situation) (list []bool) {
		on := circuit.Present(c, s)
		for _, b := range c.Branches {
			if b.Load != nil && b.Load.Vehicle != nil {
				list = append(list, on[b.Index])
			}
		}
		return list
	}
	for i, want := range [][4]bool{{false, false, false, false}, {false, true, false, true}, {true, false, true, true}} {
		s := c.Design.Situations[i]
		closed, draws := circuit.Contacts(c, s), own(s)
		if got := [4]bool{closed[contacts[0].Index], closed[contacts[1].Index], draws[0], draws[1]}; got != want {
			t.Errorf("%s: horn, beam, and what draws with them: %v, want %v", s.Name, got, want)
		}
	}
	for _, hand := range []bool{false, true} {
		live := c.LiveKeyOff(hand)
		if got := [2]bool{live[contacts[0].B.Index], live[contacts[1].B.Index]}; got != [2]bool{hand, false} {
			t.Errorf("live with the key off, by hand %v: %v", hand, got)
		}
	}
}
