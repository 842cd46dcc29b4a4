package report

import (
	"slices"
	"testing"
)

// A limit and the figure before it are told apart; units print as in sentences.
func TestFigures(t *testing.T) {
	of := func(v float64) *float64 { return &v }
	f := Finding{Numbers: []Number{
		{Name: "drop nominal", Value: of(2.8), Unit: "%"}, {Name: "drop worst case", Value: of(3.004), Unit: "%"},
		{Name: "limit", Value: of(3), Unit: "%"}, {Name: "margin", Value: of(-0.004), Unit: "%"},
		{Name: "ambient", Value: of(80), Unit: "°C"}, {Name: "ratio", Value: of(1.5)}, {Name: "drain", Unit: "A"},
	}}
	want := []string{"drop nominal 2.8 %", "drop worst case 3.004 %", "limit 3.000 %", "margin −0.00400 %", "ambient 80 °C", "ratio 1.50", "drain none"}
	if got := f.Figures(); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	for v, want := range map[float64]string{0.227: "227 mV", -0.227: "−227 mV", 14.2: "14.2 V"} {
		if got := volts(&v); got != want {
			t.Errorf("%g V is %q, want %q", v, got, want)
		}
	}
}
