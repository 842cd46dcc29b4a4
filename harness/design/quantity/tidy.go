package quantity

import "strings"

// usual is how the usual spelling of a unit is found: the shown unit of the
// same size, with these exceptions, where several are shown.
var usual = map[string]string{"ohm": "Ω", "mohm": "mΩ", "mm2": "mm²", "A2s": "A²s", "r/min": "rpm"}

// Tidy is a quantity in its usual spelling: the number as written, one space,
// the usual sign of the unit it is in. "1.5mm2" becomes "1.5 mm²", "16awg"
// "16 AWG", "3 feet" "3 ft". The value stays what it is. The error is Parse's.
func Tidy(text string, dim Dimension) (string, error) {
	value, err := Parse(text, dim)
	if err != nil {
		return "", err
	}
	s := tidy(text)
	if dim == Area {
		if gauge, ok := parseGauge(s); ok {
			return GaugeLabel(gauge), nil
		}
	}
	if _, ok := readTape(s); ok {
		return tidyTape(s), nil
	}
	number, unitText := splitNumber(s)
	u := findUnit(unitText, dim)
	sign := unitText
	for _, other := range units[dim] {
		if other.shown && other.factor == u.factor && other.zero == u.zero {
			sign = other.text
			break
		}
	}
	if to, ok := usual[sign]; ok {
		sign = to
	}
	tidied := strings.TrimPrefix(number, "+") + " " + sign
	if again, err := Parse(tidied, dim); err != nil || again != value {
		return s, nil // never another value
	}
	return tidied, nil
}
