package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// The gauges read as conductor sizes: 4/0 AWG (-3) to 40 AWG.
const (
	minGauge = -3
	maxGauge = 40
)

// GaugeAreaMm2 is the area in mm² of a solid conductor of an American wire
// gauge; 1/0 is 0, 2/0 is -1. The diameter is 0.005 in · 92^((36−n)/39)
// (ASTM B258). Stranded wire of a standard may carry less copper: the library
// gives the area of each wire type.
func GaugeAreaMm2(gauge int) float64 {
	diameterMm := 0.005 * inchM * 1e3 * math.Pow(92, float64(36-gauge)/39)
	return math.Pi / 4 * diameterMm * diameterMm
}

// GaugeLabel is the gauge as the trade writes it: "16 AWG", "2/0 AWG".
func GaugeLabel(gauge int) string {
	if gauge <= 0 {
		return fmt.Sprintf("%d/0 AWG", 1-gauge)
	}
	return fmt.Sprintf("%d AWG", gauge)
}

// SizeLabel is the library's label of a conductor size as written: "16awg"
// becomes "16 AWG" and "1.50 mm2" becomes "1.5 mm²". It is "" with an error
// when the text is no conductor size.
func SizeLabel(text string) (string, error) {
	s := tidy(text)
	if gauge, ok := parseGauge(s); ok {
		if _, err := gaugeValue(s, gauge); err != nil {
			return "", err
		}
		return GaugeLabel(gauge), nil
	}
	area, err := Parse(s, Area)
	if err != nil {
		return "", err
	}
	return strconv.FormatFloat(area, 'g', 6, 64) + " mm²", nil
}

var gaugeForm = regexp.MustCompile(`^(?i)(?:awg\s*#?([0-9]+)(/0)?|#?([0-9]+)(/0)?\s*awg)$`)

// parseGauge reads "16 AWG", "AWG 16", "#16 AWG", "1/0 AWG" or "00 AWG".
func parseGauge(s string) (int, bool) {
	m := gaugeForm.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	digits := m[1] + m[3]
	n, err := strconv.Atoi(digits)
	switch {
	case m[2]+m[4] != "":
		return 1 - n, err == nil && n >= 1 && n <= 9
	case len(digits) > 1 && strings.Trim(digits, "0") == "":
		return 1 - len(digits), true
	}
	return n, err == nil
}

// gaugeValue is the area of a gauge within the range read.
func gaugeValue(s string, gauge int) (float64, error) {
	if gauge < minGauge || gauge > maxGauge {
		return 0, &Error{What: fmt.Sprintf("%q is not a wire gauge", s),
			Expected: "4/0 AWG to 40 AWG"}
	}
	return GaugeAreaMm2(gauge), nil
}
