// Package scenetest holds what the tests of the back-ends share: sheets that
// use every primitive, and the comparison of the pictures of all back-ends.
package scenetest

import (
	"fmt"

	"fusewright/render/scene"
)

// Words are on the text sheet and must be found again in every format that
// keeps text as text.
var Words = []string{"680", "Ω", "µA", "mm²", "°C", "−12.6", "≤", "≥", "·", "–", "→", "√", "□", "Übergröße", "fi·AV"}

// Hostile is text that would break a careless writer.
const Hostile = "<script>alert(1)</script> & \"quoted\" 'text' ]]> \\)( %s\x00\x1b\xff\u202eabc\u0301 漢 \U0001F50B"

// Sheets returns the sheets of the conformance suite.
func Sheets() []*scene.Sheet {
	return []*scene.Sheet{lines(), areas(), texts(), parts()}
}

// lines draws widths, dashes, ends and corners at many angles.
func lines() *scene.Sheet {
	s := scene.NewSheet(120, 90, "Lines")
	for i, width := range []float64{0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 2} {
		y := 6 + 4*float64(i)
		s.Line(scene.Point{X: 5, Y: y}, scene.Point{X: 35, Y: y}, scene.Pen(width))
		s.Line(scene.Point{X: 40, Y: y}, scene.Point{X: 75, Y: y + 1.7}, scene.Pen(width).Dashed(3, 1.2))
		round := scene.Pen(width).Dashed(2, 1.5, 0, 1.5)
		round.Round = true
		s.Line(scene.Point{X: 80, Y: y}, scene.Point{X: 115, Y: y}, round)
	}
	for i := range 12 {
		x := 8 + 9*float64(i)
		zigzag := []scene.Point{{X: x, Y: 45}, {X: x + float64(i)/2, Y: 60}, {X: x + 4, Y: 44}}
		mitre := scene.Pen(0.8)
		s.Polyline(zigzag, mitre)
		mitre.Round = true
		s.Polyline(shift(zigzag, 0, 18), mitre)
	}
	ring := scene.Pen(0.6).Dashed(1.5, 1)
	s.Circle(scene.Point{X: 60, Y: 84}, 4, &ring, nil)
	return s
}

func shift(points []scene.Point, dx, dy float64) []scene.Point {
	moved := make([]scene.Point, len(points))
	for i, p := range points {
		moved[i] = p.Add(scene.Point{X: dx, Y: dy})
	}
	return moved
}

// areas draws filled shapes, holes, circles and arcs.
func areas() *scene.Sheet {
	s := scene.NewSheet(100, 80, "Areas")
	pen := scene.Pen(0.35)
	red, grey := scene.RGB{R: 0xC8, G: 0x40, B: 0x20}, scene.RGB{R: 0xD8, G: 0xD8, B: 0xD8}
	s.Rect(scene.Rect{X: 5, Y: 5, W: 25, H: 15}, &pen, scene.Paint(grey))
	s.RoundRect(scene.Rect{X: 35, Y: 5, W: 25, H: 15}, 3, &pen, nil)
	s.RoundRect(scene.Rect{X: 65, Y: 5, W: 25, H: 15}, 99, nil, scene.Paint(red))
	s.Circle(scene.Point{X: 17, Y: 35}, 9, &pen, scene.Paint(grey))
	s.Dot(scene.Point{X: 17, Y: 35}, 1, scene.Ink)
	for i := range 8 {
		s.Arc(scene.Point{X: 50, Y: 35}, 2+float64(i), float64(i)*45, 30+40*float64(i), scene.Pen(0.3))
	}
	hole := scene.Path{Fill: scene.Paint(red), Stroke: &pen}
	hole.MoveTo(scene.Point{X: 70, Y: 35})
	hole.ArcTo(scene.Point{X: 79, Y: 35}, 9, 180, 360)
	hole.Close()
	hole.MoveTo(scene.Point{X: 82, Y: 35})
	hole.ArcTo(scene.Point{X: 79, Y: 35}, 3, 0, -360)
	hole.Close()
	s.Path(hole)
	star := []scene.Point{{X: 20, Y: 52}, {X: 28, Y: 74}, {X: 9, Y: 60}, {X: 31, Y: 60}, {X: 12, Y: 74}}
	s.Polygon(star, &pen, scene.Paint(grey))
	wave := scene.Path{Stroke: &scene.Stroke{WidthMM: 1.2, Colour: red, Round: true}}
	wave.MoveTo(scene.Point{X: 40, Y: 65})
	wave.CubicTo(scene.Point{X: 55, Y: 40}, scene.Point{X: 70, Y: 95}, scene.Point{X: 92, Y: 60})
	s.Path(wave)
	// Partly and wholly off the sheet.
	s.Rect(scene.Rect{X: 95, Y: 70, W: 40, H: 40}, &pen, scene.Paint(grey))
	s.Line(scene.Point{X: -90000, Y: 77}, scene.Point{X: 90000, Y: 78}, scene.Pen(0.25))
	return s
}

// texts writes every face, anchor and turn, and the signs of the trade.
func texts() *scene.Sheet {
	s := scene.NewSheet(130, 90, "Texts")
	for i, face := range scene.Faces {
		style := scene.TextStyle{SizeMM: 3.5, Face: face, Colour: scene.Ink}
		x := 5 + 42*float64(i)
		s.TextAt(scene.Point{X: x, Y: 10}, "680 Ω  18 µA 1.5 mm²", style)
		s.TextAt(scene.Point{X: x, Y: 16}, "80 °C −12.6 V ≤ 3 %", style)
		s.TextAt(scene.Point{X: x, Y: 22}, "≥ · – → √ □ ± ×", style)
		s.TextAt(scene.Point{X: x, Y: 28}, "Übergröße čžő fi·AV", style)
	}
	guide := scene.Pen(0.13)
	s.Line(scene.Point{X: 65, Y: 32}, scene.Point{X: 65, Y: 52}, guide)
	for i, align := range []scene.Align{scene.Left, scene.Middle, scene.Right} {
		style := scene.TextStyle{SizeMM: 4, Align: align, Colour: scene.RGB{R: 0x10, G: 0x40, B: 0xA0}}
		s.TextAt(scene.Point{X: 65, Y: 37 + 6*float64(i)}, "anchored 12.6 V", style)
	}
	for i, turn := range []float64{0, 30, 90, 180, 270, -45} {
		at := scene.Point{X: 12 + 21*float64(i), Y: 68}
		s.Dot(at, 0.5, scene.Ink)
		s.TextAt(at, "turned", scene.TextStyle{SizeMM: 3, Turn: turn, Align: scene.Middle})
	}
	for i, size := range []float64{1.8, 2.2, 2.5, 2.8, 5} {
		s.TextAt(scene.Point{X: 5 + 24*float64(i), Y: 86}, fmt.Sprintf("size %g", size), scene.TextStyle{SizeMM: size})
	}
	return s
}

// parts has groups with words, links and hostile text.
func parts() *scene.Sheet {
	s := scene.NewSheet(90, 60, "Parts "+Hostile)
	s.ID, s.Desc = "parts", "Groups, links and hostile text"
	pen := scene.Pen(0.35)
	for i, name := range []string{"fuse main", "rear 1"} {
		s.Begin(scene.Group{ID: scene.ID(name), Class: "part", Title: name, Desc: Hostile, Link: "rear-1"})
		at := scene.Rect{X: 10 + 30*float64(i), Y: 10, W: 20, H: 10}
		s.Rect(at, &pen, nil)
		s.TextIn(at, name, scene.TextStyle{SizeMM: 3, Align: scene.Middle})
		s.End()
	}
	s.Begin(scene.Group{ID: "back", Link: "parts"})
	s.TextAt(scene.Point{X: 10, Y: 30}, Hostile, scene.TextStyle{SizeMM: 2})
	s.End()
	s.Paragraph(scene.Rect{X: 10, Y: 35, W: 40, H: 20},
		"A paragraph that wraps at the width of its box and\nkeeps its line breaks, with averyveryverylongwordthatmustbebroken.",
		scene.TextStyle{SizeMM: 2.5})
	return s
}

// Crowded returns a sheet of many items, for benchmarks: a third short wires,
// a third symbols, a third labels.
func Crowded(items int) *scene.Sheet {
	s := scene.NewSheet(420, 297, "Crowded")
	pen := scene.Pen(0.35)
	for i := 0; len(s.Items) < items; i++ {
		at := scene.Point{X: 10 + float64(i%40)*10, Y: 10 + float64(i/40%40)*7}
		s.Polyline([]scene.Point{at, at.Add(scene.Point{X: 6}), at.Add(scene.Point{X: 6, Y: 4})}, pen)
		s.Circle(at.Add(scene.Point{X: 6, Y: 4}), 1, &pen, nil)
		s.TextAt(at, fmt.Sprintf("W%d 1.5 mm²", i), scene.TextStyle{SizeMM: 2.2})
	}
	return s
}
