package quantity

import (
	"math"
	"testing"
)

// Numbers without a unit, ranges, masses and great resistances, as printed.
func TestPrintedNumbers(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Format(1.5, Number), "1.50"}, {Format(0, Number), "0"}, {Format(-9.996, Number), "−10.0"},
		{Format(math.Inf(1), Number), "∞"}, {Format(12345, Number), "12300"}, {Format(0.0004, Number), "0.000400"},
		{Digits(1.5, 3), "1.5"}, {Digits(0.000012344, 4), "0.00001234"}, {Digits(-123456, 4), "−123500"},
		{Digits(math.NaN(), 4), NotKnown}, {Digits(0, 4), "0"},
		{Format(0.04, Mass), "0.0 g"}, {Format(12.34, Mass), "12.3 g"}, {Format(1234, Mass), "1230 g"},
		{Format(999.6e3, Resistance), "1 MΩ"}, {Format(999.4e3, Resistance), "999 kΩ"}, {Format(22e6, Resistance), "22 MΩ"},
		{Range(0.2, 0.48, Voltage), "200 to 480 mV"}, {Range(0.2, 1.48, Voltage), "0.20 to 1.48 V"},
		{Range(0, 12, Voltage), "0 to 12.0 V"}, {Range(900, 1100, Resistance), "0.9 to 1.1 kΩ"},
		{Format(1.5e-6, Number), "0.00000150"}, {Format(1e-6, Number), "0.00000100"}, {Format(9.9e-7, Number), "<0.000001"},
		{Format(1e-300, Resistance), "<0.000001 mΩ"}, {Format(-1e-300, Resistance), ">−0.000001 mΩ"}, {Format(1.1e-9, Resistance), "0.0000011 mΩ"},
		{Digits(1e-12, 4), "0.000000000001"}, {Digits(1e-300, 4), "1e-300"}, {Format(1e-300, Length), "0 mm"},
		{FormatIn(1.25, Resistance, "mΩ"), "1250 mΩ"}, {FormatIn(0.00936, Resistance, "mΩ"), "9.36 mΩ"},
		{FormatIn(0, Resistance, "mΩ"), "0 mΩ"}, {FormatIn(math.NaN(), Resistance, "mΩ"), NotKnown},
		{RangeIn(900, 1100, Resistance, "Ω"), "900 to 1100 Ω"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	if value, limit := Against(1.496, 1.5, Number); value != "1.496" || limit != "1.500" {
		t.Errorf("%s against %s", value, limit)
	}
}
