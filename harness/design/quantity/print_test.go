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
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	if value, limit := Against(1.496, 1.5, Number); value != "1.496" || limit != "1.500" {
		t.Errorf("%s against %s", value, limit)
	}
}
