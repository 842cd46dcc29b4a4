package schematic

import (
	"math"
	"strconv"
	"strings"

	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Text sizes in mm: capitals are at least 2.0 mm high on paper.
const (
	smallMM  = 2.95 // capitals 2.03 mm
	lineMM   = 3.4  // from line to line
	capMM    = 2.05
	descMM   = 0.65
	titleMM  = 4.6
	normalMM = 3.3
	gapMM    = 0.95 // between a wire and its label
)

var grey = scene.RGB{R: 70, G: 70, B: 70}

// textW is the width of small text in mm.
func textW(s string, face scene.Face) float64 { return scene.TextWidthMM(s, smallMM, face) }

// inM rounds a length in mm up to whole modules.
func inM(mm float64) int { return int(math.Ceil(mm/symbol.M - 1e-9)) }

// number prints a value with at most three figures and no trailing zeros.
func number(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	digits := 2 - int(math.Floor(math.Log10(math.Abs(v))))
	s := strconv.FormatFloat(v, 'f', min(max(digits, 0), 4), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
