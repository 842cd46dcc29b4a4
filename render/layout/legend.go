package layout

import (
	"slices"
	"strings"

	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/library"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// legend explains marks, covers and widths of a picture beside the title block.
func (d *drawing) legend(s *scene.Sheet, p *picture) {
	area := d.paper.Strip()
	s.Begin(scene.Group{ID: "legend", Class: "legend", Title: "legend"})
	s.TextAt(scene.Point{X: area.X, Y: area.Y + 2.4}, "Legend",
		scene.TextStyle{SizeMM: frame.NormalMM, Face: scene.Bold, Colour: scene.Ink})
	const down, step = 4.6, 4.0
	const rows, sampleMM, gapMM = 5, 12.0, 1.5
	entries := d.entries(p)
	var words [][]float64
	for i := range rows {
		var row []float64
		for k := i; k < len(entries); k += rows {
			row = append(row, sampleMM+gapMM+scene.TextWidthMM(entries[k].words, frame.SmallMM, scene.Regular))
		}
		words = append(words, row)
	}
	x := area.X
	for col, wide := range scene.ColumnWidths(words, []float64{sampleMM, sampleMM, sampleMM}, area.W) {
		for row, e := range entries[col*rows : min((col+1)*rows, len(entries))] {
			y := area.Y + down + step*float64(row) + step/2
			e.paint(s, x, y)
			s.TextIn(scene.Rect{X: x + sampleMM, Y: y - step/2, W: wide - sampleMM - gapMM, H: step}, e.words,
				scene.TextStyle{SizeMM: frame.SmallMM, Colour: scene.Ink})
		}
		x += wide
	}
	s.End()
}

// entry is a mark with its meaning.
type entry struct {
	words string
	paint func(s *scene.Sheet, x, y float64)
}

// entries are five marks, up to five covers that occur, and the widths.
func (d *drawing) entries(p *picture) []entry {
	nail := func(kind nailSort) func(*scene.Sheet, float64, float64) {
		return func(s *scene.Sheet, x, y float64) { paintNail(s, scene.Point{X: x + 5, Y: y}, 1.4, kind) }
	}
	list := []entry{
		{"nail at an end", nail(endNail)},
		{"nail at a breakout", nail(breakoutNail)},
		{"goes on in a section", nail(goesOnNail)},
		{"loop cut open", nail(looseNail)},
		{"clamp", func(s *scene.Sheet, x, y float64) {
			paintClamp(s, scene.Point{X: x, Y: y}, scene.Point{X: x + 10, Y: y}, 5, 0.5)
		}},
	}
	covers := coversOf(p.section)
	plugged := slices.ContainsFunc(p.section.Spots, func(s *formboard.Spot) bool { return len(s.Inlines) > 0 })
	for i := range 5 {
		if i >= len(covers) && plugged {
			list, plugged = append(list, entry{"connector", nail(connectorNail)}), false
			continue
		}
		if i >= len(covers) {
			list = append(list, entry{"", func(*scene.Sheet, float64, float64) {}})
			continue
		}
		words := "no cover"
		if covers[i] != nil {
			words = covers[i].Name
		}
		list = append(list, entry{words, bandSample(1.4, covers[i])})
	}
	for i, h := range halfMM {
		words := "Ø over " + classText(p.unit, formboard.ClassesMm[len(formboard.ClassesMm)-1]) + " " + p.unit.Small()
		if i < len(formboard.ClassesMm) {
			words = "Ø up to " + classText(p.unit, formboard.ClassesMm[i]) + " " + p.unit.Small()
		}
		list = append(list, entry{words, func(s *scene.Sheet, x, y float64) {
			pen := scene.Pen(outlineMM)
			s.Polygon(lineShape(scene.Point{X: x + 1, Y: y}, scene.Point{X: x + 10, Y: y}, 2*h), &pen, nil)
		}})
	}
	return list
}

// classText is the limit of a class of diameters.
func classText(u lengths.Unit, mm float64) string { return strings.TrimSuffix(u.Width(mm), ".0") }

func bandSample(h float64, c *library.Cover) func(*scene.Sheet, float64, float64) {
	return func(s *scene.Sheet, x, y float64) {
		paintBand(s, scene.Point{X: x + 1, Y: y}, scene.Point{X: x + 10, Y: y}, h, c)
	}
}

// coversOf are the covers in a section in the order of its runs.
func coversOf(s *formboard.Section) []*library.Cover {
	var out []*library.Cover
	for _, l := range s.Limbs {
		if c := l.Run.Bundle.Run.Cover; !slices.Contains(out, c) {
			out = append(out, c)
		}
	}
	return out
}
