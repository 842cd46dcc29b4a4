package bench_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/workshop/bench"
)

// A load with a plug is tested at the contacts of the plug, whether or not it
// minds its polarity: the return to battery negative there, the feed through to where
// it comes from with the wires.
func TestAtPlug(t *testing.T) {
	src := strings.Replace(tiny, "heater: {", "heater: {plug: sealed 1.5, ", 1)
	c := read(t, src)
	test := bench.Make(c)
	var checks []*bench.Check
	for _, s := range test.Sections {
		for _, g := range s.Groups {
			if s.Kind == bench.Polarity && strings.Contains(g.Title, "plugs") {
				checks = append(checks, g.Checks...)
			}
		}
	}
	if len(checks) != 1 {
		t.Fatalf("%d checks at the plug, want 1", len(checks))
	}
	feed, ret := c.Wires[2], c.Wires[3]
	through := find(t, test, bench.Continuity, feed.Number, "")
	for _, x := range []struct {
		check *bench.Check
		ref   string
		words []string
		ohm   float64
	}{
		{checks[0], "E1", []string{ret.Number + " BK", feed.Number + " RD"}, ret.ConductorOhm20 + ret.EndsOhm},
		{through, feed.Number, []string{"S1 out", "+"}, feed.ConductorOhm20 + feed.EndsOhm},
	} {
		for _, word := range x.words {
			if where := x.check.Where; !strings.Contains(where, word) && !strings.Contains("S1 "+where, word) {
				t.Errorf("%q does not say %q", where, word)
			}
		}
		if math.Abs(x.check.Nominal-x.ohm) > 1e-12 || x.check.High <= x.ohm || x.check.Ref != x.ref {
			t.Errorf("%s: %g to at most %g Ω, want %g Ω", x.check.Ref, x.check.Nominal, x.check.High, x.ohm)
		}
	}
	for _, s := range bench.Make(read(t, tiny)).Sections {
		for _, g := range s.Groups {
			if strings.Contains(g.Title, "plugs") {
				t.Error("a test at plugs without a plug")
			}
		}
	}
}
