package fusing

import (
	"math"
	"testing"

	"fusewright/library"
)

// devices visits every rating of every type in the library at several ambients.
func devices(t testing.TB, visit func(string, Device)) {
	t.Helper()
	n := 0
	for _, ft := range library.Default().FuseTypes {
		for _, r := range ft.Ratings {
			for _, ambient := range []float64{-40, 23, 65, 110} {
				visit(ft.Name, Device{Type: ft, Rating: r, AmbientC: ambient})
				n++
			}
		}
	}
	if n < 100 {
		t.Fatalf("only %d devices in the library", n)
	}
}

func fuse(t testing.TB, name string, ratingA float64) Device {
	t.Helper()
	ft := library.Default().FuseType(name)
	if ft == nil || ft.Rating(ratingA) == nil {
		t.Fatalf("no %s of %g A in the library", name, ratingA)
	}
	return Device{Type: ft, Rating: ft.Rating(ratingA), AmbientC: RatedC}
}

// More current never opens later on either edge, and the fast edge is never
// after the slow one.
func TestBandFallsWithCurrent(t *testing.T) {
	devices(t, func(name string, d Device) {
		fast, slow := math.Inf(1), math.Inf(1)
		for m := 0.2; m < 100; m *= 1.01 {
			o := d.Open(m * d.Rating.RatingA)
			if !(o.SlowS <= slow*(1+1e-9)) || (o.FastKnown && !(o.FastS <= fast*(1+1e-9))) {
				t.Errorf("%s %g A at %g °C, %g times: %+v after %g and %g s",
					name, d.Rating.RatingA, d.AmbientC, m, o, fast, slow)
				return
			}
			if o.FastS > o.SlowS {
				t.Errorf("%s %g A at %g °C, %g times: soonest %g s after latest %g s",
					name, d.Rating.RatingA, d.AmbientC, m, o.FastS, o.SlowS)
				return
			}
			if o.FastKnown {
				fast = o.FastS
			}
			slow = o.SlowS
		}
	})
}

// The published limits themselves come out at 23 °C.
func TestBandGivesPublishedPoints(t *testing.T) {
	for _, ft := range library.Default().FuseTypes {
		for _, r := range ft.Ratings {
			for _, p := range ft.BandFor(r.RatingA) {
				o := Device{Type: ft, Rating: r, AmbientC: RatedC}.Open(p.Multiple * r.RatingA)
				if p.MaxS > 0 && math.Abs(o.SlowS/p.MaxS-1) > 1e-9 {
					t.Errorf("%s %g A, %g times: latest %g s, published %g s", ft.Name, r.RatingA, p.Multiple, o.SlowS, p.MaxS)
				}
				if p.MinS > 0 && p.MinS < carryS && math.Abs(o.FastS/p.MinS-1) > 1e-9 {
					t.Errorf("%s %g A, %g times: soonest %g s, published %g s", ft.Name, r.RatingA, p.Multiple, o.FastS, p.MinS)
				}
			}
		}
	}
}

// Heat never makes a device later, cold never sooner.
func TestBandMovesWithAmbient(t *testing.T) {
	devices(t, func(name string, d Device) {
		for m := 1.0; m < 30; m *= 1.3 {
			i := m * d.Rating.RatingA
			hot := Device{Type: d.Type, Rating: d.Rating, AmbientC: d.AmbientC + 30}
			a, b := d.Open(i), hot.Open(i)
			if b.FastS > a.FastS*(1+1e-9) || b.SlowS > a.SlowS*(1+1e-9) {
				t.Errorf("%s %g A at %g times: %+v, 30 K hotter %+v", name, d.Rating.RatingA, m, a, b)
				return
			}
		}
	})
}

func TestOpenSaysWhatIsNotKnown(t *testing.T) {
	c10 := fuse(t, "blade C", 10)
	for _, c := range []struct {
		name   string
		device Device
		amps   float64
		fast   bool
		slow   bool
		note   string
	}{
		{"nothing known", Device{}, 10, false, false, "the device's type or rating is not known"},
		{"below the band", c10, 12, true, false, "no upper limit published below 135 % of the rating"},
		{"within the band", c10, 20, true, true, ""},
		{"above the band", c10, 900, true, true, "above the published band (600 %): carried on with constant I²t"},
		{"no band", Device{Type: &library.FuseType{Name: "odd"}, Rating: &library.FuseRating{RatingA: 5}, AmbientC: 23}, 9,
			false, false, "no opening times published for odd"},
		{"no band, at its rating", Device{Type: &library.FuseType{Name: "odd"}, Rating: &library.FuseRating{RatingA: 5}, AmbientC: 23}, 5,
			true, false, "no opening times published for odd"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := c.device.Open(c.amps)
			if o.FastKnown != c.fast || o.SlowKnown != c.slow || o.Note != c.note {
				t.Errorf("%+v", o)
			}
		})
	}
}

// Worked by hand from the data sheet of high-current blade fuses, 40 A: 80 A
// opens in 2 to 50 s, half way to 350 % on log axes in between.
func TestOpenBetweenPoints(t *testing.T) {
	e40 := fuse(t, "blade E", 40)
	o := e40.Open(40 * math.Sqrt(2*3.5))
	if want := math.Sqrt(50 * 7); math.Abs(o.SlowS-want) > 1e-6 {
		t.Errorf("latest %g s, want %g s", o.SlowS, want)
	}
	if want := math.Sqrt(2 * 0.2); math.Abs(o.FastS-want) > 1e-6 {
		t.Errorf("soonest %g s, want %g s", o.FastS, want)
	}
}

// Data sheet of high-current blade fuses, derating table of the 40 A size.
func TestRerating(t *testing.T) {
	e40 := fuse(t, "blade E", 40)
	for _, c := range []struct{ ambient, amps float64 }{{20, 40}, {65, 34}, {85, 30}, {110, 25}, {125, 22}} {
		share, known := Device{Type: e40.Type, Rating: e40.Rating, AmbientC: c.ambient}.Share()
		if !known || math.Abs(40*share-c.amps) > 0.5 {
			t.Errorf("at %g °C: %g A, data sheet %g A", c.ambient, 40*share, c.amps)
		}
	}
	if s, _ := (Device{Type: e40.Type, Rating: e40.Rating, AmbientC: 1000}).Share(); s != 0 {
		t.Errorf("at 1000 °C it carries %g of its rating", s)
	}
}

// A breaker of 20 A at 60 °C carries 20 A / 1.24 = 16.13 A (0.806) and may open above
// that; at 23 °C it carries its rating. At -20 °C it may need 1.25 times as much: 40 A are
// then 1.6 times, on log axes 30 s · 120^(ln 1.25 / ln (2/1.3)) = 358 s at the latest, and
// 50 A twice its rating, 30 s.
func TestBreakersByAmbient(t *testing.T) {
	for _, c := range []struct {
		ambient, amps float64
		holds         bool
		slowS         float64
	}{
		{60, 16.1, true, math.Inf(1)}, {60, 16.13, false, math.Inf(1)}, {60, 40, false, 30},
		{23, 20, true, math.Inf(1)}, {23, 20.01, false, math.Inf(1)}, {23, 26, false, 3600}, {23, 40, false, 30},
		{-20, 20, true, math.Inf(1)}, {-20, 40, false, 358.2}, {-20, 50, false, 30},
	} {
		d := fuse(t, "breaker type III", 20)
		d.AmbientC = c.ambient
		o := d.Open(c.amps)
		if math.IsInf(o.FastS, 1) != c.holds || !(o.SlowS == c.slowS || math.Abs(o.SlowS-c.slowS) < 1) {
			t.Errorf("%g A at %g °C: %+v", c.amps, c.ambient, o)
		}
	}
}

func TestOpenStandsAnyInput(t *testing.T) {
	devices(t, func(_ string, d Device) {
		for _, i := range []float64{0, -3, math.NaN(), math.Inf(1), 1e300, 1e-300} {
			if o := d.Open(i); math.IsNaN(o.FastS) || math.IsNaN(o.SlowS) {
				t.Errorf("%+v at %g A: %+v", d.Rating, i, o)
			}
		}
	})
}

func BenchmarkOpen(b *testing.B) {
	d := fuse(b, "blade C", 10)
	for b.Loop() {
		d.Open(33)
	}
}
