package fault_test

import (
	"math"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/fault"
)

// A short in the link of two batteries is fed from both ends, and each end's fuse carries its
// own battery's share: the two are the whole, which lies between what the start battery gives
// alone and what both give at their posts (12.7 V / 10 mΩ and 12.8 V / 14 mΩ).
func TestShortInALinkIsFedFromBothEnds(t *testing.T) {
	c := buildtest.Circuit(t, buildtest.File(t, "../../../testdata/rules/ok/house-by-sensing-relay.yaml"))
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

// TestBothEndsClear: every short of the demos with two batteries is ended by fuses, but on the stubs from a
// battery to its first fuse: in a link that two ways join both ends' fuses open, and what a charger gives into
// the short is waited for by none.
func TestBothEndsClear(t *testing.T) {
	for name, ends := range map[string]map[string]int{"sedge-sloop": {"W2": 2, "W3": 2, "W42": 2}, "hay-wain": {"W2": 1, "W3": 1, "W28": 1}} {
		c := buildtest.Circuit(t, buildtest.File(t, "../../../designs/"+name+".yaml"))
		study := fault.Compute(c)
		for _, w := range c.Wires {
			for _, sh := range study.OfWire(w) {
				r := sh.Results[fault.Strong]
				if sh.Fed && !r.Bare && (r.Device == nil || math.IsInf(r.SlowS, 1)) {
					t.Errorf("%s: %s, %v: no fuse ends it", name, w.Number, sh.Where)
				}
				fuses := map[*circuit.Branch]bool{}
				for _, x := range r.Through {
					fuses[x.Device] = true
				}
				if want, asked := ends[w.Number]; asked && len(fuses) != want {
					t.Errorf("%s: %s, %v: %d fuses carry it, want %d", name, w.Number, sh.Where, len(fuses), want)
				}
			}
		}
	}
}

// A short inside a charger is fed by the battery that it charges, and ended by the fuse at that battery; a DC-DC
// charger has one at its input besides, which the first battery feeds.
func TestShortInsideACharger(t *testing.T) {
	c := buildtest.Circuit(t, buildtest.File(t, "../../../designs/hay-wain.yaml"))
	want := map[string]string{"roof charger": "roof end", "output of booster": "booster end", "booster": "start end"}
	study := fault.Compute(c)
	for _, sh := range study.Shorts {
		if sh.Where != fault.Inside || want[sh.In()] == "" {
			continue
		}
		for state, r := range sh.Results {
			if !sh.Fed || r.Bare || r.Device == nil || r.Device.Part.Name != want[sh.In()] || !(r.SlowS < 1) {
				t.Errorf("%s, state %d: fed %t, bare %t, by %v in %g s", sh.In(), state, sh.Fed, r.Bare, r.Device, r.SlowS)
			}
		}
		if fuses := sh.Feeders(c.Guards(), c.Linked()); len(fuses) != 1 || fuses[0].Part.Name != want[sh.In()] {
			t.Errorf("%s: fed through %v", sh.In(), fuses)
		}
		delete(want, sh.In())
	}
	if len(want) > 0 {
		t.Errorf("no short in %v", want)
	}
}
