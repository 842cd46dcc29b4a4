package document

import (
	"strconv"

	"fusewright/harness"
	"fusewright/harness/workshop/bench"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Bench lays the bench test on pages: cautions first, then each section with
// its expected readings, bounds, blanks and what a wrong reading usually means.
func Bench(r *harness.Review, test *bench.Test) []*scene.Sheet {
	b := newBook("Bench test", r)
	benchPreface(b, test)
	for _, s := range test.Sections {
		benchSection(b, s)
	}
	if len(test.Missing) > 0 {
		b.head("Not known, or taken from common practice")
		b.bullets(test.Missing, small)
	}
	benchVerdict(b)
	return b.finish()
}

// benchPreface is the cautions, the tools and the blanks for who tests.
func benchPreface(b *book, test *bench.Test) {
	b.sheet().TextAt(scene.Point{X: b.left(), Y: b.y + 3}, "Cautions: read them before the first lead is connected", heading)
	b.y += 7
	b.bullets(test.Cautions, plain)
	b.head("What you need")
	b.bullets(test.Tools, plain)
	b.head("How to read the bounds")
	b.bullets(test.Bounds, smallQuiet)
	b.y += 4
	b.blanks("tested by", "date", "meter", "air, °C")
	b.y += 3
}

// bullets writes a list, each item with a short dash in front.
func (b *book) bullets(items []string, style scene.TextStyle) {
	step := scene.LineHeightMM(style.SizeMM)
	for _, item := range items {
		b.need(step)
		b.sheet().TextAt(scene.Point{X: b.left() + 1, Y: b.y + scene.AscentMM(style.SizeMM, style.Face)}, "–", style)
		b.paraIn(item, style, b.left()+5, b.width()-5)
		b.y += 0.7
	}
}

// blanks writes names with a line to write on behind each, side by side.
func (b *book) blanks(names ...string) {
	b.need(9)
	wide := b.width() / float64(len(names))
	for i, name := range names {
		x := b.left() + wide*float64(i)
		y := b.y + 6
		b.sheet().TextAt(scene.Point{X: x, Y: y}, name, smallQuiet)
		from := x + smallQuiet.Width(name) + 1.5
		b.sheet().Line(scene.Point{X: from, Y: y + 0.6}, scene.Point{X: x + wide - 3, Y: y + 0.6}, scene.Pen(thinMM))
	}
	b.y += 8
}

// benchSection is one section: what to do, the table, what wrong readings mean.
func benchSection(b *book, s *bench.Section) {
	b.need(46)
	b.head(strconv.Itoa(s.Number) + "  " + s.Title)
	for _, line := range s.Setup {
		b.paraIn(line, plain, b.left(), b.width())
		b.y += 0.7
	}
	b.y += 1
	if s.Trouble != "" {
		b.para(s.Trouble, bold)
	}
	if len(s.Checks()) > 0 {
		benchTable(b, s)
	}
	benchHints(b, s)
}

// benchTable writes the readings of a section, with boxes to write in and to
// tick; fuses are looked at and have no reading.
func benchTable(b *book, s *bench.Section) {
	boxes := []column{{head: "reading", wide: 22, align: scene.Middle}, {head: "pass", wide: 10.5, align: scene.Middle},
		{head: "fail", wide: 9.5, align: scene.Middle}}
	if s.Kind == bench.Fuses {
		boxes = boxes[1:]
	}
	b.lay(report.BenchTable(s), boxes...)
}

// blank draws a field to write in, in a column of the row just written.
func (t *table) blank(col int) {
	x, w := t.at(col)
	pen := scene.Pen(hairMM).In(faint)
	t.book.sheet().Rect(scene.Rect{X: x + 1, Y: t.rowTop + 0.8, W: w - 2, H: t.book.y - t.rowTop - 1.6}, &pen, nil)
}

// benchHints writes what wrong readings usually mean, once for each kind.
func benchHints(b *book, s *bench.Section) {
	if len(s.Wrong) == 0 {
		b.para("Wrong readings: see section "+strconv.Itoa(s.WrongIn)+".", small)
		return
	}
	t := b.newTable([]column{
		{head: "a wrong reading", wide: 70, face: scene.Bold},
		{head: "usually means (" + report.HintSource + ")", wide: 110},
	})
	for _, h := range s.Wrong {
		t.row(h.Reading, h.Means)
	}
	b.y += 3
}

// benchVerdict is where the tester signs.
func benchVerdict(b *book) {
	b.need(34)
	b.head("Outcome")
	b.para("Every line passed, or each failed line was mended and measured again. A harness that passes is not thereby safe "+
		"or lawful: see the cautions.", plain)
	b.blanks("passed (yes or no)", "open points", "signed", "date")
}
