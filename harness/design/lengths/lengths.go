// Package lengths prints lengths for people, in the unit that the sheet of a
// design asks for: metres and millimetres, or feet and inches. It is the one
// place where that choice is made; data for other programs (CSV, JSON, DXF)
// stay in SI units.
//
// In inches, what must not come out short is rounded up: wires to the next
// eighth. Dimensions of the
// board are given to the nearest sixteenth, strip lengths to the nearest
// thirty-second, as a workshop rule is divided.
package lengths

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
)

const (
	inchM  = 0.0254 // by definition of the international inch
	inchMm = 1000 * inchM
	footM  = 12 * inchM
	hair   = 1e-6 // inches, so that 12.0000001 is not rounded up
)

// Unit is how lengths are printed. The zero Unit is metric.
type Unit struct{ feet bool }

// Of is the unit that a design's sheet asks for.
func Of(d *design.Design) Unit { return In(d.Sheet.Lengths) }

// In is the unit of a name as the sheet has it: "ft", or anything else for
// metric.
func In(name string) Unit { return Unit{feet: name == "ft"} }

// Feet tells whether lengths are in feet and inches.
func (u Unit) Feet() bool { return u.feet }

// Small is the name of the unit of Dim, Strip, AtLeast, Near and Width.
func (u Unit) Small() string { return u.either("mm", "in") }

// Headed is the heading of a column of lengths in the small unit: "length mm",
// or "length, in", which would read as a preposition without the comma.
func (u Unit) Headed(name string) string { return name + u.either(" mm", ", in") }

// Words is the small unit in a sentence: "mm" or "inches".
func (u Unit) Words() string { return u.either("mm", "inches") }

// Large is the name of the unit of Large amounts.
func (u Unit) Large() string { return u.either("m", "ft") }

func (u Unit) either(metric, feet string) string {
	if u.feet {
		return feet
	}
	return metric
}

// Cut is a length to cut: "1.320 m", or eighths of an inch, rounded up:
// "4 ft 4 1/8 in".
func (u Unit) Cut(lengthM float64) string {
	if u.feet {
		return feetInches(math.Ceil(8*(lengthM/inchM-hair)), 8)
	}
	return strconv.FormatFloat(lengthM, 'f', 3, 64) + " m"
}

// Text is a measured length in a sentence: "180 mm", "1.25 m", or "7 1/8 in",
// "4 ft 1 1/4 in" to the nearest eighth. What is not a number is not known.
func (u Unit) Text(lengthM float64) string {
	if !u.feet || math.IsNaN(lengthM) || math.IsInf(lengthM, 0) {
		return quantity.Format(lengthM, quantity.Length)
	}
	if lengthM < 0 {
		return "−" + u.Text(-lengthM)
	}
	return feetInches(math.Round(8*lengthM/inchM), 8)
}

// Amount is a number of metres or feet, without the unit, for a column that
// names it.
func (u Unit) Amount(lengthM float64) string {
	if u.feet {
		return strconv.FormatFloat(lengthM/footM, 'f', 1, 64)
	}
	return strconv.FormatFloat(lengthM, 'f', 2, 64)
}

// Bought is a number of whole metres or feet that holds a length.
func (u Unit) Bought(lengthM float64) string {
	if u.feet {
		lengthM /= footM
	}
	return strconv.FormatFloat(math.Ceil(lengthM-hair), 'f', 0, 64)
}

// Dim is a dimension of the board, without the unit: a tenth of a millimetre,
// or the nearest sixteenth of an inch.
func (u Unit) Dim(mm float64) string {
	if u.feet {
		return fraction(math.Round(16*mm/inchMm), 16)
	}
	return strconv.FormatFloat(math.Round(mm*10)/10, 'f', -1, 64)
}

// Strip is a strip length, without the unit: millimetres as the terminal's data
// say, or the nearest thirty-second of an inch.
func (u Unit) Strip(mm float64) string {
	if u.feet {
		return fraction(math.Round(32*mm/inchMm), 32)
	}
	return strconv.FormatFloat(mm, 'f', -1, 64)
}

// Near is a place or length that need not be exact, without the unit: whole
// millimetres, or the nearest eighth of an inch.
func (u Unit) Near(mm float64) string {
	if u.feet {
		return fraction(math.Round(8*mm/inchMm), 8)
	}
	return strconv.FormatFloat(math.Round(mm), 'f', 0, 64)
}

// AtLeast is a least measure such as a bend radius, rounded up, without the
// unit: whole millimetres, or the next eighth of an inch.
func (u Unit) AtLeast(mm float64) string {
	if u.feet {
		return fraction(math.Ceil(8*(mm/inchMm-hair)), 8)
	}
	return strconv.FormatFloat(math.Ceil(mm-hair), 'f', 0, 64)
}

// Width is a diameter, without the unit: a tenth of a millimetre, or a
// hundredth of an inch, as sleeves are sold.
func (u Unit) Width(mm float64) string {
	if u.feet {
		return strconv.FormatFloat(mm/inchMm, 'f', 2, 64)
	}
	return strconv.FormatFloat(mm, 'f', 1, 64)
}

// feetInches prints so many parts of an inch: "4 ft 4 1/8 in", "6 in".
func feetInches(parts float64, part int) string {
	perFoot := float64(12 * part)
	feet := math.Floor(parts / perFoot)
	rest := parts - feet*perFoot
	var words []string
	if feet > 0 {
		words = append(words, fmt.Sprintf("%.0f ft", feet))
	}
	if rest > 0 || feet == 0 {
		words = append(words, fraction(rest, part)+" in")
	}
	return strings.Join(words, " ")
}

// fraction prints so many parts of a whole in lowest terms: "14 1/2", "9/32".
func fraction(parts float64, part int) string {
	n := int(parts)
	whole, rest := n/part, n%part
	for rest > 0 && rest%2 == 0 {
		rest, part = rest/2, part/2
	}
	switch {
	case rest == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", rest, part)
	}
	return fmt.Sprintf("%d %d/%d", whole, rest, part)
}
