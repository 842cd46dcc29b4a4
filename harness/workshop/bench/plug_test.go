package bench_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/workshop/bench"
)

// A load with a plug is tested at the contacts of the plug, whether or not it
// minds its polarity: the return to battery negative, the feed through to where
// it comes from, with bounds of the wires that end there.
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
	if len(checks) != 2 {
		t.Fatalf("%d checks at the plug, want 2", len(checks))
	}
	back, through := checks[0], checks[1]
	feed, ret := c.Wires[2], c.Wires[3]
	for _, x := range []struct {
		check *bench.Check
		words []string
		ohm   float64
	}{
		{back, []string{ret.Number + " BK", "battery negative", feed.Number + " RD"},
			ret.ConductorOhm20 + ret.EndsOhm},
		{through, []string{feed.Number, "S1 s, out"}, feed.ConductorOhm20 + feed.EndsOhm},
	} {
		for _, word := range x.words {
			if !strings.Contains(x.check.Where, word) {
				t.Errorf("%q does not say %q", x.check.Where, word)
			}
		}
		if math.Abs(x.check.Nominal-x.ohm) > 1e-12 || x.check.High <= x.ohm || x.check.Ref != "E1" {
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
