package fusing

import (
	"fmt"
	"math"
	"testing"

	"fusewright/library"
)

// A prepared device answers as the plain one does, for every type and rating of
// the library, and forgets what it prepared when it is changed.
func TestPreparedAnswersTheSame(t *testing.T) {
	answers := func(d Device, a float64) string {
		p := ProtectsWire(d, func(i float64) float64 { return 5000 / (i * i) }, a)
		return fmt.Sprint(d.Open(a), p, Selective(d, d, a), SelectiveAt(d, d, a),
			Carries(d, a/10, library.Inrush{PeakRatio: 5, TauS: 0.05}))
	}
	compared := 0
	for _, ft := range library.Default().FuseTypes {
		for _, r := range ft.Ratings {
			for _, ambient := range []float64{-20, RatedC, 85} {
				d := Device{Type: ft, Rating: r, AmbientC: ambient}
				ready := d.Prepared()
				for _, multiple := range []float64{0.5, 1, 1.2, 1.5, 4, 40} {
					compared++
					if got, want := answers(ready, multiple*r.RatingA), answers(d, multiple*r.RatingA); got != want {
						t.Fatalf("%s %g A: %s, plain %s", ft.Name, r.RatingA, got, want)
					}
				}
				ready.AmbientC, d.AmbientC = ambient+40, ambient+40
				if got, want := answers(ready, 2*r.RatingA), answers(d, 2*r.RatingA); got != want {
					t.Fatalf("%s %g A, hotter: %s, plain %s", ft.Name, r.RatingA, got, want)
				}
			}
		}
	}
	if compared < 100 {
		t.Errorf("only %d answers compared", compared)
	}
	if o := (Device{}).Prepared().Open(5); !math.IsInf(o.SlowS, 1) {
		t.Errorf("nothing known, opens after %g s", o.SlowS)
	}
}
