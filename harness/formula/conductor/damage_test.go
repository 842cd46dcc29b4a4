package conductor

import (
	"math"
	"testing"

	"fusewright/library"
)

func damages(t testing.TB, visit func(name string, d *Damage, s *library.WireSize)) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		for _, start := range []float64{20, w.ClassC - 10, w.ClassC} {
			for _, share := range []float64{1, 0.5} {
				visit(w.Name+" "+s.Label, NewDamage(DamageInput{Type: w, Size: s, Material: m,
					AmbientC: 20, StartC: start, Outlet: Outlet{Share: share}}), s)
			}
		}
	})
}

// A higher current never takes longer, on any of the curves.
func TestDamageFallsWithCurrent(t *testing.T) {
	damages(t, func(name string, d *Damage, s *library.WireSize) {
		for what, f := range map[string]func(float64) float64{"damage": d.TimeS, "fault": d.FaultTimeS,
			"class": d.ToClassS, "overload": d.ToOverloadS, "short": d.ToShortS} {
			before := math.Inf(1)
			for i := 0.1 * s.AreaMm2; i < 1e4*s.AreaMm2; i *= 1.03 {
				got := f(i)
				if !(got <= before*(1+1e-9)) || got < 0 {
					t.Errorf("%s, %s: %g s at %g A after %g s", name, what, got, i, before)
					break
				}
				before = got
			}
		}
	})
}

// Limits come in order: the class first, then overload, then short circuit.
func TestDamageLimitsAreOrdered(t *testing.T) {
	damages(t, func(name string, d *Damage, s *library.WireSize) {
		for i := s.AreaMm2; i < 1e4*s.AreaMm2; i *= 1.3 {
			if d.ToClassS(i) > d.ToOverloadS(i)*(1+1e-9) || d.ToOverloadS(i) > d.ToShortS(i)*(1+1e-9) {
				t.Errorf("%s at %g A: %g, %g, %g s", name, i, d.ToClassS(i), d.ToOverloadS(i), d.ToShortS(i))
				break
			}
		}
	})
}

// Well below a second the curve is k²S²/I², with the wire's own resistance.
func TestDamageIsAdiabaticAtHighCurrent(t *testing.T) {
	damages(t, func(name string, d *Damage, s *library.WireSize) {
		if d.curves[2].startC >= d.ShortC {
			return
		}
		i := 600 * s.AreaMm2
		want := AdiabaticS(i, s.AreaMm2, d.curves[2].startC, d.ShortC) * OhmPerM(s.AreaMm2, 20) / s.MaxOhmPerM
		near(t, name, d.ToShortS(i), want, 1e-9)
	})
}

// The steady balance and the transient model agree on what never heats up.
func TestDamageMeetsSteadyBalance(t *testing.T) {
	wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
		d := NewDamage(DamageInput{Type: w, Size: s, Material: m, AmbientC: 30, StartC: 30, Outlet: Outlet{Share: 1}})
		steady := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: 30}).CurrentA(d.ClassC)
		if got := d.ToClassS(steady * 0.999); !math.IsInf(got, 1) {
			t.Errorf("%s %s: just below the steady current it heats up in %g s", w.Name, s.Label, got)
		}
		if got := d.ToClassS(steady * 1.01); math.IsInf(got, 1) || got < 10 {
			t.Errorf("%s %s: just above the steady current: %g s", w.Name, s.Label, got)
		}
	})
}

// The closed solution against small time steps of the same model.
func TestHeatingAgainstTimeSteps(t *testing.T) {
	w := library.Default().WireTypes[0]
	s := w.Sizes[len(w.Sizes)/2]
	m := library.Default().Insulation(w.Material)
	b := NewBalance(InsulatedWire(s, m), StillAir{AmbientC: 25})
	h := newHeating(b, 25, 150, Outlet{Share: 1})
	for _, times := range []float64{1.1, 1.5, 2, 2.5} {
		i := times * b.CurrentA(150)
		temp, elapsed := 25.0, 0.0
		const step = 0.005
		for temp < 150 {
			temp += step * (i*i*AtTemperature(s.MaxOhmPerM, temp) - b.LossWPerM(temp)) / h.whole
			elapsed += step
		}
		near(t, "time to 150 °C", h.wholeWire(i), elapsed, 0.01)
	}
}

func TestDamageSaysMissingLimits(t *testing.T) {
	s := &library.WireSize{Label: "1 mm²", AreaMm2: 1, MaxOhmPerM: 0.0185, ConductorMm: 1.3, OuterMm: 2}
	d := NewDamage(DamageInput{Type: &library.WireType{Name: "odd", ClassC: 90}, Size: s, Outlet: Outlet{Share: 1}})
	if len(d.Missing) != 2 || d.OverloadC != 90 || d.ShortC != 90 {
		t.Errorf("missing %q, limits %g and %g", d.Missing, d.OverloadC, d.ShortC)
	}
	if NewDamage(DamageInput{}).TimeS(1) != 0 {
		t.Error("an unknown wire must stand nothing")
	}
}

func TestDamageStandsAnyCurrent(t *testing.T) {
	damages(t, func(name string, d *Damage, _ *library.WireSize) {
		for _, i := range []float64{0, -5, math.NaN(), math.Inf(1), 1e300} {
			if got := d.TimeS(i); math.IsNaN(got) || got < 0 {
				t.Errorf("%s: %g s at %g A", name, got, i)
			}
		}
	})
}

func BenchmarkNewDamage(b *testing.B) {
	w := library.Default().WireTypes[0]
	in := DamageInput{Type: w, Size: w.Sizes[0], AmbientC: 30, StartC: 80, Outlet: Outlet{Share: 1}}
	for b.Loop() {
		NewDamage(in)
	}
}
