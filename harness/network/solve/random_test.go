package solve_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// The operating point against a dense solution by gonum of the same network,
// with each load as the resistance and each source as the current found there.
func TestRandomAgainstDense(t *testing.T) {
	for seed := range uint64(400) {
		c, sit := solvetest.Random(seed)
		if seed >= 200 {
			c, sit = solvetest.RandomValves(seed)
		}
		s := solve.Solve(c, sit, solve.Options{})
		converged(t, s)
		compareDense(t, seed, c, s)
	}
}

func compareDense(t *testing.T, seed uint64, c *circuit.Circuit, s *solve.Solution) {
	t.Helper()
	n := len(c.Nodes)
	g, rhs := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
	stamp := func(a, b int, siemens float64) {
		g.Set(a, a, g.At(a, a)+siemens)
		g.Set(b, b, g.At(b, b)+siemens)
		g.Set(a, b, g.At(a, b)-siemens)
		g.Set(b, a, g.At(b, a)-siemens)
	}
	for i, b := range c.Branches {
		switch {
		case math.IsInf(s.Ohm[i], 1):
		case b.Kind == circuit.BatteryBranch, b.Kind == circuit.ChargerBranch:
			rhs.SetVec(b.A.Index, rhs.AtVec(b.A.Index)-s.BranchA[i])
			rhs.SetVec(b.B.Index, rhs.AtVec(b.B.Index)+s.BranchA[i])
			stamp(b.A.Index, b.B.Index, 1) // a source of current that is held by 1 S at its voltage
			v := s.Volts(b)
			rhs.SetVec(b.A.Index, rhs.AtVec(b.A.Index)+v)
			rhs.SetVec(b.B.Index, rhs.AtVec(b.B.Index)-v)
		default:
			stamp(b.A.Index, b.B.Index, 1/s.Ohm[i])
		}
	}
	for i := range n {
		if i == 0 || math.IsNaN(s.NodeV[i]) {
			for j := range n {
				g.Set(i, j, 0)
			}
			g.Set(i, i, 1)
			rhs.SetVec(i, 0)
		}
	}
	var v mat.VecDense
	if err := v.SolveVec(g, rhs); err != nil {
		if _, bad := err.(mat.Condition); !bad {
			t.Fatalf("seed %d: %v", seed, err)
		}
	}
	for i, got := range s.NodeV {
		if !math.IsNaN(got) && math.Abs(got-v.AtVec(i)) > 1e-7 {
			t.Errorf("seed %d node %d: %.9f V, dense %.9f V", seed, i, got, v.AtVec(i))
		}
	}
}

// Currents at every node sum to nothing, the power balances within a millionth,
// and each charging and battery current fits the posts.
func TestRandomBalances(t *testing.T) {
	for seed := range uint64(500) {
		c, sit := solvetest.Random(1000 + seed)
		s := solve.Solve(c, sit, solve.Options{})
		converged(t, s)
		sum, used := make([]float64, len(c.Nodes)), 0.0
		for i, b := range c.Branches {
			sum[b.A.Index] += s.BranchA[i]
			sum[b.B.Index] -= s.BranchA[i]
			if b.Kind == circuit.LoadBranch && s.BranchA[i] != 0 {
				used += s.Volts(b) * s.BranchA[i]
			}
		}
		for i, x := range sum {
			if math.Abs(x) > 1e-7 {
				t.Errorf("seed %d: %g A missing at node %d", seed, x, i)
			}
		}
		if math.Abs(s.PowerErrorW) > 1e-6*used+1e-8 {
			t.Errorf("seed %d: power error %g W of %g W", seed, s.PowerErrorW, used)
		}
	}
}

// Twice the length of twice the area is the same resistance, so every voltage stays.
func TestScalingLengthAndAreaKeepsDrops(t *testing.T) {
	build := func(scale float64) *solve.Solution {
		b := solvetest.New()
		plus, mid, end := b.Node("+"), b.Node("mid"), b.Node("end")
		b.Battery(plus, 0.01)
		b.Wire("W1", plus, mid, 2*scale, 2.5*scale)
		b.Wire("W2", mid, end, 1.3*scale, 1*scale)
		b.Load("E1", mid, b.Ground(), design.FilamentLamp, 55, 12)
		b.Load("E2", end, b.Ground(), design.ConstantPower, 40, 12)
		return solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	}
	base := build(1)
	for _, scale := range []float64{0.1, 2, 37} {
		for i, v := range build(scale).NodeV {
			near(t, "node voltage", v, base.NodeV[i], 1e-10)
		}
	}
}

// A second wire beside another never lowers the voltage of the load at its end:
// of every kind in a harness, and of resistors in trees of feeds. (Loads
// elsewhere do see a little less: the first one now takes more from the battery.)
func TestParallelWireNeverLowersLoads(t *testing.T) {
	for wires := 10; wires <= 100; wires += 30 {
		c, sit := solvetest.Harness(wires)
		plan := solve.Prepare(c)
		n := plan.Network(sit, solve.Options{NoCharging: true})
		base := n.Solution()
		converged(t, base)
		for _, w := range c.Wires {
			s := n.Resolve(true, solve.SetOhm(w.Branch, base.Ohm[w.Branch.Index]/2))
			converged(t, s)
			own := loadOf(c, w)
			if own != nil && s.Volts(own) < base.Volts(own)-1e-9 {
				t.Errorf("%s doubled: %g V, was %g V", w.Number, s.Volts(own), base.Volts(own))
			}
		}
	}
	resistive(t)
}

// loadOf is the load that a wire ends at; nil when it is a common one.
func loadOf(c *circuit.Circuit, w *circuit.Wire) *circuit.Branch {
	for _, n := range []*circuit.Node{w.Branch.A, w.Branch.B} {
		for _, b := range n.Branches {
			if b.Kind == circuit.LoadBranch {
				return b
			}
		}
	}
	return nil
}

// resistive doubles each feed wire of random trees of resistors.
func resistive(t *testing.T) {
	for seed := range 20 {
		b := solvetest.New()
		nodes := []*circuit.Node{b.Node("+")}
		b.Battery(nodes[0], 0.01)
		for i := range 12 {
			x := b.Node("x")
			b.Wire("W", nodes[(i*7+seed)%len(nodes)], x, float64(1+(i+seed)%4), 1)
			b.Load("E", x, b.Ground(), design.Resistor, float64(10+5*i), 12)
			nodes = append(nodes, x)
		}
		n := solve.Prepare(b.C).Network(solvetest.Situation(0), solve.Options{})
		base := n.Solution()
		for _, w := range b.C.Wires {
			s := n.Resolve(true, solve.SetOhm(w.Branch, w.Branch.Ohm/2))
			own := w.Branch.B.Branches[1] // after the wire itself
			if s.Volts(own) <= base.Volts(own) {
				t.Errorf("seed %d: %g V after, %g V before", seed, s.Volts(own), base.Volts(own))
			}
		}
	}
}

// Solving is the same whatever runs beside it.
func TestAllIsSteady(t *testing.T) {
	c, sit := solvetest.Random(5)
	off := &design.Situation{Name: "off", Key: design.KeyOff}
	c.Design.Situations = []*design.Situation{sit, off, solvetest.Situation(0), sit}
	first := solve.All(c, solve.Options{})
	for range 5 {
		for i, s := range solve.All(c, solve.Options{}) {
			for j, v := range s.NodeV {
				if math.Float64bits(v) != math.Float64bits(first[i].NodeV[j]) {
					t.Fatalf("situation %d node %d: %v then %v", i, j, first[i].NodeV[j], v)
				}
			}
		}
	}
}
