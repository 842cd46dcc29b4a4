// Package quantity reads quantities as people write them ("18 W", "350 mA",
// "3 ft", "16 AWG") into one base unit per dimension, and prints them with the
// digits a builder would write down. It is the only place that knows units.
//
// A number is never taken without its unit: a 5 that could be volts or amperes
// is a mistake waiting to happen, so the error shows the units that would do.
//
//	amps, err := quantity.Parse("350 mA", quantity.Current) // 0.35
//	text := quantity.Format(0.35, quantity.Current)         // "350 mA"
package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"
)

// Dimension is what a quantity measures. Its text names it in messages.
type Dimension string

// The dimensions and their base units.
const (
	Voltage           Dimension = "voltage"            // V
	Current           Dimension = "current"            // A
	Resistance        Dimension = "resistance"         // Ω
	ResistancePerM    Dimension = "resistance per m"   // Ω/m
	Power             Dimension = "power"              // W
	Energy            Dimension = "energy"             // Wh
	Length            Dimension = "length"             // m
	Area              Dimension = "conductor size"     // mm²
	Temperature       Dimension = "temperature"        // °C
	Charge            Dimension = "charge"             // Ah
	Share             Dimension = "share"              // 1 (30 % is 0.3)
	Speed             Dimension = "engine speed"       // rpm
	Duration          Dimension = "time"               // s
	CurrentSquareTime Dimension = "melting energy I²t" // A²s

	// Number and Mass are printed and never read: a design has none of them.
	Number Dimension = ""     // a count or a ratio
	Mass   Dimension = "mass" // g
)

// Error is a text that is not a quantity of the dimension asked for.
type Error struct {
	What     string // what is wrong
	Expected string // the units that would do, or the form
	Nearest  string // the likely meaning; may be empty
}

// Error gives `what (expected …; did you mean "…"?)`.
func (e *Error) Error() string {
	var extra []string
	if e.Expected != "" {
		extra = append(extra, "expected "+e.Expected)
	}
	if e.Nearest != "" {
		extra = append(extra, fmt.Sprintf("did you mean %q?", e.Nearest))
	}
	if len(extra) == 0 {
		return e.What
	}
	return e.What + " (" + strings.Join(extra, "; ") + ")"
}

// maxText is the longest text taken for a quantity, in bytes.
const maxText = 64

// maxValue is the largest value taken, in base units: far beyond anything in a
// vehicle, and small enough that products of two stay finite.
const maxValue = 1e12

// Parse reads a quantity and returns its value in the dimension's base unit.
// The value is always finite. Errors are of type *Error.
func Parse(text string, dim Dimension) (float64, error) {
	s := tidy(text)
	switch {
	case s == "":
		return 0, &Error{What: "empty " + string(dim), Expected: Expected(dim)}
	case len(s) > maxText:
		return 0, &Error{What: "too long for a " + string(dim), Expected: Expected(dim)}
	}
	if dim == Area {
		if gauge, ok := parseGauge(s); ok {
			return gaugeValue(s, gauge)
		}
	}
	if inches, ok := readTape(s); ok {
		if dim != Length {
			return 0, otherDimension(s, Length, dim)
		}
		return convert(s, inches, "in", dim)
	}
	number, unitText := splitNumber(s)
	if number == "" {
		return 0, noNumber(s, dim)
	}
	if strings.HasPrefix(unitText, ",") {
		return 0, commaError(s, number, unitText, dim)
	}
	value, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		return 0, &Error{What: fmt.Sprintf("%q is too large for a number", s),
			Expected: "a finite " + string(dim)}
	}
	if unitText == "" {
		return 0, &Error{What: fmt.Sprintf("%s has no unit", s), Expected: Expected(dim)}
	}
	return convert(s, value, unitText, dim)
}

// convert applies a unit to a number.
func convert(s string, value float64, unitText string, dim Dimension) (float64, error) {
	u := findUnit(unitText, dim)
	if u == nil {
		return 0, wrongUnit(s, unitText, dim)
	}
	result := u.toBase(value)
	if math.Abs(result) > maxValue {
		return 0, &Error{What: fmt.Sprintf("%q is too large for a number", s),
			Expected: "a finite " + string(dim)}
	}
	return result, nil
}

// noNumber explains a text that does not start with a number.
func noNumber(s string, dim Dimension) *Error {
	switch strings.TrimLeft(strings.ToLower(strings.Fields(s)[0]), "+-.") {
	case "nan", "inf", "infinity":
		return &Error{What: fmt.Sprintf("%q is not a finite number", s), Expected: Expected(dim)}
	}
	return &Error{What: fmt.Sprintf("%q is not a %s", s, dim), Expected: Expected(dim)}
}

// commaError explains a comma in a number. Before exactly three digits it may mark the
// thousands as well as the decimals: both readings are named, none is guessed.
func commaError(s, number, rest string, dim Dimension) *Error {
	e := &Error{What: fmt.Sprintf("%q has a comma in its number", s),
		Expected: "a decimal point and no thousands mark"}
	fixed := number + "." + rest[1:]
	if _, err := Parse(fixed, dim); err != nil {
		return e
	}
	if _, err := Parse(number+rest[1:], dim); err == nil && thousands.MatchString(number+rest) {
		digits, unitText := splitNumber(fixed)
		e.What += fmt.Sprintf(": is %s%s %s or %s %s meant?", number, rest[1:4], unitText, strings.TrimRight(strings.TrimRight(digits, "0"), "."), unitText)
		return e
	}
	e.Nearest = fixed
	return e
}

// thousands is a number of up to three digits, a comma and exactly three more.
var thousands = regexp.MustCompile(`^[-+]?[1-9][0-9]{0,2},[0-9]{3}([^0-9]|$)`)

// wrongUnit explains a unit that is not of the dimension.
func wrongUnit(s, unitText string, dim Dimension) *Error {
	if e := megaError(s, unitText, dim); e != nil {
		return e
	}
	for _, other := range dimensions {
		if u := findUnit(unitText, other); u != nil && other != dim {
			return otherDimension(s, other, dim)
		}
	}
	return &Error{What: fmt.Sprintf("%q has the unknown unit %q", s, unitText),
		Expected: Expected(dim)}
}

func otherDimension(s string, is, want Dimension) *Error {
	return &Error{What: fmt.Sprintf("%q is a %s, not a %s", s, is, want), Expected: Expected(want)}
}

// megaError asks what a capital M in front of a unit means; nil where there is none.
func megaError(s, unitText string, dim Dimension) *Error {
	for _, u := range units[dim] {
		if !strings.EqualFold(u.text, unitText) || !u.couldBeMega(unitText, dim) {
			continue
		}
		meant := u.text
		if rest := u.text[1:]; isUnit("M"+rest, dim) {
			meant += " or M" + rest
		} else if isUnit(rest, dim) {
			meant += " or " + rest
		}
		return &Error{What: fmt.Sprintf("%q has a capital M, the sign of mega: is %s meant?", s, meant),
			Expected: Expected(dim)}
	}
	return nil
}

// tidy turns every kind of space into a plain one and typographic signs into
// the ones the unit table knows.
func tidy(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r), r == '\u2007', r == '\u202f', r == '\u00a0':
			return ' '
		case r == '\u2212' || r == '\u2013': // minus sign, en dash
			return '-'
		case r == '\u2126': // ohm sign
			return 'Ω'
		case r == '\u03bc': // Greek small mu
			return 'µ'
		}
		return r
	}, text)
	return strings.Join(strings.Fields(text), " ")
}

// number is what a quantity begins with: a plain decimal with an optional exponent;
// no hexadecimal, no underscores.
var number = regexp.MustCompile(`^[-+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?`)

// splitNumber parts "18W" into "18" and "W". The number is empty when the text
// does not start with one.
func splitNumber(s string) (digits, rest string) {
	digits = number.FindString(s)
	return digits, strings.TrimSpace(s[len(digits):])
}
