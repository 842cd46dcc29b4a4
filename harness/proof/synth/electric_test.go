package synth_test

import (
	"bytes"
	"fmt"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/budget"
)

// TestElectrical checks that synthetic harnesses are sound ones: every
// situation has an operating point, and almost nothing is found in them, so
// that benchmarks measure the work on an ordinary design. More dangers than one
// in a hundred wires would mean that the sizes are no longer a builder's.
func TestElectrical(t *testing.T) {
	for _, n := range []int{10, 30, 100, 400, 1000} {
		for seed := int64(1); seed <= 3; seed++ {
			t.Run(fmt.Sprintf("%d wires, seed %d", n, seed), func(t *testing.T) {
				c := build(t, synth.YAML(n, seed))
				sols := solve.All(c, solve.Options{})
				for _, s := range sols {
					if s.Status != solve.Converged {
						t.Errorf("%s: %s: %s", s.Situation.Name, s.Status, s.Why)
					}
				}
				found := rules.Check(&rules.Input{Circuit: c, Solutions: sols, Budget: budget.Compute(c, sols)})
				if dangers := finding.Count(found, finding.Danger); dangers*100 > n {
					t.Errorf("%d dangers, the first: %s", dangers, found[0].What)
				}
			})
		}
	}
}

// TestRandom reads many random networks; each seed gives one text, and feeds
// that meet again do occur.
func TestRandom(t *testing.T) {
	meets := 0
	for seed := int64(0); seed < 200; seed++ {
		src := synth.Random(seed)
		if !bytes.Equal(src, synth.Random(seed)) {
			t.Fatalf("seed %d gives two texts", seed)
		}
		if len(build(t, src).ParallelFeeds()) > 0 {
			meets++
		}
	}
	if meets < 100 {
		t.Errorf("feeds meet in %d of 200 networks", meets)
	}
}
