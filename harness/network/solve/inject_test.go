package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

// The response to one ampere is what the whole rank-one update gives: a small
// enough short draws the open voltage over its own resistance, and moves every
// node by that many times the response.
func TestResponseEqualsWholeUpdate(t *testing.T) {
	compared := 0
	for seed := range uint64(40) {
		c, sit := solvetest.Random(5000 + seed)
		n := solve.Prepare(c).Network(sit, solve.Options{AcceptFolded: true})
		r := n.Responder()
		if r == nil {
			continue
		}
		for i, at := range c.Nodes[1:] {
			other := c.Nodes[(7*i)%len(c.Nodes)]
			v, ok := n.Linear(solve.Short(at, other, 0.003))
			if at == other || !ok || !r.Draw(solve.Draw{Node: at, Amps: 1}, solve.Draw{Node: other, Amps: -1}) {
				continue
			}
			open := n.Volts(at) - n.Volts(other)
			amps := open / (0.003 - (r.At(at) - r.At(other)))
			for _, k := range c.Nodes {
				compared++
				if got := n.Volts(k) + amps*r.At(k); math.Abs(got-v[k.Index]) > 1e-9*(1+math.Abs(v[k.Index])) {
					t.Fatalf("seed %d, short of node %d to %d: node %d at %.9g V, update %.9g V",
						seed, at.Index, other.Index, k.Index, got, v[k.Index])
				}
			}
		}
	}
	if compared < 10000 {
		t.Fatalf("only %d voltages compared", compared)
	}
}
