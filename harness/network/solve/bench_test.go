package solve_test

import (
	"fmt"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

var sizes = []int{10, 100, 1000, 10000}

func BenchmarkPrepare(b *testing.B) {
	for _, wires := range sizes {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c, _ := solvetest.Harness(wires)
			b.ReportAllocs()
			for b.Loop() {
				solve.Prepare(c)
			}
		})
	}
}

// BenchmarkAll solves four situations: off, key on, idle, cruise.
func BenchmarkAll(b *testing.B) {
	for _, wires := range sizes {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c, cruise := solvetest.Harness(wires)
			c.Design.Situations = []*design.Situation{{Key: design.KeyOff},
				solvetest.Situation(0), solvetest.Situation(500), cruise}
			b.ReportAllocs()
			for b.Loop() {
				for _, s := range solve.All(c, solve.Options{}) {
					if s.Status != solve.Converged {
						b.Fatal(s.Status, s.Why)
					}
				}
			}
		})
	}
}

// BenchmarkFault shorts the far end of one wire after another.
func BenchmarkFault(b *testing.B) {
	for _, wires := range sizes {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c, sit := solvetest.Harness(wires)
			n := solve.Prepare(c).Network(sit, solve.Options{AcceptFolded: true})
			i := 0
			b.ReportAllocs()
			for b.Loop() {
				w := c.Wires[i%len(c.Wires)]
				i++
				if s := n.Resolve(true, solve.Short(w.Branch.B, c.Nodes[0], 0.001)); s.Status != solve.Converged {
					b.Fatal(w.Number, s.Status, s.Why)
				}
			}
		})
	}
}

func BenchmarkThevenin(b *testing.B) {
	for _, wires := range sizes {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c, sit := solvetest.Harness(wires)
			n := solve.Prepare(c).Network(sit, solve.Options{})
			for b.Loop() {
				n.Thevenin(c.Wires[len(c.Wires)-1].Branch.A, c.Nodes[0])
			}
		})
	}
}

// BenchmarkTwoBatteries is BenchmarkOneBattery with a house battery behind a switch (a
// relay that opens again costs a round of contacts besides, as any relay does):
// some 10 000 wires.
func BenchmarkTwoBatteries(b *testing.B) { benchmarkBatteries(b, true) }

func BenchmarkOneBattery(b *testing.B) { benchmarkBatteries(b, false) }

func benchmarkBatteries(b *testing.B, two bool) {
	c, s := solvetest.Harness(10_000)
	if two {
		x := &solvetest.Builder{C: c}
		plus, end := x.Node("house +"), x.Node("house end")
		x.Bank("house", "AGM", 110, plus, x.Ground())
		x.Wire("link", end, plus, 2, 35)
		link := x.Branch(circuit.ContactBranch, "switch", c.Nodes[1], end, 0.0005)
		link.Closer = &circuit.Closer{Key: design.WhenAlways}
	}
	b.ResetTimer()
	for b.Loop() {
		sol := solve.Solve(c, s, solve.Options{})
		if sol.Status != solve.Converged {
			b.Fatal(sol.Why)
		}
		b.ReportMetric(float64(sol.Iterations), "iterations")
	}
}
