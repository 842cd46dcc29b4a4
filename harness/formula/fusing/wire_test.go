package fusing

import (
	"math"
	"testing"

	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

func damage(w *library.WireType, s *library.WireSize, ambientC float64) Curve {
	return conductor.NewDamage(conductor.DamageInput{Type: w, Size: s,
		Material: library.Default().Insulation(w.Material),
		AmbientC: ambientC, StartC: w.ClassC - 10, Outlet: conductor.Outlet{Share: 1}}).FaultTimeS
}

// A bigger fuse of the same type never passes where a smaller one failed.
func TestBiggerFuseNeverPassesWhereSmallerFailed(t *testing.T) {
	for _, w := range library.Default().WireTypes {
		for k := 0; k < len(w.Sizes); k += 3 {
			curve := damage(w, w.Sizes[k], 40)
			for _, ft := range library.Default().FuseTypes {
				for _, fault := range []float64{8, 60, 400, 3000} {
					failed := 0.0
					for _, r := range ft.Ratings {
						switch p := ProtectsWire(Device{Type: ft, Rating: r, AmbientC: 40}, curve, fault); {
						case !p.Protects && failed == 0:
							failed = r.RatingA
						case p.Protects && failed != 0:
							t.Errorf("%s %s, fault %g A: %s %g A passes where %g A failed",
								w.Name, w.Sizes[k].Label, fault, ft.Name, r.RatingA, failed)
						}
					}
				}
			}
		}
	}
}

// More copper of the same type never loses protection.
func TestMoreCopperNeverLosesProtection(t *testing.T) {
	for _, w := range library.Default().WireTypes {
		for _, amps := range []float64{5, 10, 20, 30} {
			passed := false
			for _, s := range w.Sizes {
				p := ProtectsWire(fuse(t, "blade C", amps), damage(w, s, 30), 500)
				if passed && !p.Protects {
					t.Errorf("%s %s: blade C %g A fails where a smaller size passed", w.Name, s.Label, amps)
				}
				passed = passed || p.Protects
			}
		}
	}
}

func TestProtectsWireNamesTheWorst(t *testing.T) {
	c10 := fuse(t, "blade C", 10)
	forGood := func(float64) float64 { return math.Inf(1) }
	k2s2 := func(a2s float64) Curve { return func(i float64) float64 { return a2s / (i * i) } }
	for _, c := range []struct {
		name     string
		device   Device
		curve    Curve
		faultA   float64
		protects bool
		ratio    float64
		worstA   float64
	}{
		{"a wire that stands all", c10, forGood, 300, true, math.Inf(1), 10},
		{"hurt where the fuse may never open", c10, k2s2(1e6), 300, false, 0, 10},
		{"the fault is below the rating", c10, k2s2(100), 8, false, 0, 8},
		{"no device", Device{}, k2s2(100), 80, false, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := ProtectsWire(c.device, c.curve, c.faultA)
			if p.Protects != c.protects || p.Ratio != c.ratio || p.WorstA != c.worstA {
				t.Errorf("%+v", p)
			}
		})
	}
}

// Worked by hand: a wire that carries 1.35 times the rating for good and has
// k²S² = 8000 A²s above that. The type C 10 A opens within 600 or 1800 s at
// 13.5 A, 50 s at 16 A, 5 s at 20 A, 0.5 s at 35 A; just above 13.5 A the wire
// stands 43.9 s.
func TestProtectsWireByHand(t *testing.T) {
	c10 := fuse(t, "blade C", 10)
	curve := func(i float64) float64 {
		if i <= 13.5 {
			return math.Inf(1)
		}
		return 8000 / (i * i)
	}
	p := ProtectsWire(c10, curve, 200)
	if p.Protects || p.WorstA < 13.5 || p.WorstA > 15 || !p.OpenKnown || p.KnownWorstA != p.WorstA {
		t.Errorf("%+v", p)
	}
	if p = ProtectsWire(c10, func(i float64) float64 {
		if i < 16 {
			return math.Inf(1)
		}
		return 80 * 256 / (i * i)
	}, 200); !p.Protects || math.Abs(p.Ratio-1.6) > 0.01 || p.WorstA != 16 {
		t.Errorf("80 s at 16 A against 50 s is 1.6 to 1: %+v", p)
	}
}

// A blade fuse of 10 A has opened after 50 s at 16 A and 5 s at 20 A: a wire that stands
// each current for 10 s is damaged up to about 18.6 A, one that stands 4 s beyond 20 A too.
func TestDamagedIn(t *testing.T) {
	c10 := fuse(t, "blade C", 10)
	for _, c := range []struct{ standsS, fromA, toA, want float64 }{
		{10, 13.5, 200, 10}, {10, 18.3, 200, 10}, {10, 19, 200, math.Inf(1)}, {4, 19, 200, 4},
		{10, 5, 13.4, math.Inf(1)}, // no latest opening is published
		{10, 16, 16, 10},
	} {
		if got := DamagedIn(c10, func(float64) float64 { return c.standsS }, c.fromA, c.toA); got != c.want {
			t.Errorf("%+v: %g s", c, got)
		}
	}
	if got := DamagedIn(Device{}, func(float64) float64 { return 0 }, 1, 100); !math.IsInf(got, 1) {
		t.Errorf("no device: %g s", got)
	}
	if got := c10.SureA(); got != 13.5 {
		t.Errorf("blade C 10 A is sure to open at %g A", got)
	}
	if got := (Device{}).SureA(); got != 0 {
		t.Errorf("no device: %g A", got)
	}
}

func BenchmarkProtectsWire(b *testing.B) {
	w := library.Default().WireTypes[0]
	d := conductor.NewDamage(conductor.DamageInput{Type: w, Size: w.Sizes[2], AmbientC: 40, StartC: 100, Outlet: conductor.Outlet{Share: 1}})
	f := fuse(b, "blade C", 10)
	for b.Loop() {
		ProtectsWire(f, d.FaultTimeS, 300)
	}
}
