package quantity

import (
	"math"
	"strconv"
	"strings"
)

// ParseAny reads a quantity of the dimension that its unit tells, and a number
// without a unit as a count or ratio, whose dimension is "".
func ParseAny(text string) (float64, Dimension, error) {
	s := tidy(text)
	number, unit := splitNumber(s)
	if number != "" && strings.HasPrefix(unit, ",") {
		_, dim, err := ParseAny(number + "." + unit[1:])
		if err == nil && dim != "" {
			return 0, dim, commaError(s, number, unit, dim)
		} else if err == nil {
			return 0, "", &Error{What: strconv.Quote(s) + " has a comma in its number", Expected: "a decimal point", Nearest: number + "." + unit[1:]}
		}
	}
	if unit == "" && number != "" && len(s) <= maxText {
		v, err := strconv.ParseFloat(number, 64)
		if err != nil || math.Abs(v) > maxValue {
			return 0, "", &Error{What: strconv.Quote(s) + " is too large for a number", Expected: "a finite number"}
		}
		return v, "", nil
	}
	if _, gauge := parseGauge(s); gauge {
		v, err := Parse(s, Area)
		return v, Area, err
	}
	dim := OfUnit(unit)
	if _, ok := readTape(s); ok {
		dim = Length
	}
	if dim == "" {
		return 0, "", &Error{What: strconv.Quote(s) + " is no quantity of a known unit",
			Expected: "a number with its unit, such as " + examples[Current]}
	}
	v, err := Parse(s, dim)
	return v, dim, err
}

// OfUnit is the dimension that a unit belongs to; "" for none. A unit as it is
// usually written goes before one that differs in capitals.
func OfUnit(unit string) Dimension {
	for _, dim := range dimensions {
		for _, u := range units[dim] {
			if u.text == unit {
				return dim
			}
		}
	}
	for _, dim := range dimensions {
		if unit != "" && findUnit(unit, dim) != nil {
			return dim
		}
	}
	return ""
}

// In is a number of a unit in the base unit of its dimension; as it is for "".
func In(value float64, unit string, dim Dimension) float64 {
	if u := findUnit(unit, dim); u != nil {
		return u.toBase(value)
	}
	return value
}

// Brief prints a value in base units with up to three digits and no zeros at its
// end, so that it can be written into a design: "30 A", "16.1 A", "186 %". The
// dimension "" is a plain number.
func Brief(value float64, dim Dimension) string {
	if dim == Number {
		return Digits(value, 3)
	}
	if text, ok := special(value, dim); ok {
		return text
	}
	s := pick(value, dim, func(scale) int { return 3 })
	return Digits(value/s.factor, 3) + " " + s.unit
}
