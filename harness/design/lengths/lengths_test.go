package lengths_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design/lengths"
)

func TestBothUnits(t *testing.T) {
	si, ft := lengths.In(""), lengths.In("ft")
	for _, c := range []struct{ name, got, want string }{
		{"cut", si.Cut(1.32), "1.320 m"},
		{"cut 1.320 m is 51.97 in", ft.Cut(1.32), "4 ft 4 in"},
		{"cut 0.19 m is 7.48 in", ft.Cut(0.19), "7 1/2 in"},
		{"text 762 mm is 30 in", ft.Text(0.762), "2 ft 6 in"},
		{"text 178 mm is 7.008 in", ft.Text(0.178), "7 in"},
		{"text below nothing", ft.Text(-0.584), "−1 ft 11 in"},
		{"text metric", si.Text(0.762), "762 mm"},
		{"text not known", ft.Text(math.NaN()), "not known"},
		{"amount", ft.Amount(3.048), "10.0"},
		{"amount metric", si.Amount(3.048), "3.05"},
		{"bought 9 m is 29.5 ft", ft.Bought(9), "30"},
		{"bought metric", si.Bought(2.62), "3"},
		{"dimension", ft.Dim(812.8), "32"},
		{"dimension 368.3 mm is 14.5 in", ft.Dim(368.3), "14 1/2"},
		{"dimension metric", si.Dim(812.8), "812.8"},
		{"strip 7 mm is 8.8 thirty-seconds", ft.Strip(7), "9/32"},
		{"strip 9 mm is 11.3 thirty-seconds", ft.Strip(9), "11/32"},
		{"strip metric", si.Strip(6.5), "6.5"},
		{"bend radius goes up", ft.AtLeast(43), "1 3/4"},
		{"bend radius goes up, metric", si.AtLeast(42.1), "43"},
		{"near", ft.Near(100), "3 7/8"},
		{"width", ft.Width(9.2), "0.36"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}

// TestNeverShort holds for every length of the cut list: what is cut by the
// inches is no shorter than by the metres, and by less than an eighth longer.
func TestNeverShort(t *testing.T) {
	for mm := 5.0; mm < 3000; mm += 5 {
		got := inches(t, lengths.In("ft").Cut(mm/1000)) * 25.4
		if got < mm-1e-4 || got > mm+25.4/8 {
			t.Errorf("%g mm is cut as %g mm", mm, got)
		}
	}
}

// inches reads "4 ft 4 1/8 in" back.
func inches(t *testing.T, text string) float64 {
	t.Helper()
	sum, last := 0.0, 0.0
	for _, word := range strings.Fields(text) {
		switch top, bottom, cut := strings.Cut(word, "/"); {
		case word == "ft":
			sum, last = sum+12*last, 0
		case word == "in":
			sum, last = sum+last, 0
		case cut:
			a, _ := strconv.ParseFloat(top, 64)
			b, _ := strconv.ParseFloat(bottom, 64)
			last += a / b
		default:
			v, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			last += v
		}
	}
	return sum
}
