package labels

import "testing"

func TestLengthText(t *testing.T) {
	cases := []struct {
		lengthM float64
		unit    string
		want    string
	}{
		{1.2345, "", "1.23 m"},
		{0, "", "length ?"},
		{0, "ft", "length ?"},
		{0.3048, "ft", "1 ft"},
		{0.305, "ft", "1 ft 1 in"},
		{0.0254, "ft", "1 in"},
		{0.001, "ft", "1 in"},
		{2.4384, "ft", "8 ft"},
		{0.2794001, "ft", "1 ft"},
	}
	for _, c := range cases {
		l := &Labels{Lengths: c.unit}
		if got := l.lengthText(c.lengthM); got != c.want {
			t.Errorf("%g m in %q: %q, want %q", c.lengthM, c.unit, got, c.want)
		}
	}
}
