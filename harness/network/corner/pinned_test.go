package corner

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

func given(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		t.Errorf("%s: %.10g, want %.10g", what, got, want)
	}
}

// flowing is a nominal result in which the first branch carries a current.
func flowing(amps float64) *warm.Result {
	return &warm.Result{Solution: &solve.Solution{Status: solve.Converged, BranchA: []float64{amps}}}
}

// A fuse of 15 A is 1.7 times as resistant at its rating, which it may reach at
// a third more than nominal; warm with the square of the current.
func TestAgedByHand(t *testing.T) {
	tol := &Tolerances{Relay: 2, Switch: 3, HotFuse: 1.7}
	fuse := &circuit.Branch{Kind: circuit.FuseBranch, Fuse: &circuit.FuseSpec{Rating: &library.FuseRating{RatingA: 15}}}
	near(t, "fuse at 0 A", tol.Aged(fuse, flowing(0)).Factor(), 1)
	near(t, "fuse at 5.625 A: half of its rating, a quarter of the heat", tol.Aged(fuse, flowing(5.625)).Factor(), 1.175)
	near(t, "fuse at 11.25 A: its rating", tol.Aged(fuse, flowing(11.25)).Factor(), 1.7)
	near(t, "fuse at 12 A, no more", tol.Aged(fuse, flowing(-12)).Factor(), 1.7)
	near(t, "contact of a relay", tol.Aged(&circuit.Branch{Kind: circuit.ContactBranch, Closer: &circuit.Closer{Coil: fuse}}, nil).Factor(), 2)
	near(t, "contact at rest", tol.Aged(&circuit.Branch{Kind: circuit.ContactBranch, Closer: &circuit.Closer{Break: fuse}}, nil).Factor(), 2)
	near(t, "contact of a switch", tol.Aged(&circuit.Branch{Kind: circuit.ContactBranch, Closer: &circuit.Closer{Switch: &design.Switch{}}}, nil).Factor(), 3)
	near(t, "assumed already", tol.Aged(&circuit.Branch{Assumed: "x", Kind: circuit.FuseBranch}, nil).Factor(), 1)
}

func TestPowerByHand(t *testing.T) {
	tol := &Tolerances{Power: map[design.Behaviour]float64{design.Motor: 0.2}}
	own := &circuit.Branch{Load: &circuit.LoadSpec{Behaves: design.Motor, Load: &design.Load{Tolerance: given(0.05)}}}
	usual := &circuit.Branch{Load: &circuit.LoadSpec{Behaves: design.Motor, Load: &design.Load{}}}
	near(t, "the design's own", tol.PowerFactor(own), 1.05)
	near(t, "by behaviour", tol.PowerFactor(usual), 1.2)
	for _, c := range []struct {
		name string
		load design.Load
		want float64
	}{
		{"a figure that is the highest", design.Load{PowerW: 21, Figure: "highest"}, 1},
		{"the highest, and a tolerance all the same", design.Load{PowerW: 21, Figure: "highest", Tolerance: given(0.05)}, 1.05},
		{"26.5 W of 21 W, by regulation", design.Load{PowerW: 21, MostW: 26.5}, 26.5 / 21},
		{"no less than the behaviour's where the most is below the figure", design.Load{PowerW: 30, MostW: 26.5}, 1.2},
	} {
		near(t, c.name, tol.PowerFactor(&circuit.Branch{Load: &circuit.LoadSpec{Behaves: design.Motor, Load: &c.load}}), c.want)
	}
	standby := &circuit.LoadSpec{Behaves: design.Motor, Load: &design.Load{Figure: "highest"}, Standby: true}
	near(t, "standby", tol.PowerFactor(&circuit.Branch{Load: standby}), 1.2)
}

// The regulator is off by 0.5 V either way, within 10.5 to 16 V; never below its
// own voltage in the high states. The weak state is hot and half discharged.
func TestSourceByHand(t *testing.T) {
	tol := &Tolerances{LowestV: 10.5, HighestV: 16, RegulatedV: 0.5}
	for _, c := range []struct{ regulated, weak, high float64 }{
		{14, 13.5, 14.5}, {15.8, 15.3, 16}, {16.4, 15.9, 16.4}, {10.8, 10.5, 11.3},
	} {
		d := &design.Design{Charging: design.Charging{RegulatedV: given(c.regulated), HotDerating: given(0.25)}}
		weak, high := tol.options(d, Weak, nil), tol.options(d, High, nil)
		near(t, "weak regulator", weak.RegulatedV, c.weak)
		near(t, "high regulator", high.RegulatedV, c.high)
		if weak.ColdCharging || !high.ColdCharging || high.Discharged != 0 || weak.Discharged != 0 {
			t.Errorf("high: cold %t, discharged %g; weak: cold %t, discharged %g", high.ColdCharging, high.Discharged,
				weak.ColdCharging, weak.Discharged)
		}
	}
	chem := *library.Default().Chemistry("AGM")
	d := &design.Design{SystemV: given(12), Battery: design.Battery{Chemistry: &chem, CapacityAh: given(12), ResistanceOhm: given(0.010)}}
	weak := tol.options(d, Weak, nil)
	near(t, "discharged to the reserve", weak.Discharged, 0.4)
	near(t, "volts there", weak.BatteryV, chem.OpenCircuitV(0.6))
	near(t, "resistance there", weak.BatteryOhm, 0.014)
}

// The corner that is worst counts; nominal where none is worse. Deviations of
// one tolerance at a time combine by the root of the sum of their squares.
func TestWorstByHand(t *testing.T) {
	s := &Set{}
	for state, amps := range map[State]float64{Nominal: 3, Weak: 2, High: 5, Fresh: 4,
		StrongLoads: 3.3, AgedContacts: 2.9, HotPlaces: 3.4, LowSource: 2.4, HighSource: 4.2} {
		s.Results[state] = []*warm.Result{flowing(amps)}
	}
	b := &circuit.Branch{}
	most := 3 + math.Sqrt(0.3*0.3+0.4*0.4+1.2*1.2) // 4.3
	if v := s.Amps(0, b); v.Nominal != 3 || math.Abs(v.Likely-most) > 1e-12 || v.Corner != 5 || v.At != High {
		t.Errorf("%+v, likely %g wanted", v, most)
	}
	least := 3 - math.Sqrt(0.1*0.1+0.6*0.6)
	if v := s.worst(0, -1, func(r *warm.Result) float64 { return r.Solution.BranchA[0] }); math.Abs(v.Likely-least) > 1e-12 || v.Corner != 2 || v.At != Weak {
		t.Errorf("%+v, likely %g wanted", v, least)
	}
	s.Results[High][0].Solution.Status = solve.Collapsed
	if v := s.Amps(0, b); v.Corner != 4.2 || v.At != HighSource || v.Likely != 4.2 {
		t.Errorf("one tolerance alone is worse than all at once, and the root beyond it: %+v", v)
	}
	s.Results[HighSource][0] = flowing(3.9)
	if v := s.Amps(0, b); v.Corner != 4 || v.At != Fresh {
		t.Errorf("with a corner that has no solution: %+v", v)
	}
	for state := Fresh; state < states; state++ {
		s.Results[state][0] = flowing(1)
	}
	if v := s.Amps(0, b); v.Corner != 3 || v.At != Nominal {
		t.Errorf("no corner is worse: %+v", v)
	}
}
