package frame

import (
	"strings"

	"fusewright/render/scene"
)

// Measures of the title block's cells, in millimetres.
const (
	headH = 10.0
	rowH  = 8.0
	padMM = 2.0
)

// columnsOf gives the edges of the title block's columns: the second and third
// as wide as what stands in them asks, within limits, the first the rest.
func columnsOf(fields [3][3]Field) []float64 {
	wide := [3]float64{0, 26, 20}
	most := [3]float64{0, 46, 30}
	for _, row := range fields {
		for c := 1; c < 3; c++ {
			style := scene.TextStyle{SizeMM: SmallMM}
			wide[c] = min(max(wide[c], style.Width(row[c].Value)+2*padMM+0.5), most[c])
		}
	}
	return []float64{0, TitleW - wide[1] - wide[2], TitleW - wide[2], TitleW}
}

// drawTitle writes the title in the largest size that fits, else in two lines.
func drawTitle(s *scene.Sheet, r scene.Rect, title string) {
	size := scene.FitSizeMM(title, TitleMM, NormalMM, r.W, scene.Bold)
	style := scene.TextStyle{SizeMM: size, Face: scene.Bold, Colour: scene.Ink}
	lines := scene.Wrap(title, size, r.W+1e-6, scene.Bold)
	if len(lines) == 1 {
		s.TextIn(scene.Rect{X: r.X, Y: r.Y, W: r.W + 1e-6, H: r.H}, title, style)
		return
	}
	s.TextAt(scene.Point{X: r.X, Y: r.Y + 4.1}, lines[0], style)
	rest := scene.Ellipsis(strings.Join(lines[1:], " "), size, r.W, scene.Bold)
	s.TextAt(scene.Point{X: r.X, Y: r.Y + 8.1}, rest, style)
}

// field draws one cell: its name above its value. A value that is too long gets
// smaller, then a second line with the name before the first.
func field(s *scene.Sheet, cell scene.Rect, f Field) {
	name := scene.TextStyle{SizeMM: SmallMM, Colour: Grey}
	s.TextAt(scene.Point{X: cell.X, Y: cell.Y + 3.0}, f.Name, name)
	value := f.Value
	if value == "" {
		value = "–"
	}
	size := scene.FitSizeMM(value, NormalMM, SmallMM, cell.W, scene.Regular)
	style := scene.TextStyle{SizeMM: size, Colour: scene.Ink}
	if style.Width(value) <= cell.W+1e-6 {
		s.TextAt(scene.Point{X: cell.X, Y: cell.Y + 6.6}, value, style)
		return
	}
	indent := name.Width(f.Name + "  ")
	first, rest := firstLine(value, cell.W-indent)
	s.TextAt(scene.Point{X: cell.X + indent, Y: cell.Y + 3.0}, first, style)
	s.TextAt(scene.Point{X: cell.X, Y: cell.Y + 6.6}, scene.Ellipsis(rest, SmallMM, cell.W, scene.Regular), style)
}

// firstLine takes as many words as a width allows, at least one.
func firstLine(text string, widthMM float64) (first, rest string) {
	words := strings.Fields(text)
	n := 1
	for n < len(words) && scene.TextWidthMM(strings.Join(words[:n+1], " "), SmallMM, scene.Regular) <= widthMM {
		n++
	}
	first = scene.Ellipsis(strings.Join(words[:n], " "), SmallMM, widthMM, scene.Regular)
	return first, strings.Join(words[n:], " ")
}
