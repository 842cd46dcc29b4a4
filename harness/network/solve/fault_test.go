package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// A re-solve with a fault gives what a fresh solution with the same fault gives.
func TestResolveEqualsFreshSolution(t *testing.T) {
	for seed := range uint64(60) {
		c, sit := solvetest.Random(3000 + seed)
		plan := solve.Prepare(c)
		n := plan.Network(sit, solve.Options{AcceptFolded: true})
		base := n.Solution()
		for i, b := range c.Branches {
			faults := []solve.Change{solve.OpenBranch(b)}
			if b.Kind == circuit.WireBranch {
				faults = append(faults, solve.SetOhm(b, 2*b.Ohm),
					solve.Short(b.B, c.Nodes[0], 0.002), solve.Short(b.A, c.Nodes[(7*i)%len(c.Nodes)], 0.01))
			}
			for k, f := range faults {
				fresh := plan.Network(sit, solve.Options{AcceptFolded: true, Changes: []solve.Change{f}}).Solution()
				again := n.Resolve(false, f)
				compare(t, seed, b.Name, k, again, fresh)
			}
		}
		compare(t, seed, "afterwards", 0, n.Solution(), base)
		compare(t, seed, "no change", 0, n.Resolve(true), base)
	}
}

func compare(t *testing.T, seed uint64, name string, k int, got, want *solve.Solution) {
	t.Helper()
	if got.Status != want.Status {
		t.Errorf("seed %d %s %d: %q (%s), fresh %q (%s)", seed, name, k, got.Status, got.Why, want.Status, want.Why)
		return
	}
	for i := range got.NodeV {
		if got.Status == solve.Converged && math.Abs(got.NodeV[i]-want.NodeV[i]) > 1e-6 {
			t.Errorf("seed %d %s %d: node %d %.8f V, fresh %.8f V", seed, name, k, i, got.NodeV[i], want.NodeV[i])
			return
		}
	}
}

// Held contacts: the warm start finds the point that the cold start finds.
func TestHeldResolveEqualsFreshSolution(t *testing.T) {
	for seed := range uint64(60) {
		c, sit := solvetest.Random(4000 + seed)
		for _, b := range c.Branches { // no relays: nothing to hold
			if b.Closer != nil && (b.Closer.Coil != nil || b.Closer.Break != nil) {
				b.Closer = &circuit.Closer{Key: design.WhenKey}
			}
		}
		plan := solve.Prepare(c)
		n := plan.Network(sit, solve.Options{AcceptFolded: true})
		for _, w := range c.Wires {
			for k, f := range []solve.Change{solve.OpenBranch(w.Branch), solve.Short(w.Branch.B, c.Nodes[0], 0.001)} {
				fresh := plan.Network(sit, solve.Options{AcceptFolded: true, Changes: []solve.Change{f}}).Solution()
				compare(t, seed, w.Number, k, n.Resolve(true, f), fresh)
			}
		}
	}
}

// On resistances the rank-one update is exact.
func TestLinearUpdateIsExactOnResistances(t *testing.T) {
	b := solvetest.New()
	plus, x, y := b.Node("+"), b.Node("x"), b.Node("y")
	b.Battery(plus, 0.01)
	w1 := b.Resistor("R1", plus, x, 1)
	b.Resistor("R2", x, b.Ground(), 2)
	b.Resistor("R3", plus, y, 3)
	b.Resistor("R4", y, b.Ground(), 4)
	n := solve.Prepare(b.C).Network(solvetest.Situation(0), solve.Options{BatteryV: 12})
	changes := []solve.Change{solve.Short(x, y, 0.5), solve.SetOhm(w1, 7)}
	v, ok := n.Linear(changes...)
	if !ok {
		t.Fatal("no update")
	}
	for i, want := range n.Resolve(true, changes...).NodeV {
		near(t, "node", v[i], want, 1e-10)
	}
	if _, ok := n.Linear(solve.OpenBranch(w1), solve.OpenBranch(b.C.Branches[2])); ok {
		t.Error("an island was not noticed")
	}
}

// Prospective current by hand: 12.7 V behind 5 mΩ over 0.1 Ω of wire.
func TestBoltedShort(t *testing.T) {
	b := solvetest.New()
	plus, end := b.Node("+"), b.Node("end")
	b.Battery(plus, 0.005)
	w := b.Resistor("W1", plus, end, 0.1)
	b.Load("E1", end, b.Ground(), design.ConstantPower, 20, 12)
	n := solve.Prepare(b.C).Network(solvetest.Situation(0), solve.Options{BatteryV: 12.7, AcceptFolded: true})
	s := n.Resolve(true, solve.Short(end, b.Ground(), 1e-6))
	converged(t, s)
	near(t, "short", s.Amps(w), 12.7/(0.105+1e-6), 1e-2)
	_, ohm, ok := n.Thevenin(end, b.Ground())
	if !ok {
		t.Fatal("no Thevenin source")
	}
	load := s.Circuit.Branches[2]
	v := n.Solution().Volts(load)
	near(t, "resistance seen", ohm, 1/(1/0.105-20/(v*v)), 1e-9)
}

// Two batteries' worth of reversed posts: every load sees reversed voltage.
func TestReversedBattery(t *testing.T) {
	b := solvetest.New()
	plus := b.Node("+")
	b.Battery(plus, 0.1)
	load := b.Load("E1", plus, b.Ground(), design.Resistor, 24, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: -12})
	converged(t, s)
	near(t, "reversed", s.Volts(load), -12*6/6.1, 1e-9)
}

// Of two shorts one has a place in the order of elimination by the way, as what is between the neighbours
// of a node that is gone; the order that has one for the other must have one for both.
func TestTwoShortsAtOnce(t *testing.T) {
	b := solvetest.New()
	plus := b.Node("+")
	b.Battery(plus, 0.01)
	nodes := []*circuit.Node{plus}
	for _, name := range []string{"a", "b", "c", "d", "e", "f"} {
		n := b.Node(name)
		b.Resistor(name, nodes[len(nodes)-1], n, 1)
		nodes = append(nodes, n)
	}
	b.Resistor("end", nodes[len(nodes)-1], b.Ground(), 1)
	b.Resistor("rung", nodes[1], nodes[4], 1)
	for i, x := range nodes {
		for k, y := range nodes {
			first, second := solve.Short(x, nodes[(i+2)%len(nodes)], 0.5), solve.Short(y, nodes[(k+3)%len(nodes)], 0.5)
			both := solve.Solve(b.C, solvetest.Situation(0), solve.Options{Changes: []solve.Change{first, second}})
			other := solve.Solve(b.C, solvetest.Situation(0), solve.Options{Changes: []solve.Change{second, first}})
			converged(t, both)
			converged(t, other)
			for at := range nodes {
				near(t, "either way round", both.NodeV[nodes[at].Index], other.NodeV[nodes[at].Index], 1e-9)
			}
		}
	}
}
