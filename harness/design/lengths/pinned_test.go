package lengths_test

import (
	"strconv"
	"testing"

	"fusewright/harness/design/lengths"
)

// Whole feet and whole inches are not rounded up by the rounding of binary
// numbers; what is really longer is.
func TestWholeLengthsStay(t *testing.T) {
	ft, si := lengths.In("ft"), lengths.In("")
	for n := 1; n <= 120; n++ {
		want := strconv.Itoa(n)
		if got := ft.Bought(float64(n) * 0.3048); got != want {
			t.Errorf("%d ft are bought as %s ft", n, got)
		}
		if got := ft.AtLeast(float64(n) * 25.4); got != want {
			t.Errorf("%d in are at least %s in", n, got)
		}
		if got := si.AtLeast(float64(n) + 1e-9); got != want {
			t.Errorf("%d mm and a hair are at least %s mm", n, got)
		}
		if got := si.Bought(float64(n) + 1e-9); got != want {
			t.Errorf("%d m and a hair are bought as %s m", n, got)
		}
	}
	for _, c := range []struct{ name, got, want string }{
		{"a millimetre over 3 ft", ft.Bought(3*0.3048 + 0.001), "4"},
		{"a tenth over 1 in", ft.AtLeast(25.5), "1 1/8"},
		{"a tenth over 43 mm", si.AtLeast(43.1), "44"},
		{"1/16 in is 1.5875 mm", ft.Dim(1.5875), "1/16"},
		{"1/32 in is 0.79375 mm", ft.Strip(0.79375), "1/32"},
		{"1/8 in is 3.175 mm", ft.Near(3.175), "1/8"},
	} {
		if c.got != c.want {
			t.Errorf("%s: %q, want %q", c.name, c.got, c.want)
		}
	}
}
