package chart

import (
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/render/scene"
)

// scale places the values of an axis along a length in mm.
type scale struct {
	axis     Axis
	min, max float64
	from, to float64 // mm on the sheet; to < from on the y axis
	ticks    []Tick
	minor    []float64 // grid lines without text, on axes in decades
}

// rangeOf returns the range that an axis has to show; ok is false when no value
// can be shown.
func (a Axis) rangeOf(values []float64) (low, high float64, ok bool) {
	if a.Min != 0 || a.Max != 0 {
		return a.Min, a.Max, true
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, v := range values {
		if finite(v) && math.Abs(v) < 1e12 {
			low, high = min(low, v), max(high, v)
		}
	}
	if low > high {
		return 0, 0, false
	}
	if a.FromZero {
		low, high = min(low, 0), max(high, 0)
	}
	return low, high, true
}

// newScale lays an axis along a length. A label is at most labelMM long in the
// direction of the axis, which decides how many fit.
func newScale(a Axis, values []float64, from, to, labelMM float64) *scale {
	low, high, _ := a.rangeOf(values)
	s := &scale{axis: a, min: low, max: high, from: from, to: to}
	fixed := a.Min != 0 || a.Max != 0
	room := math.Max(2, math.Abs(to-from)/labelMM)
	switch {
	case a.Log:
		s.decades()
	case len(a.Ticks) > 0:
		s.ticks = a.Ticks
	default:
		s.linear(low, high, fixed, room)
	}
	return s
}

// linear sets the range and ticks of a linear axis.
func (s *scale) linear(low, high float64, fixed bool, room float64) {
	if high-low < 1e-9*math.Max(1, math.Abs(high)) {
		pad := math.Max(math.Abs(high)*0.1, 1)
		low, high = low-pad, high+pad
	}
	step := niceStep((high - low) / math.Min(room, 10))
	if s.min, s.max = low, high; !fixed {
		s.min, s.max = math.Floor(low/step+1e-9)*step, math.Ceil(high/step-1e-9)*step
	}
	decimals := max(0, int(-math.Floor(math.Log10(step)+1e-9)))
	if rest := step * math.Pow10(decimals); math.Abs(rest-math.Round(rest)) > 1e-6 {
		decimals++ // a step of 2.5
	}
	first := math.Ceil(s.min/step - 1e-9)
	for i := first; i*step <= s.max+1e-9*step; i++ {
		s.ticks = append(s.ticks, Tick{i * step, number(i*step, decimals)})
	}
}

// niceStep rounds a step up to 1, 2, 2.5 or 5 times a power of ten.
func niceStep(step float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(step)))
	for _, nice := range []float64{1, 2, 2.5, 5} {
		if step <= nice*power*(1+1e-9) {
			return nice * power
		}
	}
	return 10 * power
}

// decades sets the ticks of a logarithmic axis: whole decades carry numbers, and
// on short axes 2 and 5 too.
func (s *scale) decades() {
	perDecade := math.Abs(s.to-s.from) / math.Log10(s.max/s.min) // mm
	for power := math.Floor(math.Log10(s.min) + 1e-9); power <= math.Log10(s.max)+1e-9; power++ {
		for digit := 1; digit <= 9; digit++ {
			v := float64(digit) * math.Pow(10, power)
			if v < s.min*(1-1e-9) || v > s.max*(1+1e-9) {
				continue
			}
			if digit == 1 || perDecade > 28 && (digit == 2 || digit == 5) {
				s.ticks = append(s.ticks, Tick{v, number(v, max(0, int(-power)))})
			} else if perDecade > 12 {
				s.minor = append(s.minor, v)
			}
		}
	}
}

// place gives the mm of a value; ok is false for what the axis cannot show.
func (s *scale) place(v float64) (mm float64, ok bool) {
	part := (v - s.min) / (s.max - s.min)
	if s.axis.Log {
		if v <= 0 {
			return 0, false
		}
		part = math.Log(v/s.min) / math.Log(s.max/s.min)
	}
	// Far outside is cut here so that the clipping stays exact.
	const far = 1000
	return s.from + (s.to-s.from)*math.Min(math.Max(part, -far), far), finite(part)
}

// number prints the value of a tick.
func number(v float64, decimals int) string {
	if math.Abs(v) >= 1e7 {
		return quantity.Digits(v, 4)
	}
	return quantity.Fixed(v, min(decimals, 9))
}

// label is the title of an axis with its unit.
func (a Axis) label() string {
	switch {
	case a.Unit == "":
		return a.Title
	case a.Title == "":
		return a.Unit
	}
	return a.Title + ", " + a.Unit
}

// widest is the width of the widest tick text.
func (s *scale) widest() float64 {
	width := 0.0
	for _, tick := range s.ticks {
		width = max(width, scene.TextWidthMM(tick.Text, textSize, scene.Regular))
	}
	return width
}
