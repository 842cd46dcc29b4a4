package schematic

import (
	"math"
	"strconv"
	"strings"

	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
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

// wireLabel is what stands on a wire, in one line or two. On a study sheet the
// second line is what flows there.
func (d *drawing) wireLabel(w *circuit.Wire, stacked bool) []string {
	first := []string{w.Number, w.Spec.Colour.Code()}
	var second []string
	if w.Spec.Size != nil {
		second = append(second, w.Spec.Size.Label)
	}
	if d.study != nil {
		return []string{wording.Present(append(first, second...), " "), d.study.wire(w)}
	}
	second = append(second, d.lengthText(w.LengthM))
	if stacked {
		return []string{wording.Present(first, " "), wording.Present(second, " ")}
	}
	return []string{wording.Present(append(first, second...), " ")}
}

// labelFace is the face and colour of a line of a wire's label.
func (d *drawing) labelFace(line int) (scene.Face, scene.RGB) {
	if d.study != nil && line == 1 {
		return scene.Italic, studyBlue
	}
	return scene.Regular, scene.Ink
}

// labelW is the width of a wire's label, in mm.
func (d *drawing) labelW(w *circuit.Wire, stacked bool) float64 {
	widest := 0.0
	for i, line := range d.wireLabel(w, stacked) {
		face, _ := d.labelFace(i)
		widest = max(widest, textW(line, face))
	}
	return widest
}

// lengthText is a wire length, slack included, in the design's unit; inches are rounded up, so
// that no wire is cut short.
func (d *drawing) lengthText(lengthM float64) string {
	if lengthM <= 0 {
		return "length ?"
	}
	return lengths.In(d.lengths).Wire(lengthM)
}

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
