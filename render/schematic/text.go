package schematic

import (
	"math"
	"strconv"
	"strings"

	"fusewright/harness/circuit"
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

// wireLabel is what stands on a wire, in one line or two.
func wireLabel(w *circuit.Wire, stacked bool) []string {
	first := []string{w.Number, w.Spec.Colour.Code()}
	var second []string
	if w.Spec.Size != nil {
		second = append(second, w.Spec.Size.Label)
	}
	if w.LengthM > 0 {
		second = append(second, strconv.FormatFloat(w.LengthM, 'f', 2, 64)+" m")
	} else {
		second = append(second, "length ?")
	}
	if stacked {
		return []string{join(first, " "), join(second, " ")}
	}
	return []string{join(append(first, second...), " ")}
}

// join puts the parts that are not empty together.
func join(parts []string, sep string) string {
	var used []string
	for _, p := range parts {
		if p != "" {
			used = append(used, p)
		}
	}
	return strings.Join(used, sep)
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

// caption is the text of a part: a bold reference, then words, in lines.
type caption struct {
	ref   string
	lines []string // the first one follows the reference
}

// width is the widest line in mm, without a flag.
func (c caption) width() float64 {
	widest := 0.0
	for i, line := range c.lines {
		w := textW(line, scene.Regular)
		if i == 0 {
			w += c.indent()
		}
		widest = max(widest, w)
	}
	return widest
}

// indent is the room of the bold reference.
func (c caption) indent() float64 {
	if c.ref == "" {
		return 0
	}
	return textW(c.ref+" ", scene.Bold)
}

// fit wraps words and details into lines no wider than a width in mm: all in
// one line when it fits, else details on lines of their own. Words too long for
// the width are cut with an ellipsis. Lines beyond most are cut too.
func fit(ref, words, details string, widthMM float64, most int) caption {
	c := caption{ref: ref}
	room := widthMM - c.indent()
	whole := join([]string{words, details}, ", ")
	if textW(whole, scene.Regular) <= room {
		c.lines = []string{whole}
		return c
	}
	lines := wrapFirst(words, room, widthMM)
	if details != "" {
		lines = append(lines, scene.Wrap(details, smallMM, widthMM, scene.Regular)...)
	}
	if len(lines) > most {
		lines[most-1] += " …"
		lines = lines[:most]
	}
	for i := range lines {
		w := widthMM
		if i == 0 {
			w = room
		}
		lines[i] = scene.Ellipsis(lines[i], smallMM, w, scene.Regular)
	}
	c.lines = lines
	return c
}

// wrapFirst wraps text whose first line is shorter than the others.
func wrapFirst(text string, first, rest float64) []string {
	words := strings.Fields(text)
	for n := len(words); n > 0; n-- {
		head := strings.Join(words[:n], " ")
		if textW(head, scene.Regular) <= first || n == 1 {
			lines := []string{head}
			if n < len(words) {
				lines = append(lines, scene.Wrap(strings.Join(words[n:], " "), smallMM, rest, scene.Regular)...)
			}
			return lines
		}
	}
	return []string{""}
}
