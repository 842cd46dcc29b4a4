package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/solvetest"
	"fusewright/harness/proof/synth"
)

// tally is how often a local solution answered and how far it was from the
// whole network's.
type tally struct {
	answered, asked int
	farthestV       float64
}

// opens breaks every conductor in turn, in the part and in the whole.
func (y *tally) opens(t *testing.T, name string, c *circuit.Circuit, sit *design.Situation) {
	t.Helper()
	n := solve.Prepare(c).Network(sit, solve.Options{AcceptFolded: true})
	l := n.Local()
	if l == nil {
		return
	}
	for _, b := range c.Branches {
		if !b.Conductor() {
			continue
		}
		y.asked++
		p := l.Open(b)
		if p == nil {
			continue
		}
		want := n.Resolve(false, solve.OpenBranch(b))
		if want.Status != solve.Converged {
			t.Errorf("%s, %s: the whole network %s", name, b.Name, want.Status)
			continue
		}
		y.answered++
		for _, o := range c.Branches {
			got, whole := p.Volts(o), want.Volts(o)
			if off := math.Abs(got - whole); off > y.farthestV {
				y.farthestV = off
			}
			if math.IsNaN(got) != math.IsNaN(whole) || math.Abs(got-whole) > 1e-4 || p.Closed(o) != want.Closed[o.Index] {
				t.Errorf("%s, %s open: %s at %.9g V, whole network %.9g V; closed %v and %v", name, b.Name,
					o.Name, got, whole, p.Closed(o), want.Closed[o.Index])
				break
			}
			if off := math.Abs(p.Amps(o) - want.Amps(o)); p.Inside(o) && off > 1e-3*(1+math.Abs(want.Amps(o))) {
				t.Errorf("%s, %s open: %s carries %.9g A, whole network %.9g A", name, b.Name, o.Name, p.Amps(o), want.Amps(o))
				break
			}
		}
	}
}

// Opened branches give locally what the whole network gives: on networks drawn
// by chance, on odd designs and on realistic harnesses.
func TestLocalEqualsWhole(t *testing.T) {
	var chance, odd, real tally
	for seed := range uint64(60) {
		c, sit := solvetest.Random(7000 + seed)
		chance.opens(t, "network", c, sit)
	}
	for seed := range int64(60) {
		c := buildtest.Circuit(t, synth.Random(seed))
		for _, sit := range c.Design.Situations {
			odd.opens(t, "odd design", c, sit)
		}
	}
	for _, wires := range []int{40, 150, 400} {
		c := buildtest.Circuit(t, synth.YAML(wires, 2))
		for _, sit := range c.Design.Situations {
			real.opens(t, "harness", c, sit)
		}
	}
	t.Logf("networks %+v, odd designs %+v, harnesses %+v", chance, odd, real)
	if odd.answered < 1000 || real.answered < 1000 {
		t.Error("too few answered")
	}
}
