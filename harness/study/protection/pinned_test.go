package protection

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// The wire with the least margin is the worst; of equal ones the one with the
// least margin where openings are published.
func TestWorstWire(t *testing.T) {
	wire := func(ratio, known float64) Wire {
		return Wire{Protection: fusing.Protection{Ratio: ratio, KnownRatio: known}}
	}
	for _, c := range []struct {
		name  string
		wires []Wire
		want  int
	}{
		{"least margin", []Wire{wire(2, 1), wire(1.5, 9), wire(3, 0.5)}, 1},
		{"least known margin", []Wire{wire(0, 2), wire(0, 1.5), wire(0, 3)}, 1},
		{"the first of equal ones", []Wire{wire(1, 1), wire(1, 1)}, 0},
	} {
		f := &Fuse{Wires: c.wires}
		if got := f.Worst(); got != &f.Wires[c.want] {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	if (&Fuse{}).Worst() != nil {
		t.Error("a worst of none")
	}
}

// Not selective for sure goes before not known, and that before selective.
func TestWorstComparison(t *testing.T) {
	sure, unknown, selective := fusing.Selectivity{Known: true}, fusing.Selectivity{}, fusing.Selectivity{Selective: true, Known: true}
	for _, c := range []struct {
		name string
		in   []fusing.Selectivity
		want int
	}{
		{"sure last", []fusing.Selectivity{selective, unknown, sure}, 2},
		{"sure first", []fusing.Selectivity{sure, unknown, selective}, 0},
		{"unknown before selective", []fusing.Selectivity{selective, unknown, selective}, 1},
		{"the first of equal ones", []fusing.Selectivity{sure, sure}, 0},
	} {
		var p Pair
		p.Shorts.Known, p.Shorts.Selective = true, true
		shorts := make([]*fault.Short, len(c.in))
		for i, s := range c.in {
			shorts[i] = &fault.Short{}
			p.at(shorts[i], s)
		}
		if p.At != shorts[c.want] {
			t.Errorf("%s: %+v", c.name, p.Shorts)
		}
	}
}

// The upper device's latest opening at or before the lower one's turns the order
// round. At four times 10 A the lower one opens within 5 s.
func TestInvertedAtTheEdge(t *testing.T) {
	of := func(maxS float64) fusing.Device {
		return fusing.Device{Type: &library.FuseType{Band: []library.TimePoint{{Multiple: 4, MinS: 0.1, MaxS: maxS}}},
			Rating: &library.FuseRating{RatingA: 10}, AmbientC: 23}
	}
	for upS, inverted := range map[float64]bool{4.9: true, 5: true, 5.1: false} {
		var p Pair
		sh := &fault.Short{}
		p.invert(sh, of(5), of(upS), 40)
		if (p.Inverted == sh) != inverted || inverted && (p.DownS != 5 || p.UpS != upS || p.InvertedA != 40) {
			t.Errorf("latest %g s above 5 s: %+v", upS, p)
		}
	}
}

// The greatest running current of a device counts, of solutions that converged;
// a load's own is its power over its rated voltage.
func TestRunningByHand(t *testing.T) {
	b := &circuit.Branch{}
	f := &Fuse{Branch: b}
	var sols []*solve.Solution
	for _, amps := range []float64{2, -5, 3, math.Inf(1)} {
		sols = append(sols, &solve.Solution{Status: solve.Converged, BranchA: []float64{amps}, Situation: &design.Situation{}})
	}
	sols = append(sols, &solve.Solution{Status: solve.Collapsed, BranchA: []float64{9}, Situation: &design.Situation{}})
	f.run(sols)
	if f.RunningA != 5 || f.Situation != sols[1].Situation {
		t.Errorf("%g A in the situation %p", f.RunningA, f.Situation)
	}
}
