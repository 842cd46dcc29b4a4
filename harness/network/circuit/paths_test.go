package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"

	"github.com/google/go-cmp/cmp"
)

// parallel is a lamp fed over two ways that part and meet again, one fused and
// one not.
const parallel = start + `
fuses:
  main: {type: blade C, rating: 5 A, at: a, fed by: battery, wire: {length: 200 mm}}
switches:
  left: {rating: 5 A, at: a, fed by: main, wire: {length: 1 m}}
  right: {rating: 5 A, at: a, fed by: battery, wire: {length: 3 m}}
splices:
  both: {at: a, fed by: [left, right], wire: {length: 500 mm, sheathed: yes}}
loads:
  lamp: {power: 5 W, behaves: resistor, at: a, fed by: both, returns to: stud, wire: {length: 100 mm}}
`

func TestFeedPaths(t *testing.T) {
	small, two := read(t, "testdata/small.yaml"), build(t, "t.yaml", parallel)
	tests := []struct {
		name           string
		c              *circuit.Circuit
		part, terminal string
		want           []string
	}{
		{"lamp behind a relay", small, "left lamp", "+", []string{"W1 F1 W2 K1:30-87 W3 F3 W4"}},
		{"coil behind a tap", small, "keyed", "86", []string{"X1:key X1.F1 W8 F2 W9 S1 W10"}},
		{"two ways", two, "lamp", "+", []string{"W1 F1 W2 S1 W3 W4", "W5 S2 W6 W4"}},
		{"the source itself", small, "battery", "+", []string{""}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			paths, all := test.c.FeedPaths(node(t, test.c, test.part, test.terminal))
			var got []string
			for _, p := range paths {
				got = append(got, strings.Join(names(p.Branches), " "))
				if !p.Whole {
					t.Errorf("path %s is not whole", got[len(got)-1])
				}
			}
			if diff := cmp.Diff(test.want, got); diff != "" || !all {
				t.Errorf("all %t (-want +got):\n%s", all, diff)
			}
			main := strings.Join(names(test.c.MainFeed(node(t, test.c, test.part, test.terminal)).Branches), " ")
			if main != test.want[0] {
				t.Errorf("main feed %s, want %s", main, test.want[0])
			}
		})
	}
	if p := two.ParallelFeeds(); len(p) != 1 || p[0] != node(t, two, "both", "1") {
		t.Errorf("parallel feeds: %v", p)
	}
}

func TestReturnPaths(t *testing.T) {
	c := read(t, "testdata/small.yaml")
	paths, all := c.ReturnPaths(node(t, c, "left lamp", "-"))
	if len(paths) != 1 || !all || !paths[0].Whole {
		t.Fatalf("got %v, all %t", paths, all)
	}
	if got := strings.Join(names(paths[0].Branches), " "); got != "W12 W16 X4:frame" {
		t.Errorf("got %s", got)
	}
	// By hand: 80 mm to the block, 880 mm on to the stud.
	if got := paths[0].LengthM(); math.Abs(got-0.96) > 1e-12 {
		t.Errorf("length %g m, want 0.96", got)
	}
}

// TestManyPaths checks that feeds that part and meet again twenty times do not
// take 2^20 steps.
func TestManyPaths(t *testing.T) {
	var b strings.Builder
	b.WriteString(start + "splices:\n  s0: {at: a, fed by: battery}\n")
	for i := 1; i <= 20; i++ {
		n := string(rune('a' + i))
		prev := "s0"
		if i > 1 {
			prev = "s" + string(rune('a'+i-1))
		}
		b.WriteString("  x" + n + ": {at: a, fed by: " + prev + "}\n  y" + n + ": {at: a, fed by: " + prev + "}\n")
		b.WriteString("  s" + n + ": {at: a, fed by: [x" + n + ", y" + n + "]}\n")
	}
	c := build(t, "t.yaml", b.String())
	paths, all := c.FeedPaths(node(t, c, "su", "1"))
	if len(paths) != circuit.MaxPaths || all {
		t.Errorf("%d paths, all %t", len(paths), all)
	}
}

func TestGuards(t *testing.T) {
	small, two := read(t, "testdata/small.yaml"), build(t, "t.yaml", parallel)
	tests := []struct {
		name              string
		c                 *circuit.Circuit
		branch            string
		fuses             []string
		bareM, unsheathed float64 // -1 = not bare
	}{
		{"first wire of the battery", small, "W1", []string{}, 0.120, 0.120},
		{"its fuse: distance from the source", small, "F1", []string{}, 0.120, 0.120},
		{"behind the main fuse", small, "W3", []string{"F1"}, -1, -1},
		{"behind a way's fuse", small, "W4", []string{"F3"}, -1, -1},
		{"behind the factory fuse", small, "W8", []string{"X1.F1"}, -1, -1},
		{"factory fuse at the source", small, "X1.F1", []string{}, 0, 0},
		// By hand: 3 m to the right switch, 0.5 m sheathed to the splice, 0.1 m on.
		{"a fused and a bare feed", two, "W4", []string{"F1"}, 3.6, 3.1},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			g := test.c.Guards()[branch(t, test.c, test.branch).Index]
			if diff := cmp.Diff(test.fuses, names(g.Fuses)); diff != "" {
				t.Errorf("fuses (-want +got):\n%s", diff)
			}
			wantBare := test.bareM >= 0
			if g.Bare != wantBare || g.Unfed || (wantBare && (math.Abs(g.BareM-test.bareM) > 1e-12 ||
				math.Abs(g.UnsheathedM-test.unsheathed) > 1e-12)) {
				t.Errorf("got %+v", g)
			}
		})
	}
	for _, test := range []struct {
		name, branch   string
		nearest, above []string
		bare           bool
		upstream       []string
		c              *circuit.Circuit
	}{
		{"a fuse", "F1", []string{"F1"}, []string{}, true, []string{}, small},
		{"a wire behind two fuses", "W4", []string{"F3"}, []string{"F3"}, false, []string{"F3", "F1"}, small},
		{"a fuse behind another", "F3", []string{"F3"}, []string{"F1"}, false, []string{"F1"}, small},
		{"a fused and a bare feed", "W4", []string{"F1"}, []string{"F1"}, true, []string{"F1"}, two},
	} {
		g, b := test.c.Guards(), branch(t, test.c, test.branch)
		above, bare := g.Above(b.A)
		got := [][]string{names(g.Nearest(b)), names(above), names(g.Upstream(b))}
		if diff := cmp.Diff([][]string{test.nearest, test.above, test.upstream}, got); diff != "" || bare != test.bare {
			t.Errorf("%s: bare %t; nearest, above, upstream (-want +got):\n%s", test.name, bare, diff)
		}
	}
	lost := build(t, "t.yaml", start+"splices: {lost: {at: a}, next: {at: a, fed by: lost}}\n")
	if g := lost.Guards()[branch(t, lost, "W1").Index]; !g.Unfed || g.Bare {
		t.Errorf("a wire that nothing feeds: %+v", g)
	}
}

func TestBelow(t *testing.T) {
	c := read(t, "testdata/small.yaml")
	tests := []struct {
		name, branch string
		loads, coils []string
	}{
		{"main fuse", "F1", []string{"X3", "E1", "E2", "E3"}, []string{}},
		{"one way", "F3", []string{"E1", "E2"}, []string{}},
		{"trigger fuse, a coil alone", "F2", []string{}, []string{"K1:86-85"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			below := c.BelowBranch(branch(t, c, test.branch))
			if diff := cmp.Diff(test.loads, names(below.Loads)); diff != "" {
				t.Errorf("loads (-want +got):\n%s", diff)
			}
		})
	}
}
