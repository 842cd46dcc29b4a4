package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// howTo is how the pages become a board.
func howTo(u lengths.Unit, broken bool) []string {
	list := []string{
		"Print at 100 %, without fitting to the page. Measure the ruler below: it must be 100 mm both ways, within 0.5 mm. " +
			"If it is not, set the printer's scale before printing the rest.",
		"Each page overlaps its neighbours by 10 mm. Cut each page along the left and upper edge of its window, from cut mark " +
			"to cut mark, wherever the margin names a neighbour.",
		"Begin at row 1, column 1. Lay the cut edge over the neighbour so that the ringed crosses line up, and tape.",
		"Measure a run on the taped board against the length printed beside it before driving a nail. Paper stretches: on a " +
			"long board trust the tape measure, not the print.",
		"Ticks along a run without a break are every " + u.Dim(tickMM(u)) + " " + u.Small() + " from its first place. Bands are as wide as the bundles without their covers.",
	}
	if broken {
		list = append(list, "Only ends, breakouts and connectors are at full size: a run with break lines is drawn shortened, and its true length "+
			"stands across the break. Lay the pages on both sides of a break that far apart, from nail to nail by the tape measure, or "+
			"work from the lengths alone; wires are cut by the cut list. For a board without breaks the design says "+
			"sheet: {long runs: whole}.")
	}
	return list
}

// mapsOnPage is how many sections an index page shows.
const mapsOnPage = 3

// indexes draws the pages that show how the pages of each section go together.
func indexes(tilings []*tiling) (sheets []*scene.Sheet) {
	for list := range slices.Chunk(tilings, mapsOnPage) {
		sheets = append(sheets, index(list, len(sheets)))
	}
	return sheets
}

// index draws an index page; the first says how the pages become a board.
func index(list []*tiling, before int) *scene.Sheet {
	title, t := "Full size, index", list[0]
	s := scene.NewSheet(max(t.paperW, t.paperH), min(t.paperW, t.paperH), title)
	s.ID = fmt.Sprintf("full-size-index-%d", before+1)
	w := scene.Rect{X: edgeMM, Y: edgeMM, W: s.WidthMM - 2*edgeMM, H: s.HeightMM - edgeMM - footMM}
	y := w.Y + 5
	s.TextAt(scene.Point{X: w.X, Y: y}, title, scene.TextStyle{SizeMM: frame.TitleMM, Face: scene.Bold, Colour: scene.Ink})
	y += 4
	area := scene.Rect{X: w.X, Y: y + 3, W: w.W}
	if before == 0 {
		broken := t.review.Design.Sheet.LongRuns != "whole"
		for _, text := range howTo(lengths.Of(t.review.Design), broken) {
			y = s.Paragraph(scene.Rect{X: w.X, Y: y, W: w.W}, text, scene.TextStyle{SizeMM: frame.SmallMM, Colour: scene.Ink}) + 1.4
		}
		square(s, scene.Point{X: w.Right() - rulerMM - 2, Y: w.Bottom() - rulerMM - 6})
		area.Y, area.W = y+3, area.W-rulerMM-12
	}
	area.H = (w.Bottom() - area.Y) / float64(len(list))
	for _, t := range list {
		t.mapOf(s, area)
		area.Y += area.H
	}
	foot(s, t.review, title)
	return s
}

// square is a check square: a ruler both ways.
func square(s *scene.Sheet, at scene.Point) {
	s.Begin(scene.Group{ID: "ruler-square", Class: "ruler", Title: "check ruler, 100 mm both ways"})
	ruler(s, scene.Point{X: at.X, Y: at.Y + rulerMM})
	pen := scene.Pen(0.25)
	s.Line(at, scene.Point{X: at.X, Y: at.Y + rulerMM}, pen)
	for mm := 0.0; mm <= rulerMM; mm += 10 {
		y := at.Y + rulerMM - mm
		s.Line(scene.Point{X: at.X, Y: y}, scene.Point{X: at.X + tick(mm), Y: y}, pen)
	}
	s.TextAt(scene.Point{X: at.X + 8, Y: at.Y + 6}, "check ruler: 100 mm both ways",
		scene.TextStyle{SizeMM: frame.NormalMM, Face: scene.Bold, Colour: scene.Ink})
	s.End()
}

// ruler is 100 mm with a tick every 10, its line at the bottom.
func ruler(s *scene.Sheet, at scene.Point) {
	pen := scene.Pen(0.25)
	s.Line(at, scene.Point{X: at.X + rulerMM, Y: at.Y}, pen)
	for mm := 0.0; mm <= rulerMM; mm += 10 {
		s.Line(scene.Point{X: at.X + mm, Y: at.Y}, scene.Point{X: at.X + mm, Y: at.Y - tick(mm)}, pen)
	}
}

func tick(mm float64) float64 {
	if math.Mod(mm, 50) == 0 {
		return 3.5
	}
	return 2
}

// mapOf draws the grid of pages with the loom over it, each page a link.
func (t *tiling) mapOf(s *scene.Sheet, area scene.Rect) {
	words := fmt.Sprintf("%s on %s by row and column; the grey ones are printed",
		wording.Count(len(t.order), "page", "pages"), t.name)
	if t.sections > 1 {
		words = fmt.Sprintf("Section %d: ", t.section.Number) + words
	}
	s.TextAt(scene.Point{X: area.X, Y: area.Y + 2.5}, words,
		scene.TextStyle{SizeMM: frame.SmallMM, Face: scene.Bold, Colour: scene.Ink})
	area.X, area.Y, area.W, area.H = area.X+6, area.Y+8, area.W-6, area.H-11
	x, y := t.step()
	scale := math.Min(area.W/(x*float64(t.columns)), area.H/(y*float64(t.rows)))
	scale = math.Min(scale, 0.25)
	cellW, cellH := x*scale, y*scale
	pen := scene.Pen(0.18)
	for row := range t.rows {
		for column := range t.columns {
			r := scene.Rect{X: area.X + float64(column)*cellW, Y: area.Y + float64(row)*cellH, W: cellW, H: cellH}
			if !t.used[[2]int{row, column}] {
				s.Rect(r, &pen, nil)
				continue
			}
			s.Begin(scene.Group{Class: "page", Title: t.tileName(row, column), Link: t.pageID(row, column)})
			s.Rect(r, &pen, scene.Paint(scene.RGB{R: 238, G: 238, B: 238}))
			s.End()
		}
	}
	for _, l := range t.section.Limbs {
		at := func(q scene.Point) scene.Point {
			return scene.Point{X: area.X + (q.X+roundMM)*scale, Y: area.Y + (q.Y+roundMM)*scale}
		}
		s.Line(at(scene.Point(l.From.At)), at(scene.Point(l.To.At)), scene.Pen(0.7))
	}
	t.mapNames(s, area, cellW, cellH)
}

// mapNames counts columns above the map and rows at its left, every one of
// them or, where they are narrow, every fifth or tenth.
func (t *tiling) mapNames(s *scene.Sheet, area scene.Rect, cellW, cellH float64) {
	style := scene.TextStyle{SizeMM: frame.SmallMM, Align: scene.Middle, Colour: scene.Ink}
	every := spread(cellW, style.Width(fmt.Sprint(t.columns))+1)
	for column := range t.columns {
		if n := column + 1; n%every == 0 || n == 1 {
			s.TextAt(scene.Point{X: area.X + (float64(column)+0.5)*cellW, Y: area.Y - 1}, fmt.Sprint(n), style)
		}
	}
	style.Align = scene.Right
	every = spread(cellH, frame.LineMM)
	for row := range t.rows {
		if n := row + 1; n%every == 0 || n == 1 {
			s.TextAt(scene.Point{X: area.X - 1, Y: area.Y + (float64(row)+0.5)*cellH + 1}, fmt.Sprint(n), style)
		}
	}
}

// spread is how many cells stand between two numbers that need room.
func spread(cell, need float64) int {
	for _, every := range []int{1, 5, 10} {
		if cell*float64(every) >= need {
			return every
		}
	}
	return 50
}

// foot writes the ruler, what the page is and the caution below the window.
func foot(s *scene.Sheet, r *harness.Review, what string) {
	s.Begin(scene.Group{ID: "foot", Class: "foot", Title: "ruler and caution"})
	left, right := edgeMM, s.WidthMM-edgeMM
	y := s.HeightMM - footMM + 12
	ruler(s, scene.Point{X: left, Y: y})
	bold := scene.TextStyle{SizeMM: frame.SmallMM, Face: scene.Bold, Colour: scene.Ink}
	s.TextIn(scene.Rect{X: left + rulerMM + 3, Y: y - 4, W: 30, H: 4}, "100 mm, scale 1:1", bold)
	y += 4.6
	words := []string{r.Design.Title.Value}
	if r.Design.Revision.Given() {
		words = append(words, "revision "+r.Design.Revision.Value)
	}
	tail := scene.TextStyle{SizeMM: frame.SmallMM, Face: scene.Bold, Colour: scene.Ink, Align: scene.Right}
	s.TextAt(scene.Point{X: right, Y: y}, what, tail)
	s.TextIn(scene.Rect{X: left, Y: y - 3, W: right - left - tail.Width(what) - 4, H: 4}, strings.Join(words, ", "),
		scene.TextStyle{SizeMM: frame.SmallMM, Colour: scene.Ink})
	s.Paragraph(scene.Rect{X: left, Y: y + 1.6, W: right - left}, r.Design.Caution(),
		scene.TextStyle{SizeMM: frame.SmallMM, Colour: frame.Grey})
	s.End()
}
