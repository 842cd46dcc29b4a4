package quantity

import (
	"math"
	"strconv"
	"strings"
)

// NotKnown is what stands for a value that is not a number.
const NotKnown = "not known"

// scale is one unit to print a dimension in, from a magnitude upwards.
type scale struct {
	from     float64 // base units
	factor   float64 // base units per printed unit
	unit     string
	digits   int  // significant
	decimals int  // most decimals; -1 = as the digits need
	trim     bool // drop trailing zeros
}

// scales of each dimension, largest first. Measured values keep their trailing
// zeros where the last digit says how sure the number is (2.10 A); resistances,
// sizes and times read better without.
var scales = map[Dimension][]scale{
	Voltage: {{1, 1, "V", 3, -1, false}, {0, 1e-3, "mV", 3, 1, true}},
	Current: {{1, 1, "A", 3, -1, false}, {1e-3, 1e-3, "mA", 3, -1, true}, {0, 1e-6, "µA", 3, 1, true}},
	Resistance: {{1e6, 1e6, "MΩ", 3, -1, true}, {1e3, 1e3, "kΩ", 3, -1, true}, {1, 1, "Ω", 3, -1, true},
		{0, 1e-3, "mΩ", 3, -1, true}},
	ResistancePerM:    {{0, 1e-3, "mΩ/m", 3, -1, true}},
	Power:             {{1e3, 1e3, "kW", 3, -1, true}, {0, 1, "W", 3, -1, true}},
	Energy:            {{1e4, 1e3, "kWh", 3, -1, true}, {0, 1, "Wh", 3, -1, true}},
	Length:            {{1, 1, "m", 3, 2, false}, {0, 1e-3, "mm", 3, 1, true}},
	Area:              {{0, 1, "mm²", 3, -1, true}},
	Temperature:       {{0, 1, "°C", 4, 1, true}},
	Charge:            {{0, 1, "Ah", 3, -1, true}},
	Share:             {{0.1, 1e-2, "%", 3, 0, false}, {0, 1e-2, "%", 2, 2, false}},
	Speed:             {{0, 1, "rpm", 6, 0, true}},
	Duration:          durationScales,
	CurrentSquareTime: {{0, 1, "A²s", 3, -1, true}},
	Number:            {{0, 1, "", 3, -1, false}},
	Mass:              {{0, 1, "g", 3, 1, false}},
}

var durationScales = []scale{{2 * 86400, 86400, "days", 3, 1, true}, {3600, 3600, "h", 3, -1, true},
	{60, 60, "min", 3, -1, true}, {1, 1, "s", 3, -1, true}, {0, 1e-3, "ms", 3, -1, true}}

// Format prints a value in base units as a measured or computed quantity, with
// the digits that mean something: "2.10 A", "350 mA", "14.3 V", "9 mΩ",
// "1.25 m", "3.0 %". A value that is not a number is NotKnown.
func Format(value float64, dim Dimension) string {
	if text, ok := special(value, dim); ok {
		return text
	}
	return format(value, dim, 0)
}

// FormatIn is Format in a unit of the caller's choice, for a column that keeps to
// one: "1250 mΩ" beside "9.1 mΩ". It panics where the dimension has no such unit.
func FormatIn(value float64, dim Dimension, unit string) string {
	if text, ok := special(value, dim); ok && value != 0 {
		return text
	}
	s := pick(value, dim, func(s scale) int { return s.digits })
	s.factor, s.unit = findUnit(unit, dim).factor, unit
	return s.withUnit(s.text(value))
}

// mostDigits is how far Against goes.
const mostDigits = 5

// Against is Format of a value and of the limit it is held against, with as many
// more digits, up to five in all, as it takes to tell the two apart:
// "3.04 %" and "3.00 %", never "3.0 %; 3.0 % allowed". Two that are the same to
// five digits are printed as Format prints them.
func Against(value, limit float64, dim Dimension) (valueText, limitText string) {
	first, least := Format(value, dim), Format(limit, dim)
	valueText, limitText = first, least
	for more := 1; valueText == limitText; more++ {
		s := pick(value, dim, func(s scale) int { return s.digits })
		if _, none := special(value, dim); none || s.digits+more > mostDigits {
			return first, least
		}
		valueText, limitText = format(value, dim, more), format(limit, dim, more)
	}
	return valueText, limitText
}

// format prints a finite value with so many digits more than usual, none of them
// trimmed.
func format(value float64, dim Dimension, more int) string {
	s := pick(value, dim, func(s scale) int { return s.digits + more })
	if more > 0 {
		s.digits += more
		s.trim = false
		if s.decimals >= 0 {
			s.decimals += more
		}
	}
	return s.withUnit(s.text(value))
}

func (s scale) withUnit(number string) string { return strings.TrimRight(number+" "+s.unit, " ") }

// Range prints a range in the unit and to the decimals of its upper end: "0.20 to
// 0.48 V".
func Range(low, high float64, dim Dimension) string {
	return rangeTo(low, Format(high, dim), dim)
}

// RangeIn is Range in a unit of the caller's choice.
func RangeIn(low, high float64, dim Dimension, unit string) string {
	return rangeTo(low, FormatIn(high, dim, unit), dim)
}

func rangeTo(low float64, text string, dim Dimension) string {
	number, unit, _ := strings.Cut(text, " ")
	_, decimals, _ := strings.Cut(number, ".")
	lowNumber, lowUnit, _ := strings.Cut(Format(low, dim), " ")
	if u := findUnit(unit, dim); u != nil && lowUnit != unit {
		lowNumber = Fixed(low/u.factor, len(decimals))
	}
	return lowNumber + " to " + text
}

// Digits prints a number with up to so many significant digits, without zeros at
// its end and without an exponent but below 1e-12, for people.
func Digits(v float64, digits int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return Format(v, Number)
	}
	form := byte('f')
	if v != 0 && math.Abs(v) < 1e-12 {
		form = 'e'
	}
	return minus(strconv.FormatFloat(roundTo(v, digits), form, -1, 64))
}

// Plain prints a value in base units as a nominal quantity, without trailing
// zeros and with up to six digits: "15 A", "7.5 A", "0.35 mm²", "12 V".
func Plain(value float64, dim Dimension) string {
	if text, ok := special(value, dim); ok {
		return text
	}
	s := pick(value, dim, func(scale) int { return 6 })
	v, form := roundTo(value/s.factor, 6), byte('f')
	if v != 0 && math.Abs(v) < 1e-6 {
		form = 'e'
	}
	return minus(strconv.FormatFloat(v, form, -1, 64)) + " " + s.unit
}

// Fixed prints a number with fixed decimals, for people: with the minus sign of
// print, and none before a zero.
func Fixed(v float64, decimals int) string {
	return minus(unsignZero(strconv.FormatFloat(v, 'f', decimals, 64)))
}

// minus puts the sign of print for the hyphen before a number.
func minus(text string) string {
	if rest, negative := strings.CutPrefix(text, "-"); negative {
		return "−" + rest
	}
	return text
}

// special handles what has no digits.
func special(value float64, dim Dimension) (string, bool) {
	switch {
	case math.IsNaN(value):
		return NotKnown, true
	case math.IsInf(value, 0):
		sign := ""
		if value < 0 {
			sign = "−"
		}
		return strings.TrimRight(sign+"∞ "+Base(dim), " "), true
	case value == 0 && dim != Share:
		return strings.TrimRight("0 "+Base(dim), " "), true
	}
	return "", false
}

// pick is the scale for a value, judged after rounding so that 999.9 mA is
// printed as 1.00 A.
func pick(value float64, dim Dimension, digits func(scale) int) scale {
	list := scales[dim]
	for _, s := range list[:len(list)-1] {
		smaller := roundTo(math.Abs(value)/s.factor, digits(s))
		if smaller*s.factor >= s.from*(1-1e-12) {
			return s
		}
	}
	return list[len(list)-1]
}

// leastShown is the least figure printed in its unit: what is less says so in
// place of a row of zeros.
const leastShown = 1e-6

// text prints a value in the scale's unit.
func (s scale) text(value float64) string {
	v := roundTo(value/s.factor, s.digits)
	decimals := 0
	if v != 0 {
		decimals = max(0, s.digits-1-int(math.Floor(math.Log10(math.Abs(v)))))
	}
	if s.decimals >= 0 {
		decimals = min(decimals, s.decimals)
	} else if v != 0 && math.Abs(v) < leastShown {
		if v < 0 {
			return ">−0.000001"
		}
		return "<0.000001"
	}
	// Percentages under ten show one decimal at least: "3.0 %", "0.0 %".
	if s.unit == "%" && s.decimals > 0 {
		decimals = max(decimals, 1)
	}
	// Rounding v a second time would turn 1.046 into 1.1, so decimals come from
	// the value itself; v serves where its digits end before the decimal point.
	if decimals > 0 || math.Abs(v) < math.Pow10(s.digits) {
		v = value / s.factor
	}
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if s.trim {
		text = trimZeros(text)
	}
	return minus(unsignZero(text))
}

// roundTo rounds to significant digits.
func roundTo(value float64, digits int) float64 {
	text := strconv.FormatFloat(value, 'e', digits-1, 64)
	rounded, _ := strconv.ParseFloat(text, 64) // own output always parses
	return rounded
}

// trimZeros drops zeros after the decimal point.
func trimZeros(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// unsignZero keeps a rounded-away value from printing as "-0".
func unsignZero(text string) string {
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}
