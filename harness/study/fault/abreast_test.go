package fault

import (
	"math"
	"os"
	"testing"

	"fusewright/harness/proof/buildtest"
)

// Two equal wires carry half each, and one of them all when the other is lost; of three
// one half each of two. A resistor of 12 V / 16 A = 0.75 Ω draws a little less then: the lost
// wire's 14 mΩ in parallel to another 14 mΩ are 7 mΩ more.
func TestAbreastByHand(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/parallel-wire-lost.yaml")
	if err != nil {
		t.Fatal(err)
	}
	s := Compute(buildtest.Circuit(t, src))
	if len(s.Abreast) != 2 {
		t.Fatalf("%d sets of wires side by side", len(s.Abreast))
	}
	for i, n := range []float64{2, 3} {
		a := s.Abreast[i]
		if len(a.Lost.Parallel()) != int(n) || a.Left == a.Lost || len(a.Unsolved) > 0 {
			t.Errorf("%d wires, %s lost, %s left, %v", len(a.Lost.Parallel()), a.Lost.Number, a.Left.Number, a.Unsolved)
		}
		whole := n * a.BeforeA
		if whole < 15 || whole > 19 {
			t.Errorf("of %g wires each %.2f A of 16 A at 12 V", n, a.BeforeA)
		}
		if want := whole / (n - 1); math.Abs(a.AfterA-want) > 0.02*want {
			t.Errorf("of %g wires one lost: %.2f A, want %.2f A less 2 %% at most", n, a.AfterA, want)
		}
	}
}
