package sizing

import (
	"strings"
	"testing"
)

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

// TestHeaterAtRegulatedVoltage: a heater's fuse is chosen for the regulated voltage, at which
// it draws most, though the only situation has the engine stopped. 54 W at 13 V are 3.13 Ω:
// 3.9 A at 12.2 V, of which 5 A × 0.8 = 4.0 A would be enough, 4.6 A at 14.4 V. At 12.5 V
// regulated it stays with 5 A.
func TestHeaterAtRegulatedVoltage(t *testing.T) {
	src := strings.Replace(single("motorcycle", "4 A", "resistor, rated at: 13 V", 1.4), "current: 4 A", "power: 54 W", 1) +
		"situations:\n  stopped: {key: on, engine: 0 rpm, on: [l]}\n"
	for regulated, wantA := range map[string]float64{"14.4 V": 7.5, "14.2 V": 7.5, "12.5 V": 5} {
		d := read(t, strings.Replace(src, "14.2 V", regulated, 1))
		p, err := Complete(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Fuses[0].Rating.RatingA; got != wantA {
			t.Errorf("regulated at %s: %g A, want %g A", regulated, got, wantA)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		if c := p.Choices[0]; wantA == 7.5 && c.Decided != "fuse-under-load" {
			t.Errorf("decided by %s: %s", c.Decided, c.Lost)
		}
	}
}

// TestSocketFuse: a socket that gives 10 A at 12 V takes more on a battery that its charging just does not hold up: 15 A, not
// a fuse of 10 A that the check objects to.
func TestSocketFuse(t *testing.T) {
	d := read(t, strings.NewReplacer("current: 0 A, behaves: ,", "type: accessory socket,", "tray: {ambient: 35 °C}", "tray: {ambient: 45 °C}", "200 A", "9 A").
		Replace(single("off-road", "0 A", "", 1))+"situations:\n  riding: {engine: cruise, on: [l]}\n")
	if _, err := Complete(d); err != nil {
		t.Fatal(err)
	}
	if got := d.Fuses[0].Rating.RatingA; got != 15 {
		t.Errorf("%g A, want 15 A", got)
	}
}
