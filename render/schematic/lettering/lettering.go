// Package lettering is how words are set: sizes, wrapping and the caption of a
// part, in millimetres on paper. It knows nothing of circuits.
package lettering

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Text sizes in mm: capitals are at least 2.0 mm high on paper.
const (
	SmallMM  = 2.95 // capitals 2.03 mm
	LineMM   = 3.4  // from line to line
	TextMM   = 2.03 // height of a capital
	CapMM    = 2.05 // and a little air
	DescMM   = 0.65
	titleMM  = 4.6
	NormalMM = 3.3
	GapMM    = 0.95 // between a wire and its label
)

// Grey is for words that only name what stands beside them.
var Grey = scene.RGB{R: 70, G: 70, B: 70}

// TextW is the width of small text in mm.
func TextW(s string, face scene.Face) float64 { return scene.TextWidthMM(s, SmallMM, face) }

// InM rounds a length in mm up to whole modules.
func InM(mm float64) int { return int(math.Ceil(mm/symbol.M - 1e-9)) }

// Caption is the text of a part: a bold reference, then words, in lines, and on
// a study sheet what was solved.
type Caption struct {
	Ref   string
	Sign  int      // number of the sign before the reference; 0 = none
	Wide  float64  // its room in mm
	Lines []string // the first one follows the reference
	study int      // how many lines at the end are solved values
	Mate  int      // line that names the place of a relay's other half; 0 = none
}

// Face is the face and colour of a line.
func (c Caption) Face(line int) (scene.Face, scene.RGB) {
	if line >= len(c.Lines)-c.study {
		return scene.Italic, StudyBlue
	}
	return scene.Regular, scene.Ink
}

// Width is the widest line in mm.
func (c Caption) Width() float64 {
	widest := 0.0
	for i, line := range c.Lines {
		face, _ := c.Face(i)
		w := TextW(line, face)
		if i == 0 {
			w += c.Indent()
		}
		widest = max(widest, w)
	}
	return widest
}

// Solved adds lines of solved values; "" adds none.
func (c Caption) Solved(widthMM float64, values ...string) Caption {
	for _, v := range values {
		if v != "" {
			c.Lines = append(c.Lines, scene.Ellipsis(v, SmallMM, widthMM, scene.Italic))
			c.study++
		}
	}
	return c
}

// Indent is the room of the sign and the bold reference in the first line.
func (c Caption) Indent() float64 {
	if c.Ref == "" {
		return c.Wide
	}
	return c.Wide + TextW(c.Ref+" ", scene.Bold)
}

// Fit wraps words and details into lines no wider than a width in mm: all in
// one line when it fits, else details on lines of their own. Words too long for
// the width are cut with an ellipsis. Lines beyond most are cut too.
func (c Caption) Fit(words, details string, widthMM float64, most int) Caption {
	room := widthMM - c.Indent()
	whole := wording.Present([]string{words, details}, ", ")
	if TextW(whole, scene.Regular) <= room {
		c.Lines = []string{whole}
		return c
	}
	lines := Wrap(words, room, widthMM)
	if details != "" {
		lines = append(lines, Wrap(details, widthMM, widthMM)...)
	}
	if len(lines) > most {
		lines = Wrap(whole, room, widthMM)
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
		lines[i] = scene.Ellipsis(lines[i], SmallMM, w, scene.Regular)
	}
	c.Lines = lines
	return c
}

// Wrap breaks a text into lines, the first of a width of its own; it stays empty
// when its word fits into the next alone. A quantity stays together; a compound wider than
// a line breaks after its hyphen.
func Wrap(text string, first, rest float64) (lines []string) {
	width := first
	line := ""
	for _, word := range compounds(quantity.Words(text), max(first, rest)) {
		if wide := TextW(word, scene.Regular); line == "" && len(lines) == 0 && wide > first && wide <= rest {
			lines, width = append(lines, ""), rest
		}
		longer := wording.Present([]string{line, word}, " ")
		if line != "" && TextW(longer, scene.Regular) > width {
			lines = append(lines, line)
			line, width = word, rest
			continue
		}
		line = longer
	}
	return append(lines, line)
}

// compounds breaks those of some words that are wider than a line after their hyphens.
func compounds(words []string, widthMM float64) (list []string) {
	for _, word := range words {
		if TextW(word, scene.Regular) > widthMM && !quantity.Whole(word) {
			parts := strings.SplitAfter(word, "-")
			list = append(list, slices.DeleteFunc(parts, func(s string) bool { return s == "" })...)
			continue
		}
		list = append(list, word)
	}
	return list
}

// StudyBlue is the colour of solved values; their sloping face tells them in
// black and white.
var StudyBlue = scene.RGB{R: 20, G: 60, B: 150}

// mateWords is the widest that a reference to the other half can be.
const mateWords = "contact 88/W88"

// Reference adds the line that names the place of the other half.
func (c Caption) Reference() Caption {
	c.Mate = len(c.Lines)
	c.Lines = append(c.Lines, mateWords)
	return c
}

// Some are words after a head as far as a width in mm allows, and how many more there
// are.
func Some(head string, words []string, widthMM float64, face scene.Face) string {
	text := head + wording.Present(words, ", ")
	for n := len(words) - 1; n > 0 && TextW(text, face) > widthMM; n-- {
		text = fmt.Sprintf("%s%s +%d", head, wording.Present(words[:n], ", "), len(words)-n)
	}
	return scene.Ellipsis(text, SmallMM, widthMM, face)
}
