package quantity

import (
	"strings"
	"testing"
)

// The ranges that are read, at and beyond each end.
func TestParseAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		ok   bool
	}{
		{"1e12 V", Voltage, true}, {"1.001e12 V", Voltage, false}, {"-1e12 V", Voltage, true}, {"-1.001e12 V", Voltage, false},
		{"4/0 AWG", Area, true}, {"5/0 AWG", Area, false}, {"40 AWG", Area, true}, {"41 AWG", Area, false},
		{strings.Repeat("0", 61) + "1 V", Voltage, true}, {strings.Repeat("0", 62) + "1 V", Voltage, false},
	} {
		if _, err := Parse(c.text, c.dim); (err == nil) != c.ok {
			t.Errorf("%q: %v", c.text, err)
		}
	}
}

// Decimal fractions of a unit round once: 350 mA is 0.35 A to the last bit.
func TestFractionsAreExact(t *testing.T) {
	for text, want := range map[string]float64{"350 mA": 0.35, "7 mA": 0.007, "1.1 mA": 0.0011, "29 %": 0.29, "57 mm": 0.057} {
		dim := map[byte]Dimension{'A': Current, '%': Share, 'm': Length}[text[len(text)-1]]
		if got, err := Parse(text, dim); got != want || err != nil {
			t.Errorf("%s is %.20g, %v; want %.20g", text, got, err, want)
		}
	}
	if got, _ := Parse("1 in", Length); got != 0.0254 {
		t.Errorf("an inch is %g m", got)
	}
	if got, _ := Parse("1 ft", Length); got != 0.3048 {
		t.Errorf("a foot is %g m", got)
	}
}

// Where one unit, and one way of rounding, gives way to the next.
func TestFormatAtItsSteps(t *testing.T) {
	for _, c := range []struct {
		value float64
		dim   Dimension
		want  string
	}{
		{0.9994, Current, "999 mA"}, {0.9996, Current, "1.00 A"}, {9.994, Current, "9.99 A"}, {9.996, Current, "10.0 A"},
		{0.104, Share, "10 %"}, {0.09996, Share, "10 %"}, {0.0994, Share, "9.9 %"},
		{9990, Energy, "9990 Wh"}, {10000, Energy, "10 kWh"},
		{47 * 3600, Duration, "47 h"}, {2 * 86400, Duration, "2 days"},
		{1234567, Power, "1230 kW"},
	} {
		if got := Format(c.value, c.dim); got != c.want {
			t.Errorf("%g: %q, want %q", c.value, got, c.want)
		}
	}
	if got := Plain(0.123456, Current); got != "123.456 mA" {
		t.Errorf("six digits: %q", got)
	}
}
