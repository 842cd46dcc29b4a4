package figure

import (
	"math"
	"testing"

	"fusewright/harness/design/quantity"
)

// A figure reads as it is written, to three digits.
func TestFigureText(t *testing.T) {
	for _, tt := range []struct {
		g    Figure
		text string
	}{
		{New(30, 16.1, "A", Larger), "30 A of 16.1 A"},
		{New(15.12, 3, "%", Larger), "15.1 % of 3 %"},
		{New(1.3716, math.NaN(), "m", Larger), "1.37 m"},
		{New(4, 14, "days", Smaller), "4 days of 14 days"},
		{New(80, 75, "°C", Larger), "80 °C of 75 °C"},
		{New(4.0/3, 1.6, "", Smaller), "1.33 of 1.6"},
		{New(12.5, 0, "A", Larger), "12.5 A of 0 A"},
		{New(math.Inf(1), 2, "s", Larger), ""},
		{Figure{}, ""},
	} {
		if got := tt.g.String(); got != tt.text {
			t.Errorf("%+v is written %q, want %q", tt.g, got, tt.text)
		}
		if tt.text == "" {
			continue
		}
		back, err := Parse(tt.text)
		if err != nil || back.Of != tt.g.Of || tt.g.WorseThan(Figure{back.Value, back.Limit, back.Of, tt.g.Worse}) {
			t.Errorf("%q reads as %+v, %v; want %+v", tt.text, back, err, tt.g)
		}
	}
	for _, text := range []string{"", "A", "30 A of 16 V", "30 A of", "30 furlongs", "1e99", "30 A of 16 A of 3 A"} {
		if g, err := Parse(text); err == nil {
			t.Errorf("%q reads as %+v", text, g)
		}
	}
}

// A figure is worse from a twentieth on: of the value, or of how far it is beyond.
func TestWorseThan(t *testing.T) {
	amps := func(value, limit float64) Figure { return New(value, limit, "A", Larger) }
	volts := func(value, limit float64) Figure { return New(value, limit, "V", Smaller) }
	for _, tt := range []struct {
		name     string
		was, now Figure
		worse    bool
	}{
		{"at the share", amps(20, 10), amps(21, 10), false},
		{"over it", amps(20, 10), amps(21.01, 10), true},
		{"limit lower, at the share", amps(20, 10), amps(20, 9), false},
		{"limit lower, over it", amps(20, 10), amps(20, 8.99), true},
		{"both up", amps(20, 10), amps(30, 20), false},
		{"better", amps(20, 10), amps(11, 10), false},
		{"may carry nothing", amps(12, 10), amps(12, 0), true},
		{"floor, at the share", volts(10, 10.5), volts(9.5, 10.5), false},
		{"floor, below it", volts(10, 10.5), volts(9.49, 10.5), true},
		{"no limit said", amps(20, math.NaN()), amps(20, 1), false},
		{"another unit", Figure{Value: 20, Limit: 10, Of: quantity.Voltage}, amps(20, 10), true},
		{"without end", amps(20, 10), amps(math.Inf(1), 10), true},
		{"without end as before", amps(math.Inf(1), 10), amps(math.Inf(1), 10), false},
		{"no figure", amps(20, 10), Figure{}, false},
	} {
		if got := tt.now.WorseThan(tt.was); got != tt.worse {
			t.Errorf("%s: worse %t, want %t", tt.name, got, tt.worse)
		}
	}
}
