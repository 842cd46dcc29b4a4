package scene

import (
	"math"
	"strings"

	"fusewright/harness/design/quantity"
)

// TextWidthMM returns the width of a text as it is drawn (after Clean), in
// millimetres: the sum of the advances of its glyphs. Pairs are not kerned, in
// any back-end.
func TextWidthMM(s string, sizeMM float64, face Face) float64 {
	t := faceOf(face)
	return t.inMM(t.width(Clean(s)), sizeMM)
}

// inMM is a width in font units at a size.
func (t *typeface) inMM(units int64, sizeMM float64) float64 {
	return float64(units) * sizeMM / t.unitsPerEm
}

// width sums the advances of a cleaned text in font units.
func (t *typeface) width(s string) int64 {
	var sum int64
	for _, r := range s {
		if advance := t.advance(r); advance > 0 {
			sum += int64(advance)
		}
	}
	return sum
}

// AscentMM is how far a line of text reaches above its baseline.
func AscentMM(sizeMM float64, face Face) float64 {
	t := faceOf(face)
	return t.ascent / t.unitsPerEm * sizeMM
}

// DescentMM is how far a line of text reaches below its baseline.
func DescentMM(sizeMM float64, face Face) float64 {
	t := faceOf(face)
	return t.descent / t.unitsPerEm * sizeMM
}

// CapHeightMM is the height of a capital letter.
func CapHeightMM(sizeMM float64, face Face) float64 {
	t := faceOf(face)
	return t.capHeight / t.unitsPerEm * sizeMM
}

// LineHeightMM is the usual distance from one baseline to the next.
func LineHeightMM(sizeMM float64) float64 { return 1.25 * sizeMM }

// TextBox returns the upright rectangle that a text covers: its width by its
// ascent and descent, turned with the text.
func TextBox(t Text) Rect {
	corners := turned(t, AscentMM(t.SizeMM, t.Face), DescentMM(t.SizeMM, t.Face))
	return Around(corners[:]...)
}

// InkBox is TextBox cut down to what print really covers: from the top of the
// capitals (a little higher for accents and brackets) to the descenders. Use it
// to tell whether two texts touch.
func InkBox(t Text) Rect {
	corners := InkCorners(t)
	return Around(corners[:]...)
}

// InkCorners are the corners of what InkBox covers before it is made upright, from
// the upper left clockwise as the text is read.
func InkCorners(t Text) [4]Point { return turned(t, 0.76*t.SizeMM, 0.22*t.SizeMM) }

// turned are the corners of what a text covers: upper left, upper right, lower
// right, lower left.
func turned(t Text, up, down float64) (corners [4]Point) {
	width := TextWidthMM(t.String, t.SizeMM, t.Face)
	left := anchorShift(t.Align, width)
	sin, cos := SinCos(t.Turn)
	for i, c := range [...]Point{{left, -up}, {left + width, -up}, {left + width, down}, {left, down}} {
		corners[i] = Point{X: t.At.X + c.X*cos + c.Y*sin, Y: t.At.Y - c.X*sin + c.Y*cos}
	}
	return corners
}

// anchorShift is where a text of the width starts, seen from its anchor.
func anchorShift(align Align, width float64) float64 {
	switch align {
	case Middle:
		return -width / 2
	case Right:
		return -width
	}
	return 0
}

// SinCos is exact at quarter turns, so that upright boxes stay upright.
func SinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

// Start returns the left end of a text's baseline.
func (t Text) Start() Point {
	sin, cos := SinCos(t.Turn)
	shift := anchorShift(t.Align, TextWidthMM(t.String, t.SizeMM, t.Face))
	return Point{X: t.At.X + shift*cos, Y: t.At.Y - shift*sin}
}

// FitSizeMM returns the largest size not above sizeMM at which the text is no
// wider than widthMM, but never less than minimumMM.
func FitSizeMM(s string, sizeMM, minimumMM, widthMM float64, face Face) float64 {
	width := TextWidthMM(s, sizeMM, face)
	if width <= widthMM {
		return sizeMM
	}
	return max(minimumMM, sizeMM*widthMM/width)
}

// Ellipsis shortens a text to the width, with "…" for what is left out. A width
// too small for anything gives "".
func Ellipsis(s string, sizeMM, widthMM float64, face Face) string {
	s = Clean(s)
	if TextWidthMM(s, sizeMM, face) <= widthMM {
		return s
	}
	const dots = "…"
	room := widthMM - TextWidthMM(dots, sizeMM, face)
	if room < 0 {
		return ""
	}
	head, _ := cut(s, sizeMM, room, face)
	return strings.TrimRight(head, " ") + dots
}

// cut splits a cleaned text at the last rune that still fits into the width.
func cut(s string, sizeMM, widthMM float64, face Face) (head, tail string) {
	t := faceOf(face)
	room := widthMM * t.unitsPerEm / sizeMM
	sum := 0.0
	for i, r := range s {
		sum += max(0, float64(t.advance(r)))
		if sum > room {
			return s[:i], s[i:]
		}
	}
	return s, ""
}

// Wrap breaks a text into lines no wider than widthMM, at spaces and at line
// breaks, but not inside a quantity; a word wider than the line is broken. A number
// or quantity wider than the line stands in it whole: where it must not stick out,
// it is set smaller (FitSizeMM). It always returns a line.
func Wrap(s string, sizeMM, widthMM float64, face Face) []string {
	var lines []string
	for _, paragraph := range strings.Split(s, "\n") {
		lines = append(lines, wrapParagraph(Clean(paragraph), sizeMM, widthMM, face)...)
	}
	return lines
}

func wrapParagraph(s string, sizeMM, widthMM float64, face Face) []string {
	var lines []string
	t, line, units := faceOf(face), "", int64(0)
	for _, word := range quantity.Words(s) {
		joined, wide := word, t.width(word)
		if line != "" {
			joined, wide = line+" "+word, units+t.width(" ")+wide
		}
		if t.inMM(wide, sizeMM) <= widthMM {
			line, units = joined, wide
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		full, rest := []string(nil), word
		if !quantity.Whole(word) {
			full, rest = breakWord(word, sizeMM, widthMM, face)
		}
		lines, line, units = append(lines, full...), rest, t.width(rest)
	}
	return append(lines, line)
}

// breakWord cuts a word that is wider than a line into full lines and a rest, behind one
// of its signs where it has some.
func breakWord(word string, sizeMM, widthMM float64, face Face) (full []string, rest string) {
	for TextWidthMM(word, sizeMM, face) > widthMM {
		head, tail := cut(word, sizeMM, widthMM, face)
		if head == "" || tail == "" { // not even one rune fits
			return full, word
		}
		if at := strings.LastIndexAny(head, ":/-"); at > 0 && at+1 < len(head) {
			head, tail = head[:at+1], word[at+1:]
		}
		full, word = append(full, head), tail
	}
	return full, word
}
