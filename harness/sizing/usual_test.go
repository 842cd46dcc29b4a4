package sizing

import "testing"

// TestUsualTypeFirst: the usual type where it has a rating that does, before another of a
// smaller rating; and the ratings that shops have.
func TestUsualTypeFirst(t *testing.T) {
	for _, c := range []struct {
		draw, behaves, want string
		ratingA             float64
	}{
		{"18 A", "motor, duty: 1 %, on for: 5 s, every: 1 min, inrush: {peak: 3, time: 100 ms}", "blade C", 25}, // a pair of horns
		{"10 A", "motor, on for: 10 min, every: 40 min, inrush: {peak: 4, time: 200 ms}", "blade C", 20},        // a compressor
		{"2.8 A", "resistor", "blade C", 5}, // heated grips
	} {
		d := read(t, single("motorcycle", c.draw, c.behaves, 1.4))
		if _, err := Complete(d); err != nil {
			t.Fatal(err)
		}
		if f := d.Fuses[0]; f.Type.Name != c.want || f.Rating.RatingA != c.ratingA {
			t.Errorf("%s %s: %s %g A, want %s %g A", c.draw, c.behaves, f.Type.Name, f.Rating.RatingA, c.want, c.ratingA)
		}
	}
}
