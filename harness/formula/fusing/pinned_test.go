package fusing

import (
	"math"
	"testing"

	"fusewright/library"
)

// made is a device of an invented type: 10 A, with the band given.
func made(band ...library.TimePoint) Device {
	return Device{Type: &library.FuseType{Name: "made", Band: band}, Rating: &library.FuseRating{RatingA: 10}, AmbientC: 23}
}

// usual opens within 2 to 50 s at twice its rating, 0.2 to 5 s at four times.
func usual() Device {
	return made(library.TimePoint{Multiple: 2, MinS: 2, MaxS: 50}, library.TimePoint{Multiple: 4, MinS: 0.2, MaxS: 5})
}

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if got != want && !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// Ratings hold at 23 °C. A type with 100 % at 20 °C and 80 % at 60 °C has 98.5 %
// there: at 60 °C it is a fuse of 8.1218 A for its fast edge, at 0 °C one of
// 10.1523 A for its slow edge; the other edges stay.
func TestBandAtOtherAmbients(t *testing.T) {
	hot := usual()
	hot.Type.Rerating = []library.RatedAt{{AmbientC: 20, Share: 1}, {AmbientC: 60, Share: 0.8}}
	cold := hot
	hot.AmbientC, cold.AmbientC = 60, 0
	same(t, "hot, soonest at four times 8.1218 A", hot.Open(4*8/0.985).FastS, 0.2)
	same(t, "hot, latest at 40 A", hot.Open(40).SlowS, 5)
	same(t, "cold, latest at four times 10.1523 A", cold.Open(40/0.985).SlowS, 5)
	same(t, "cold, soonest at 40 A", cold.Open(40).FastS, 0.2)
}

func TestReratingBeyondItsRows(t *testing.T) {
	for _, c := range []struct {
		name    string
		rows    []library.RatedAt
		ambient float64
		want    float64
	}{
		{"falls on", []library.RatedAt{{AmbientC: 20, Share: 1}, {AmbientC: 60, Share: 0.8}}, 100, 0.6},
		{"not below zero", []library.RatedAt{{AmbientC: 20, Share: 1}, {AmbientC: 60, Share: 0.8}}, 300, 0},
		{"a rise is not carried on", []library.RatedAt{{AmbientC: 20, Share: 0.8}, {AmbientC: 60, Share: 0.9}}, 100, 0.9},
	} {
		got, known := rerated(c.rows, c.ambient)
		same(t, c.name, got, c.want)
		if !known {
			t.Errorf("%s: not known", c.name)
		}
	}
}

// A lower limit of four hours is one of carrying for good.
func TestFourHoursCarry(t *testing.T) {
	for _, c := range []struct {
		name       string
		minS, amps float64
		want       float64
	}{
		{"four hours, at the multiple", 14400, 11, math.Inf(1)},
		{"four hours, half way to twice", 14400, math.Sqrt(11 * 20), 120},
		{"a second less, at the multiple", 14399, 11, 14399},
		{"a second less, at the rating", 14399, 10, math.Inf(1)},
		{"a second less, just above the rating", 14399, 10.5, 14399},
	} {
		d := made(library.TimePoint{Multiple: 1.1, MinS: c.minS}, library.TimePoint{Multiple: 2, MinS: 1, MaxS: 5})
		same(t, c.name, d.Open(c.amps).FastS, c.want)
	}
}

func TestBeyondTheBand(t *testing.T) {
	d := usual()
	for _, c := range []struct {
		amps, fast, slow float64
		extended         bool
	}{{40, 0.2, 5, false}, {40.1, 0.2 * 1600 / (40.1 * 40.1), 5 * 1600 / (40.1 * 40.1), true}, {80, 0.05, 1.25, true}} {
		o := d.Open(c.amps)
		same(t, "soonest", o.FastS, c.fast)
		same(t, "latest", o.SlowS, c.slow)
		if o.Extended != c.extended {
			t.Errorf("at %g A extended: %t", c.amps, o.Extended)
		}
	}
	// Typical melting 100 A²s: at 100 A no sooner than 0.8 · 100/10 000 s.
	d.Rating = &library.FuseRating{RatingA: 10, MeltI2t: 100}
	same(t, "soonest by melting", d.Open(100).FastS, 0.008)
	d.Rating.MeltI2t = 1000
	same(t, "soonest by the band", d.Open(100).FastS, 0.032)
}

// 4 A starting with six times and τ: more than the 10 A that the device carries for
// good until 5·4·e^(−t/τ) = 6, so 16·τ·(12.5·0.91 + 10·0.7) = 294 τ above the running
// current. A fuse outlasts 0.22 of its melting I²t 100 000 times.
func TestStartAgainstMelting(t *testing.T) {
	for _, c := range []struct {
		name  string
		melt  float64
		holds bool
	}{{"5.5 of 26", 26, true}, {"5.5 of 25, 0.22 exactly", 25, true}, {"5.5 of 24.9", 24.9, false}} {
		d := usual()
		d.Rating = &library.FuseRating{RatingA: 10, MeltI2t: c.melt}
		got := Carries(d, 4, library.Inrush{PeakRatio: 6, TauS: 5.5 / 294})
		same(t, c.name, got.InrushI2t, 5.5)
		if got.StartHolds != c.holds || !(got.Margin > 1) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// What a device carries for good does not bring it nearer to melting, however long
// it takes to die away: 10 A of 10 A; just above, next to nothing does.
func TestStartBelowTheRating(t *testing.T) {
	for _, c := range []struct {
		peak float64
		most float64
	}{{2, 0}, {2.5, 0}, {2.5001, 0.1}} {
		d := usual()
		d.Rating = &library.FuseRating{RatingA: 10, MeltI2t: 1}
		if got := Carries(d, 4, library.Inrush{PeakRatio: c.peak, TauS: 4}); got.InrushI2t > c.most || c.most > 0 && got.InrushI2t == 0 {
			t.Errorf("%g times 4 A on 10 A: %g A²s", c.peak, got.InrushI2t)
		}
	}
}

// Of 10 A carried at 1.1 times for 100 h and opening at 1.35 times after 0.75 s at the
// soonest: straight on logarithmic axes between, half way at √(11·13.5) A after √(360 000·0.75) s.
func TestNoCliffAboveTheCarrying(t *testing.T) {
	d := fuse(t, "blade C", 10)
	for _, c := range []struct{ amps, want float64 }{
		{11, math.Inf(1)}, {11 * (1 + 1e-8), 360000}, {math.Sqrt(11 * 13.5), math.Sqrt(360000 * 0.75)}, {13.5, 0.75},
	} {
		if got := d.Open(c.amps).FastS; got != c.want && !(math.Abs(got/c.want-1) < 1e-5) {
			t.Errorf("%g A: %g s, want %g s", c.amps, got, c.want)
		}
	}
	d.AmbientC = 40 // a rating of 9.19 A
	if got := d.Open(10.2).FastS; !(got > 3600) {
		t.Errorf("10.2 A at 40 °C: after %g s", got)
	}
}

// 5 A starting with six times and τ = 50 ms: the steady current of the same heat
// is 21.3 A over τ and 19.9 A over the next step looked at. A device of 20.5 A
// that opens no sooner than after τ is at its limit there.
func TestStartAgainstFastEdge(t *testing.T) {
	for _, c := range []struct {
		name  string
		minS  float64
		holds bool
	}{{"sooner than τ", 0.0499, false}, {"at τ", 0.05, false}, {"later than τ", 0.0501, true}} {
		d := made(library.TimePoint{Multiple: 4, MinS: c.minS, MaxS: 5})
		d.Rating = &library.FuseRating{RatingA: 20.5}
		got := Carries(d, 5, library.Inrush{PeakRatio: 6, TauS: 0.05})
		same(t, c.name, got.Margin, c.minS/0.05)
		same(t, "at", got.WorstS, 0.05)
		if got.StartHolds != c.holds {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// A latest opening at the very damage is too late.
func TestProtectsWireAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		damageS  float64
		protects bool
	}{{4.999, false}, {5, false}, {5.001, true}} {
		p := ProtectsWire(usual(), func(i float64) float64 {
			if i == 40 {
				return c.damageS
			}
			return math.Inf(1)
		}, 100)
		if p.Protects != c.protects || p.WorstA != 40 || p.OpenS != 5 {
			t.Errorf("%g s of damage at 40 A against 5 s: %+v", c.damageS, p)
		}
	}
}

// Two devices in series at one current: from 10 ms on the curves decide, below
// that twice the lower one's melting against 0.8 of the upper one's.
func TestSelectiveAtTheEdges(t *testing.T) {
	up := func(minS, melt float64) Device {
		d := made(library.TimePoint{Multiple: 6, MinS: minS, MaxS: 5})
		d.Rating = &library.FuseRating{RatingA: 10, MeltI2t: melt}
		return d
	}
	down := func(maxS, melt float64) Device {
		d := made(library.TimePoint{Multiple: 6, MinS: 1e-4, MaxS: maxS})
		d.Rating = &library.FuseRating{RatingA: 10, MeltI2t: melt}
		return d
	}
	for _, c := range []struct {
		name      string
		down, up  Device
		amps      float64
		selective bool
		by        string
	}{
		{"opens sooner", down(0.499, 0), up(0.5, 0), 60, true, ByCurves},
		{"opens at the same time", down(0.5, 0), up(0.5, 0), 60, false, ByCurves},
		{"opens later", down(0.501, 0), up(0.5, 0), 60, false, ByCurves},
		{"10 ms: 0.8 · 125 A²s at 100 A", down(0.01, 1), up(0.5, 125), 100, true, ByCurves},
		{"just under 10 ms", down(0.01, 1), up(0.5, 125), 100.1, true, ByI2t},
		{"39.8 of 40 A²s", down(0.01, 19.9), up(0.5, 50), 100, true, ByI2t},
		{"40 of 40 A²s", down(0.01, 20), up(0.5, 50), 100, false, ByI2t},
		{"40.2 of 40 A²s", down(0.01, 20.1), up(0.5, 50), 100, false, ByI2t},
	} {
		if s := SelectiveAt(c.down, c.up, c.amps); s.Selective != c.selective || s.By != c.by {
			t.Errorf("%s: %+v", c.name, s)
		}
	}
}
