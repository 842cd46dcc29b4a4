package main

import (
	"os"
	"regexp"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
)

// copperMm2M is the copper of a design's wires, in mm² times metres.
func copperMm2M(t *testing.T, src []byte) float64 {
	t.Helper()
	d, err := design.Read("demo.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	if bad := badOf(r.Findings); len(bad) > 0 {
		t.Errorf("%q", bad)
	}
	sum := 0.0
	for _, w := range r.Circuit.Wires {
		sum += w.Spec.Size.AreaMm2 * w.LengthM
	}
	return sum
}

// TestDemoCopper: sizing gives the demo no more than 1.3 times the copper that a
// fitter gives it by hand.
func TestDemoCopper(t *testing.T) {
	hand, err := os.ReadFile("testdata/trade/by-hand/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	open := regexp.MustCompile(`size: [0-9.]+ mm²,? ?`).ReplaceAll(hand, nil)
	byHand, chosen := copperMm2M(t, hand), copperMm2M(t, open)
	t.Logf("by hand %.1f mm²·m, chosen %.1f mm²·m", byHand, chosen)
	if chosen > 1.3*byHand {
		t.Errorf("chosen %.1f mm²·m of copper, by hand %.1f mm²·m", chosen, byHand)
	}
}
