package fusing

import (
	"testing"

	"fusewright/library"
)

// The derived example of the protection references: 10 A behind 30 A, type F, at
// 60 A. 600 % of 10 A opens in 0.1 s at most, 200 % of 30 A in 0.15 s at least.
func TestSelectiveAtOneCurrent(t *testing.T) {
	f := library.Default().FuseType("blade F")
	down := Device{Type: f, Rating: RatingOf(f, 10), AmbientC: RatedC}
	up := Device{Type: f, Rating: RatingOf(f, 30), AmbientC: RatedC}
	s := SelectiveAt(down, up, 60)
	if !s.Selective || s.By != ByCurves || !(s.DownS <= 0.1*1.0001) || !(s.UpS >= 0.15*0.9999) {
		t.Errorf("10 A behind 30 A at 60 A: %+v", s)
	}
	if s := SelectiveAt(down, down, 60); s.Selective || s.FailsA != 60 {
		t.Errorf("two alike at 60 A: %+v", s)
	}
	if s := SelectiveAt(down, Device{}, 60); s.Selective || s.Known {
		t.Errorf("unknown device: %+v", s)
	}
}
