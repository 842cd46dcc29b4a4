package conductor

import (
	"math"
	"math/rand"
	"testing"

	"fusewright/library"
)

// wires visits every size of every wire type in the library.
func wires(t testing.TB, visit func(*library.WireType, *library.WireSize, *library.Insulation)) {
	t.Helper()
	lib := library.Default()
	n := 0
	for _, w := range lib.WireTypes {
		for _, s := range w.Sizes {
			visit(w, s, lib.Insulation(w.Material))
			n++
		}
	}
	if n < 50 {
		t.Fatalf("only %d sizes in the library", n)
	}
}

// The two questions of the heat balance answer each other.
func TestBalanceInverts(t *testing.T) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		for _, ambient := range []float64{-30, 20, 60} {
			for _, c := range []Convection{ByChurchillChu, ByMorgan} {
				b := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: ambient, Convection: c})
				goal := w.ClassC
				if goal <= ambient {
					continue
				}
				if got := b.ConductorC(b.CurrentA(goal)); math.Abs(got-goal) > 1e-3 {
					t.Errorf("%s %s at %g °C: %g °C, want %g", w.Name, s.Label, ambient, got, goal)
				}
			}
		}
	})
}

// The steady state has no heat left over: I²·R(T) is the loss.
func TestBalanceClosesPower(t *testing.T) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		b := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: 25})
		i := b.CurrentA(w.ClassC)
		near(t, w.Name+" "+s.Label, LossW(i, AtTemperature(s.MaxOhmPerM, w.ClassC), 1),
			b.LossWPerM(w.ClassC), 1e-6)
	})
}

func TestBalanceIsMonotone(t *testing.T) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		b := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: 30})
		before := 0.0
		for c := 31.0; c < 1083; c *= 1.1 {
			i := b.CurrentA(c)
			if !(i > before) {
				t.Errorf("%s %s: %g A at %g °C is not above %g A", w.Name, s.Label, i, c, before)
			}
			before = i
		}
		if !math.IsInf(b.ConductorC(before*10), 1) {
			t.Errorf("%s %s: ten times the current at melting has a steady state", w.Name, s.Label)
		}
	})
}

// Thinner air cools less; the whole of it in one direction.
func TestAltitudeLowersCurrent(t *testing.T) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		before := math.Inf(1)
		for _, h := range []float64{0, 1500, 4000, 9000, 18000} {
			i := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: 30, AltitudeM: h}).CurrentA(w.ClassC)
			if !(i < before) {
				t.Errorf("%s %s: %g A at %g m is not below %g A", w.Name, s.Label, i, h, before)
			}
			before = i
		}
	})
}

// No input makes the balance panic, hang or answer with no number.
func TestBalanceStandsAnyInput(t *testing.T) {
	odd := []float64{0, -1, 1e-9, 1e9, math.Inf(1), math.Inf(-1), math.NaN(), 2, 60}
	rng := rand.New(rand.NewSource(1))
	pick := func() float64 { return odd[rng.Intn(len(odd))] }
	for i := 0; i < 5000; i++ {
		w := Insulated{pick(), pick(), pick(), pick(), pick(), pick(), pick()}
		b := NewBalance(w, StillAir{AmbientC: pick(), AltitudeM: pick()})
		b.CurrentA(pick())
		b.ConductorC(pick())
	}
}

func TestNoDimensionsNoCurrent(t *testing.T) {
	b := NewBalance(Insulated{AreaMm2: 1, OhmPerM20: 0.02}, StillAir{AmbientC: 20})
	if b.CurrentA(100) != 0 || !math.IsInf(b.ConductorC(1), 1) {
		t.Error("a wire without diameters must not be allowed a current")
	}
}

func BenchmarkCurrentA(b *testing.B) {
	t := library.Default().WireTypes[0]
	w := InsulatedWire(t.Sizes[0], library.Default().Insulation(t.Material))
	for b.Loop() {
		NewBalance(w, StillAir{AmbientC: 40}).CurrentA(t.ClassC)
	}
}

func BenchmarkConductorC(b *testing.B) {
	t := library.Default().WireTypes[0]
	w := InsulatedWire(t.Sizes[0], library.Default().Insulation(t.Material))
	for b.Loop() {
		NewBalance(w, StillAir{AmbientC: 40}).ConductorC(5)
	}
}
