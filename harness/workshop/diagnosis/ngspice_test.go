package diagnosis

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// The readings of some benches are made by ngspice, so that the solver which diagnoses is not the one
// that made them.
func TestReadingsByNgspice(t *testing.T) {
	program, dir := referencetest.Program(t, "ngspice"), t.TempDir()
	count := uint64(6)
	if referencetest.Required() {
		count = uint64(max(6, *benches/10))
	}
	class := library.Default().Meter(UsualMeter)
	c, test := load(t, "fen-runner")
	suspects := newModel(c, class, library.Default()).suspects()
	var y tally
	decks, left := 0, 0
	for seed := range count {
		rng := rand.New(rand.NewPCG(seed, 4))
		truth := []*fault{drawn(rng, suspects)}
		w := newWorld(c, rng, truth...)
		own := w.solve
		w.solve = func(s *design.Situation, opt solve.Options) *solve.Solution {
			sol := own(s, opt) // for what is closed; its voltages and currents are replaced
			var deck bytes.Buffer
			if sol.Status != solve.Converged || spice.Write(&deck, c, s, opt) != nil {
				left++
				return sol
			}
			decks++
			got, err := referencetest.Simulate(program, dir, fmt.Sprintf("bench%d-%d", seed, decks), deck.String())
			if err != nil {
				t.Fatal(err)
			}
			return simulated(sol, got)
		}
		d, m, list, err := of(c, test, &readings.File{Readings: w.read(test, newGauge(rng, class, false), harnessOnly)})
		if err != nil {
			t.Fatal(err)
		}
		if !y.add(m, d, list, truth) {
			t.Logf("bench %d: %s\n%s", seed, show(truth), told(list))
		}
	}
	t.Logf("%d operating points by ngspice, %d without one: %v", decks, left, &y)
	if seen := y.benches - y.silent; decks < int(count) || y.inThree*10 < seen*8 {
		t.Errorf("of %d benches only %d are named among the first three", seen, y.inThree)
	}
}

// simulated is a solution with the voltages and currents of a simulator.
func simulated(sol *solve.Solution, got map[string]float64) *solve.Solution {
	out := *sol
	out.NodeV, out.BranchA = append([]float64(nil), sol.NodeV...), append([]float64(nil), sol.BranchA...)
	for i := range out.NodeV {
		if v, ok := got[fmt.Sprintf("v(n%d)", i)]; ok && !math.IsNaN(out.NodeV[i]) {
			out.NodeV[i] = v
		}
	}
	for i := range out.BranchA {
		x, ok := got[fmt.Sprintf("i(v%d)", i)]
		if !ok {
			x, ok = got[fmt.Sprintf("i(@r%d[i])", i)]
		}
		if ok {
			out.BranchA[i] = x
		}
	}
	return &out
}
