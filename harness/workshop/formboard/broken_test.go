package formboard

import "testing"

// A run of 200 mm and more is drawn with 50 mm at each end and 16 mm between.
func TestBroken(t *testing.T) {
	for _, c := range []struct{ lengthMm, drawnMm float64 }{{199.9, 199.9}, {200, 116}, {6200, 116}} {
		r := &Run{Length: c.lengthMm}
		if got := r.BrokenMm(); got != c.drawnMm {
			t.Errorf("%g mm are drawn as %g, want %g", c.lengthMm, got, c.drawnMm)
		}
	}
}

// Stations in the ends of a broken run of 800 mm keep their distance from the nearer
// nail; those between are left out.
func TestStation(t *testing.T) {
	broken := &Limb{Run: &Run{Length: 800}, DrawnMm: 116}
	whole := &Limb{Run: &Run{Length: 800}, DrawnMm: 800}
	for _, c := range []struct {
		mm, drawnMm float64
		shown       bool
	}{{0, 0, true}, {50, 50, true}, {50.1, 0, false}, {749.9, 0, false}, {750, 66, true}, {800, 116, true}} {
		if got, ok := broken.Station(c.mm); got != c.drawnMm || ok != c.shown {
			t.Errorf("broken: %g mm is drawn at %g (%v), want %g (%v)", c.mm, got, ok, c.drawnMm, c.shown)
		}
		if got, ok := whole.Station(c.mm); got != c.mm || !ok {
			t.Errorf("whole: %g mm is drawn at %g (%v)", c.mm, got, ok)
		}
	}
}
