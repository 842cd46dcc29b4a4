package fault

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
)

// A short told by its stem is the one that following every branch tells: the same
// current and device, and a worst wire that is as near to damage. Where coils hang
// on the way the stem's current is the most on it, never less.
func TestStemsAgainstEveryBranch(t *testing.T) {
	texts := map[string][]byte{"made": synth.YAML(120, 3)}
	for _, form := range synth.Forms {
		texts[string(form)] = form.YAML(120, 2)
	}
	for seed := range int64(20) {
		texts[fmt.Sprint("random ", seed)] = synth.Random(seed)
	}
	shorts := 0
	for name, text := range texts {
		c := buildtest.Circuit(t, text)
		by, each := shortsWith(c, 1), shortsWith(c, math.MaxInt)
		for i, sh := range by.Shorts {
			for state := range sh.Results {
				shorts++
				sameShort(t, fmt.Sprintf("%s, short %d, state %d", name, i, state), &sh.Results[state],
					&each.Shorts[i].Results[state], len(coils(c)) > 0)
			}
		}
	}
	if shorts < 2000 {
		t.Errorf("%d shorts are too few to tell", shorts)
	}
}

// What a short looks at on its way does not grow with the way.
func TestStemsStayShort(t *testing.T) {
	for _, wires := range []int{300, 3000} {
		for _, form := range synth.Forms {
			c := buildtest.Circuit(t, form.YAML(wires, 1))
			s, most, longest := newStems(c, NewWires(c)), 0, 0
			for i := range c.Nodes {
				for _, way := range []stem{s.feed[i], s.back[i]} {
					longest = max(longest, way.long)
					n := 0
					for w := way.wires; w != nil; w = w.next {
						n++
					}
					most = max(most, n)
				}
			}
			if deep := form == synth.Chain || form == synth.Ladder; deep && longest < wires/5 || most > 12 {
				t.Errorf("%s of %d wires: a way of %d branches looks at %d wires", form, wires, longest, most)
			}
		}
	}
}

func shortsWith(c *circuit.Circuit, long int) *Study {
	was := longStem
	defer func() { longStem = was }()
	longStem = long
	return ShortsBy(c, conductor.NewRater(c.Design.Library, c.Design.Practice))
}

func sameShort(t *testing.T, name string, got, want *Result, coils bool) {
	t.Helper()
	if got.CurrentA != want.CurrentA || got.Device != want.Device || got.Bare != want.Bare ||
		got.Exceeded != want.Exceeded || !near(got.SlowS, want.SlowS, 1e-6) || !near(got.FastS, want.FastS, 1e-6) {
		t.Errorf("%s: %+v, want %+v", name, got.Clearing, want.Clearing)
	}
	if (got.Worst == nil) != (want.Worst == nil) {
		t.Errorf("%s: a wire is missing", name)
		return
	}
	if got.Worst == nil {
		return
	}
	m, w := got.Worst.Margin(), want.Worst.Margin()
	if !near(m, w, 1e-6) && !(coils && m < w) {
		t.Errorf("%s: margin %g of %s, want %g of %s", name, m, got.Worst.Wire.Number, w, want.Worst.Wire.Number)
	}
	if a, b := got.Worst.EndC, want.Worst.EndC; near(m, w, 1e-6) && !near(a, b, 1e-6) && !(coils && a > b) {
		t.Errorf("%s: %s at %g °C, want %s at %g °C", name, got.Worst.Wire.Number, a, want.Worst.Wire.Number, b)
	}
}

func near(a, b, share float64) bool { return a == b || math.Abs(a-b) <= share*math.Abs(b) }
