package fusing

import (
	"math"
	"testing"

	"fusewright/library"
)

// The closed form of the start's I²t against a sum over small steps.
func TestInrushI2tAgainstSum(t *testing.T) {
	for _, c := range []struct{ peak, tau, amps, until float64 }{
		{6, 0.05, 5, 0.03}, {10, 0.003, 4.6, 1}, {4, 0.2, 20, 0.5}, {100, 50e-6, 2, 1e-3},
	} {
		in := library.Inrush{PeakRatio: c.peak, TauS: c.tau}
		const n = 200000
		sum, step := 0.0, c.until/n
		for k := 0; k < n; k++ {
			i := c.amps * (1 + (c.peak-1)*math.Exp(-(float64(k)+0.5)*step/c.tau))
			sum += (i*i - c.amps*c.amps) * step
		}
		if got := InrushI2t(c.amps, in, c.until); math.Abs(got-sum) > 1e-4*sum {
			t.Errorf("%+v: %g A²s, by steps %g", c, got, sum)
		}
	}
}

// Maker's guide to fuse selection, waveform chart: an exponential decay of
// time constant τ has ip²·τ/2. A start whose running current is small against
// its peak tends to it.
func TestInrushTendsToPublishedPulse(t *testing.T) {
	in := library.Inrush{PeakRatio: 1e4, TauS: 0.01}
	if got, want := InrushI2t(1, in, math.Inf(1)), 1e8*0.01/2; math.Abs(got/want-1) > 1e-3 {
		t.Errorf("%g A²s, want %g", got, want)
	}
}

func TestCarries(t *testing.T) {
	f10 := fuse(t, "blade F", 10)
	for _, c := range []struct {
		name   string
		device Device
		amps   float64
		inrush library.Inrush
		holds  bool
	}{
		{"no start", f10, 6, library.Inrush{}, true},
		{"lamp, ten times for 3 ms", f10, 4.6, library.Inrush{PeakRatio: 10, TauS: 0.003}, true},
		{"motor, four times for 0.3 s", f10, 6, library.Inrush{PeakRatio: 4, TauS: 0.3}, false},
		{"start too heavy for the melting I²t", f10, 5, library.Inrush{PeakRatio: 8, TauS: 0.05}, false},
		{"no device", Device{}, 5, library.Inrush{}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Carries(c.device, c.amps, c.inrush); got.StartHolds != c.holds {
				t.Errorf("%+v", got)
			}
		})
	}
}

// A bigger fuse of one type never fails a start that a smaller one outlasts,
// and is never loaded to a larger share.
func TestBiggerFuseCarriesMore(t *testing.T) {
	for _, ft := range library.Default().FuseTypes {
		for _, in := range []library.Inrush{{}, {PeakRatio: 10, TauS: 0.003}, {PeakRatio: 5, TauS: 0.15}} {
			held, share := false, math.Inf(1)
			for _, r := range ft.Ratings {
				c := Carries(Device{Type: ft, Rating: r, AmbientC: 40}, 4, in)
				if c.Share > share || (held && !(c.Margin > 1)) {
					t.Errorf("%s %g A with %+v: %+v", ft.Name, r.RatingA, in, c)
				}
				held, share = held || c.Margin > 1, c.Share
			}
		}
	}
}
