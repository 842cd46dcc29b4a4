package report

import (
	"math"
	"strings"

	"fusewright/harness/design/quantity"
)

// none stands for a figure that is not known, or is none.
const none = "–"

// printed is a figure in base units as quantities are printed.
func printed(v *float64, dim quantity.Dimension) string {
	if v == nil {
		return none
	}
	return quantity.Format(*v, dim)
}

func amps(v *float64) string  { return printed(v, quantity.Current) }
func volts(v *float64) string { return printed(v, quantity.Voltage) }
func share(v *float64) string { return printed(v, quantity.Share) }

// charge is a state of charge; a ride moves it by tenths of a percent.
func charge(v *float64) string {
	if v == nil {
		return none
	}
	return quantity.Fixed(100**v, 1) + " %"
}

// times is how many times one figure is another; one far beyond any doubt is said to be
// more than mostTimes.
func times(v *float64) string {
	if v != nil && *v > mostTimes {
		return "> " + quantity.Plain(mostTimes, quantity.Number)
	}
	return printed(v, quantity.Number)
}

const mostTimes = 10_000.0

// rating is a nominal current.
func rating(v *float64) string {
	if v == nil {
		return none
	}
	return quantity.Plain(*v, quantity.Current)
}

// against prints a figure and the limit that it is held against, with the digits
// that tell them apart.
func against(v, limit *float64, dim quantity.Dimension) (figure, most string) {
	if v == nil || limit == nil {
		return printed(v, dim), printed(limit, dim)
	}
	return quantity.Against(*v, *limit, dim)
}

// celsius is a temperature of copper, which melts where none is given.
func celsius(v *float64) string {
	if v == nil {
		return "melts"
	}
	return quantity.Format(*v, quantity.Temperature)
}

// seconds is a time; without end, the word for it.
func seconds(v *float64, never string) string {
	if v == nil {
		return never
	}
	return quantity.Format(*v, quantity.Duration)
}

// duration is a time given in units of so many seconds.
func duration(v *float64, unitS float64) string {
	if v == nil {
		return none
	}
	return quantity.Format(*v*unitS, quantity.Duration)
}

// Engine is an engine speed in words.
func Engine(rpm float64) string {
	if rpm == 0 {
		return "stopped"
	}
	return quantity.Format(rpm, quantity.Speed)
}

// figureText is a figure of a unit as quantities are printed, or three digits of
// what is no quantity or would be rounded to nothing, as a slight margin.
func figureText(v float64, unit string) string {
	if dim := quantity.OfUnit(unit); dim != "" {
		text := quantity.Format(quantity.In(v, unit, dim), dim)
		if v == 0 || math.IsInf(v, 0) || strings.ContainsAny(text, "123456789") {
			return text
		}
	}
	return strings.TrimSpace(quantity.Format(v, quantity.Number) + " " + unit)
}
