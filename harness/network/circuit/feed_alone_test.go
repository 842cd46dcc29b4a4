package circuit_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
)

// Each feed of a load that several switches feed is tried alone, in the situation with the key
// on that has most on; a load with one feed, or that is never on, is not.
func TestAloneByHand(t *testing.T) {
	const two = "switches:\n  one: {type: toggle 20 A, at: rear, fed by: lamp fuse}\n  other: {type: toggle 20 A, at: rear, fed by: lamp fuse}\n" +
		"loads:\n  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: FEED, returns to: frame}\n" +
		"  plate lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame, own switch: yes}\n" +
		"situations:\n  parked: {key: off, on: [tail lamp, plate lamp]}\n  few: {engine: idle, on: [ON]}\n  many: {engine: idle, on: [plate lamp, ON]}\n"
	for _, c := range []struct {
		name, feed, on string
		want           []string
	}{
		{"two feeds", "[one, other]", "tail lamp", []string{"many, tail lamp through one alone", "many, tail lamp through other alone"}},
		{"one feed", "one", "tail lamp", nil},
	} {
		net := buildtest.Circuit(t, example.Design(strings.NewReplacer("FEED", c.feed, "ON", c.on).Replace(two)))
		var got []string
		for _, s := range net.Alone() {
			got = append(got, s.Name)
			if len(s.Closed) != 1 || len(s.Open) != 1 || s.Closed[0] == s.Open[0] {
				t.Errorf("%s: closed %v, open %v", s.Name, s.Closed, s.Open)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
		checkFeedIn(t, net)
	}
}

// checkFeedIn: the feed that carries is taken, whichever it is; the first when none does.
func checkFeedIn(t *testing.T, c *circuit.Circuit) {
	t.Helper()
	to := c.PartOf(c.Design.Loads[0]).Terminal("+").Node
	paths, _ := c.FeedPaths(to)
	if first := c.FeedIn(to, make([]float64, len(c.Branches))); !slices.Equal(first.Branches, paths[0].Branches) {
		t.Error("not the main feed where none carries")
	}
	for _, want := range paths {
		amps := make([]float64, len(c.Branches))
		for _, b := range want.Branches {
			amps[b.Index] = 2
		}
		for _, b := range c.Branches {
			amps[b.Index] += 0.01 // what leaks over an open contact
		}
		if got := c.FeedIn(to, amps); !slices.Equal(got.Branches, want.Branches) {
			t.Errorf("the feed that carries is %v, want %v", got.Wires(), want.Wires())
		}
	}
}
