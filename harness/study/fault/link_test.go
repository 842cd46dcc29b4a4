package fault_test

import (
	"math"
	"os"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// A short in the link of two batteries is fed from both ends, and each end's fuse carries its
// own battery's share: the two are the whole, which lies between what the start battery gives
// alone and what both give at their posts (12.7 V / 10 mΩ and 12.8 V / 14 mΩ).
func TestShortInALinkIsFedFromBothEnds(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("link.yaml", src, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range c.Wires {
		if w.Role.Returns() || w.From.Part.Name != "start end" {
			continue
		}
		for _, sh := range fault.Compute(c).OfWire(w) {
			if sh.Where != fault.NearEnd {
				continue
			}
			for state, r := range sh.Results {
				if len(r.Through) != 2 || r.Bare || r.Device == nil || !(r.SlowS < 1) {
					t.Fatalf("state %d: %d fuses carry it, bare %t, cleared in %g s", state, len(r.Through), r.Bare, r.SlowS)
				}
				if sum := r.Through[0].Amps + r.Through[1].Amps; math.Abs(sum-r.CurrentA) > 0.02*r.CurrentA {
					t.Errorf("state %d: %.0f A through the fuses of %.0f A", state, sum, r.CurrentA)
				}
			}
			strong := sh.Results[fault.Strong]
			if strong.CurrentA < 800 || strong.CurrentA > 2200 {
				t.Errorf("%.0f A, of two batteries of 1270 and 910 A at their posts", strong.CurrentA)
			}
		}
	}
}
