package derivation

import (
	"math"
	"strconv"
	"strings"
)

// dimension is how values of a kind are printed: units from the largest down, each
// from a magnitude on. Between a base unit and its multiples lie the factors that the
// prefixes say and no others, so that a formula multiplies out as it stands.
type dimension struct{ scales []scale }

type scale struct {
	from, factor float64
	unit         string
}

func in(unit string) *dimension { return &dimension{[]scale{{0, 1, unit}}} }

// The dimensions of figures.
var (
	volts = &dimension{[]scale{{1, 1, "V"}, {0, 1e-3, "mV"}}}
	amps  = &dimension{[]scale{{0.1, 1, "A"}, {0, 1e-3, "mA"}}}
	ohms  = &dimension{[]scale{{1, 1, "Ω"}, {0, 1e-3, "mΩ"}}}
	perM  = &dimension{[]scale{{1, 1, "Ω/m"}, {0, 1e-3, "mΩ/m"}}}
	watts = &dimension{[]scale{{0.1, 1, "W"}, {0, 1e-3, "mW"}}}

	metres, celsius, kelvin, mm2 = in("m"), in("°C"), in("K"), in("mm²")
	hours, days, ampH            = in("h"), in("days"), in("Ah")
	seconds                      = &dimension{[]scale{{1, 1, "s"}, {0, 1e-3, "ms"}}}
	wattsPerM, rpm, plain        = in("W/m"), in("rpm"), in("")
	percent                      = &dimension{[]scale{{0, 1e-2, "%"}}}
	a2s                          = in("A²s")

	millimetres = &dimension{[]scale{{0, 1e-3, "mm"}}}
	viscosity   = &dimension{[]scale{{0, 1e-6, "mm²/s"}}}
	conducts    = in("W/(m·K)")
	radiates    = &dimension{[]scale{{0, 1e-9, "nW/(m²·K⁴)"}}}
	wattsPerM2  = in("W/m²")
	kmPerW      = in("K·m/W")
	perS2       = in("m/s²")
)

func (d *dimension) scaleOf(v float64) scale {
	for _, s := range d.scales {
		if math.Abs(v) >= s.from {
			return s
		}
	}
	return d.scales[len(d.scales)-1]
}

// mostDigits is what a pocket calculator with logarithms shows.
const mostDigits = 10

// number is a value in its scale with so many significant digits, and what the last
// digit counts, in base units.
func number(v float64, s scale, digits int) (text string, last float64) {
	x := v / s.factor
	decimals := 0
	if x != 0 {
		decimals = max(0, digits-1-int(math.Floor(math.Log10(math.Abs(x))+1e-12)))
	}
	return fixed(x, decimals), math.Pow10(-decimals) * s.factor
}

func fixed(x float64, decimals int) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if rest, negative := strings.CutPrefix(text, "-"); negative {
		if strings.Trim(rest, "0.") == "" {
			return rest
		}
		return "−" + rest
	}
	return text
}

// asWritten is a number with all digits that it has, up to ten.
func asWritten(v float64, s scale) (text string, last float64) {
	x, _ := strconv.ParseFloat(strconv.FormatFloat(v/s.factor, 'g', 10, 64), 64)
	text = strconv.FormatFloat(x, 'f', -1, 64)
	_, decimals, _ := strings.Cut(text, ".")
	return fixed(x, len(decimals)), math.Pow10(-len(decimals)) * s.factor
}

// shown is a number as it is printed with so many digits, kept because sums ask for it again
// and again.
type shown struct {
	of           printed
	number, unit string
	v, last      float64
}

// printed is what a printed number hangs on.
type printed struct {
	v      float64
	digits int
	unit   *scale
	exact  bool
}

// print is the value's number and unit as it is shown, what that comes to, and what its
// last digit counts.
func (x *value) print() (number, unit string, v, last float64) {
	of := printed{x.v, x.digits, x.unit, x.exact}
	if k := x.shown; k == nil || k.of != of {
		s := x.scale()
		k := &shown{of: of, unit: s.unit}
		k.number, k.last = x.numberIn(s)
		k.v, _ = strconv.ParseFloat(strings.Replace(k.number, "−", "-", 1), 64)
		k.v *= s.factor
		x.shown = k
	}
	k := x.shown
	return k.number, k.unit, k.v, k.last
}

// scale is the unit that it is printed in: that of a sum of which it is a term, else by its
// size.
func (x *value) scale() scale {
	if x.unit != nil {
		return *x.unit
	}
	return x.dim.scaleOf(x.v)
}

func (x *value) numberIn(s scale) (string, float64) {
	switch {
	case math.IsInf(x.v, 0), math.IsNaN(x.v):
		return "∞", 0
	case x.exact:
		return asWritten(x.v, s)
	}
	return number(x.v, s, x.digits)
}

func (x *value) text() string {
	number, unit, _, _ := x.print()
	return join(number, unit)
}

func join(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}
