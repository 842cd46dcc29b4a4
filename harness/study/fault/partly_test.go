package fault

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/synth"
)

// lostWays studies lost returns in their own parts of the network and in the
// whole of it.
func lostWays(c *circuit.Circuit) (partly, wholly *Study) {
	partly, wholly = &Study{Circuit: c, plan: solve.Prepare(c)}, &Study{Circuit: c, plan: solve.Prepare(c)}
	partly.lostReturns(true)
	wholly.lostReturns(false)
	return partly, wholly
}

// Lost returns have the same effects on the same parts in the same situations
// whether each is solved in its own part of the network or in the whole: on
// realistic harnesses, on odd ones and on the demonstration designs.
func TestLostPartlyEqualsWhole(t *testing.T) {
	losses, affected, farthestV := 0, 0, 0.0
	compare := func(name string, src []byte) {
		p, w := lostWays(buildtest.Circuit(t, src))
		for i, l := range p.Lost {
			losses++
			affected += len(l.All())
			farthestV = math.Max(farthestV, same(t, name, l, w.Lost[i]))
		}
	}
	for _, wires := range []int{40, 100, 250, 1000, 3000} {
		seeds := int64(3)
		if wires >= 1000 && !referencetest.Required() {
			seeds = 1 // made of the same circuits as the smaller ones, only more of them
		}
		for seed := range seeds {
			compare(fmt.Sprintf("harness of %d wires, seed %d", wires, seed), synth.YAML(wires, seed))
		}
	}
	for seed := range int64(300) {
		compare(fmt.Sprintf("odd design, seed %d", seed), synth.Random(seed))
	}
	files, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no demonstration designs: %v", err)
	}
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		compare(f, src)
	}
	t.Logf("%d lost returns, %d affected parts, voltages at most %.2g V apart", losses, affected, farthestV)
	if losses < 1000 || affected < 5000 {
		t.Error("too few to tell")
	}
}

// same holds one lost return against the other and gives how far apart the
// voltages are. A tenth of a millivolt is far below every threshold of effects.
func same(t *testing.T, name string, got, want *Lost) (farthestV float64) {
	t.Helper()
	got.Affected, want.Affected = got.All(), want.All()
	if got.Branch != want.Branch || len(got.Affected) != len(want.Affected) || fmt.Sprint(got.Unsolved) != fmt.Sprint(want.Unsolved) {
		t.Errorf("%s, %s lost: %d parts affected and unsolved %v, in the whole %d and %v", name, got.Branch.Name,
			len(got.Affected), got.Unsolved, len(want.Affected), want.Unsolved)
		return 0
	}
	for i, a := range got.Affected {
		b := want.Affected[i]
		off := math.Abs(a.AfterV - b.AfterV)
		// of situations in which a part gets the same to some microvolts either may be told
		if a.Branch != b.Branch || a.Effect != b.Effect || a.Situation == b.Situation && a.BeforeV != b.BeforeV ||
			math.IsNaN(a.AfterV) != math.IsNaN(b.AfterV) || off > 1e-4 || math.Abs(a.AfterA-b.AfterA) > 1e-3 {
			t.Errorf("%s, %s lost: %s %+v, in the whole %+v", name, got.Branch.Name, a.Branch.Name, a, b)
		}
		if off > farthestV {
			farthestV = off
		}
	}
	return farthestV
}

// BenchmarkLost is lost returns alone, each in its own part of the network and
// each in the whole.
func BenchmarkLost(b *testing.B) {
	for _, wires := range []int{40, 1000, 3000} {
		c := buildtest.Circuit(b, synth.YAML(wires, 1))
		for name, partly := range map[string]bool{"part": true, "whole": false} {
			b.Run(fmt.Sprintf("%s/%d", name, wires), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					s := &Study{Circuit: c, plan: solve.Prepare(c)}
					s.lostReturns(partly)
				}
			})
		}
	}
}
