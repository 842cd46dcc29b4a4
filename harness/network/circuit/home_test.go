package circuit_test

import (
	"slices"
	"testing"

	"fusewright/harness/network/circuit"

	"github.com/google/go-cmp/cmp"
)

// banked has a house battery whose negative cable leads to a frame stud, which a strap joins
// to the start battery, and loads that come home by one, the other or both.
const banked = `fusewright: 1
title: t
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 50 Ah, at: a}
places: {a: {}}
grounds:
  frame: {kind: ground block, at: a, returns to: battery negative}
batteries:
  house: {chemistry: AGM, capacity: 50 Ah, at: a, fed by: link, returns to: frame}
fuses:
  link: {type: blade C, rating: 10 A, at: a, fed by: battery}
  own: {type: blade C, rating: 10 A, at: a, fed by: house}
  start: {type: blade C, rating: 10 A, at: a, fed by: battery}
loads:
  straight: {power: 5 W, behaves: resistor, at: a, fed by: own, returns to: house negative}
  framed: {power: 5 W, behaves: resistor, at: a, fed by: own, returns to: frame}
  across: {power: 5 W, behaves: resistor, at: a, fed by: own, returns to: battery negative}
  twice: {power: 5 W, behaves: resistor, at: a, fed by: own, returns to: [house negative, battery negative]}
  of the first: {power: 5 W, behaves: resistor, at: a, fed by: start, returns to: house negative}
  of either: {power: 5 W, behaves: resistor, at: a, fed by: [own, start], returns to: house negative}
`

// A current returns to the battery that drives it: what the house battery feeds passes its
// cable only where it returns beyond it, and the strap only where it returns beyond that.
func TestWaysHome(t *testing.T) {
	c := build(t, "t.yaml", banked)
	negative := named(t, c, "house").Terminal("-").Node
	bond := negative.ReturnsBy()[0]
	strap := bond.B.ReturnsBy()[0]
	called := func(branches []*circuit.Branch) (names []string) {
		for _, b := range branches {
			switch b {
			case bond:
				names = append(names, "bond")
			case strap:
				names = append(names, "strap")
			default:
				names = append(names, "own")
			}
		}
		return names
	}
	for _, x := range []struct {
		load       string
		main, each []string
	}{
		{"straight", []string{"own"}, []string{"own"}},
		{"framed", []string{"own", "bond"}, []string{"bond", "own"}},
		{"across", []string{"own", "strap", "bond"}, []string{"bond", "own", "strap"}},
		{"twice", []string{"own"}, []string{"bond", "own", "own", "strap"}},
		{"of the first", []string{"own", "bond", "strap"}, []string{"bond", "own", "strap"}},
		{"of either", []string{"own"}, []string{"bond", "own", "strap"}},
	} {
		plus, minus := node(t, c, x.load, "+"), node(t, c, x.load, "-")
		main := c.MainReturn(minus, c.Home(plus))
		if diff := cmp.Diff(x.main, called(main.Branches)); diff != "" || !main.Whole {
			t.Errorf("main return of %s, whole: %t (-want +got):\n%s", x.load, main.Whole, diff)
		}
		each := called(slices.Collect(c.WaysHome(plus, minus)))
		slices.Sort(each)
		if diff := cmp.Diff(x.each, each); diff != "" {
			t.Errorf("ways home of %s (-want +got):\n%s", x.load, diff)
		}
	}
}
