package bundle

import (
	"math"
	"testing"

	"fusewright/library"
)

// The lower of the two, at the loading that the practice's factor is entered with.
func TestGoverning(t *testing.T) {
	steps := func(n int, loading float64) float64 { // the marine ones; loading must be the whole
		if loading != 1 {
			return math.Inf(-1)
		}
		switch {
		case n <= 2:
			return 1
		case n <= 6:
			return 0.6
		}
		return 0.5
	}
	curve := func(n int, loading float64) float64 { return 1 - loading*float64(n)/20 }
	for _, c := range []struct {
		name    string
		model   float64
		p       Published
		l       Loading
		want    float64
		governs string
	}{
		{"model below", 0.42, Published{Factor: steps}, Loading{12, 12}, 0.42, GovernsModel},
		{"the same", 0.5, Published{Factor: steps}, Loading{12, 12}, 0.5, GovernsModel},
		{"model above", 0.51, Published{Factor: steps}, Loading{12, 12}, 0.5, GovernsPublished},
		{"six whole wires", 0.9, Published{Factor: steps}, Loading{12, 6}, 0.6, GovernsPublished},
		{"a little more than six", 0.9, Published{Factor: steps}, Loading{12, 6.01}, 0.5, GovernsPublished},
		{"two of twelve", 0.9, Published{Factor: steps}, Loading{12, 1.5}, 0.9, GovernsModel},
		{"curve at half", 0.9, Published{curve, true}, Loading{10, 5}, 0.75, GovernsPublished},
		{"nothing flows", 1, Published{curve, true}, Loading{}, 1, GovernsModel},
		{"no factor", 0.7, Published{Factor: func(int, float64) float64 { return math.NaN() }}, Loading{3, 3}, 0.7, GovernsModel},
	} {
		if got := Governing(c.model, c.p, c.l); math.Abs(got.Factor-c.want) > 1e-12 || got.Governs != c.governs {
			t.Errorf("%s: %+v, want %g by the %s", c.name, got, c.want, c.governs)
		}
	}
}

// A wire whose place leaves no room has no factor but zero.
func TestFactor(t *testing.T) {
	if f := alike(t, thin25, 3, 3, 5, 105, 110).Factor(0); f != 0 {
		t.Errorf("%g in a place above the class", f)
	}
	b := alike(t, thin25, 3, 3, 25, 105, 30)
	if f := b.Factor(1); f != b.AllowedA(1)/b.AloneA(1) || !(f > 0.5 && f < 1) {
		t.Errorf("%g", f)
	}
}

// A wire with what the practice allows it counts as one, one with half as a
// quarter, one with more as one, one without current as none.
func TestLoadingWeighsByLoss(t *testing.T) {
	alone := alike(t, thin25, 1, 0, 0, 105, 30).AloneA(0)
	wires := alike(t, thin25, 4, 0, 0, 105, 30).wires
	for i, part := range []float64{1, 0.5, -3, 0} {
		wires[i].CurrentA = part * 0.7 * alone
	}
	got := ready(t, wires, 30).Loading(Published{Factor: func(n int, loading float64) float64 {
		if n != 3 || loading != 1 {
			t.Errorf("entered with %d wires at %g", n, loading)
		}
		return 0.7
	}})
	if got.Wires != 3 || math.Abs(got.Carrying-2.25) > 1e-9 {
		t.Errorf("%+v, want 2.25 of 3", got)
	}
}

// What it costs that a wire without current does not count: the aircraft curves
// entered with the loaded wires alone, against the same curves entered with all.
// Source: MIL-W-5088L figure, as in the library.
func TestIdleWiresUncountedAgainstTheCurves(t *testing.T) {
	table := library.Default().CurrentTable("AC 43.13-1B")
	whole := func(n int, _ float64) float64 {
		shares := table.Bundle[n-1].Shares
		return shares[len(shares)-1]
	}
	for n, b := range table.Bundle[:19] {
		if b.From != n+1 {
			t.Fatalf("row %d is for %d wires", n, b.From)
		}
	}
	var d deviations
	for _, r := range rows(t, "aircraft_bundle_curves.csv") {
		wires, share, published := num(t, r[0]), num(t, r[1]), num(t, r[2])
		loaded := int(math.Round(wires * share))
		if share == 1 || math.Abs(wires*share-float64(loaded)) > 1e-6 {
			continue
		}
		model := factor(t, aero20, int(wires), loaded, 150, 70)
		got := Governing(model, Published{Factor: whole}, Loading{loaded, float64(loaded)})
		d = append(d, got.Factor/published-1)
	}
	d.in(t, "idle wires not counted", -0.05, 0.15)
}
