package warm

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

func rated(t *testing.T, w *circuit.Wire) (*Model, *library.Library) {
	t.Helper()
	lib := library.Default()
	w.Branch = &circuit.Branch{Wire: w}
	w.Spec.Type = lib.WireType("ISO 6722 thin wall class B")
	w.Spec.Size = w.Spec.Type.Size("1 mm²")
	return New(&circuit.Circuit{Design: &design.Design{Library: lib}, Wires: []*circuit.Wire{w}}), lib
}

// A wire in a run may carry the smallest share of the runs it lies in; its own
// current counts as if raised by the inverse.
func TestRunsReduce(t *testing.T) {
	bundle := func(loaded int, cover float64) *circuit.Bundle {
		return &circuit.Bundle{Loaded: loaded, Run: &design.Run{Cover: &library.Cover{CurrentFactor: cover}}}
	}
	mild, tight := bundle(1, 0.9), bundle(1, 0.6)
	w := &circuit.Wire{AmbientC: 30, Route: []*circuit.Bundle{mild, tight, bundle(1, 0.8)}}
	m, lib := rated(t, w)
	l := &m.Wires[0]
	alone := conductor.NewRater(lib, nil).Allowed(conductor.Conditions{Type: w.Spec.Type, Size: w.Spec.Size, AmbientC: 30})
	if l.In != tight || math.Abs(l.AllowedA-0.6*alone.AllowedA) > 1e-9 {
		t.Errorf("reduced by %+v to %g A of %g A", l.In, l.AllowedA, alone.AllowedA)
	}
	free, _ := rated(t, &circuit.Wire{AmbientC: 30})
	if got, want := l.ConductorC(6), free.Wires[0].ConductorC(10); math.Abs(got-want) > 1e-9 {
		t.Errorf("6 A at 0.6 of the current: %g °C, 10 A alone: %g °C", got, want)
	}
}

// 10 mΩ of conductor and 1 mΩ of its ends, at 120 °C of the conductor: 10 · (1 + 0.00393·100) + 1 = 14.93 mΩ;
// beyond 250 °C as at it, 20.04 mΩ; without current as warm as its place.
func TestOhm(t *testing.T) {
	m, _ := rated(t, &circuit.Wire{AmbientC: 20, ConductorOhm20: 0.010, EndsOhm: 0.001})
	b := m.Wires[0].Wire.Branch
	b.Ohm = 0.011
	at := 1.0
	for m.Wires[0].ConductorC(at) < 120 {
		at += 1e-4
	}
	for amps, want := range map[float64]float64{0: 0.011, at: 0.01493, -at: 0.01493, 1000: 0.0200389} {
		if got := m.Ohm(b, amps); math.Abs(got-want) > 1e-6 {
			t.Errorf("%.2f A: %.4f mΩ, want %.4f mΩ", amps, 1000*got, 1000*want)
		}
	}
}

// Hotter adds to what the model is hotter by already.
func TestHotterAddsUp(t *testing.T) {
	m, _ := rated(t, &circuit.Wire{AmbientC: 30})
	hot := m.Hotter(10).Hotter(5)
	if hot.AboveK != 15 || hot.Wires[0].AmbientC != 45 || m.Wires[0].AmbientC != 30 {
		t.Errorf("hotter by %g K, wire in %g °C", hot.AboveK, hot.Wires[0].AmbientC)
	}
}

// Below the least current of the curve the rise goes with its square.
func TestSmallCurrents(t *testing.T) {
	m, _ := rated(t, &circuit.Wire{AmbientC: 30})
	l := &m.Wires[0]
	least, rise := l.curve.least, l.curve.leastRise
	for share, want := range map[float64]float64{0: 0, 0.1: 0.01, 0.5: 0.25, 1: 1} {
		if got := l.ConductorC(-share*least) - 30; math.Abs(got-want*rise) > 1e-6 {
			t.Errorf("%g of the least current: %g K, want %g K", share, got, want*rise)
		}
	}
}

// Resistances are taken up to 250 °C; what is hotter is said.
func TestHottestIsSaid(t *testing.T) {
	wires := []Laid{{Wire: &circuit.Wire{Number: "W1"}}, {Wire: &circuit.Wire{Number: "W2"}}, {Wire: &circuit.Wire{Number: "W3"}}}
	s := &search{m: &Model{Wires: wires}, Result: &Result{WireC: []float64{249.9, 250, 250.1}}}
	s.sayOver()
	if len(s.Over) != 1 || s.Over[0].Number != "W3" || s.Why != "wire W3 has no steady temperature below 250 °C" {
		t.Errorf("%d over, %q", len(s.Over), s.Why)
	}
	if capped(249) != 249 || capped(300) != 250 {
		t.Errorf("249 °C counts as %g, 300 °C as %g", capped(249), capped(300))
	}
}
