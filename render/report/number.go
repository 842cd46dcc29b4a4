package report

import (
	"math"
	"strconv"
	"strings"
)

// threeDigits prints a figure with three significant digits and no exponent;
// the unit follows elsewhere.
func threeDigits(v float64) string {
	if v == 0 {
		return "0"
	}
	decimals := max(0, 2-int(math.Floor(math.Log10(math.Abs(v)))))
	text := strconv.FormatFloat(v, 'f', min(decimals, 6), 64)
	// 9.996 has become 10.00: one digit too many.
	if r, err := strconv.ParseFloat(text, 64); err == nil && decimals > 0 {
		if again := max(0, 2-int(math.Floor(math.Log10(math.Abs(r))))); r != 0 && again < decimals {
			text = strconv.FormatFloat(v, 'f', again, 64)
		}
	}
	return strings.Replace(text, "-", "−", 1)
}
