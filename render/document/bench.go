package document

import (
	"slices"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/workshop/bench"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Bench lays the bench test on pages: cautions first, then each section with its
// expected readings, bounds and blanks; what wrong readings usually mean and what the
// bounds rest on stand once, at the end.
func Bench(r *harness.Review, test *bench.Test) []*scene.Sheet {
	return upright("Bench test", r, func(b *book) {
		benchPreface(b, test)
		for _, s := range test.Sections {
			benchSection(b, s)
		}
		benchVerdict(b)
		benchHints(b, test)
	})
}

// benchPreface is the cautions, the tools and the blanks for who tests.
func benchPreface(b *book, test *bench.Test) {
	b.head("Cautions: read them before the first lead is connected")
	b.bullets(test.Cautions, plain)
	b.head("What you need")
	b.bullets(test.Tools, plain)
	b.y += 1
	b.blanks("tested by", "date", "meter", "air, °C")
}

// bullets writes a list, each item with a short dash in front.
func (b *book) bullets(items []string, style scene.TextStyle) {
	step := scene.LineHeightMM(style.SizeMM)
	for _, item := range items {
		lines := len(scene.Wrap(item, style.SizeMM, b.width()-5, style.Face))
		b.need(step * float64(min(lines, keptLines)))
		b.sheet().TextAt(scene.Point{X: b.left() + 1, Y: b.y + scene.AscentMM(style.SizeMM, style.Face)}, "–", style)
		b.paraIn(item, style, b.left()+5, b.width()-5)
		b.y += 0.4
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

// benchSection is one section: what to do and the table.
func benchSection(b *book, s *bench.Section) {
	b.head(strconv.Itoa(s.Number) + "  " + s.Title)
	b.need(benchLeastMM)
	for _, line := range s.Setup {
		b.paraIn(line, plain, b.left(), b.width())
	}
	b.y += 1
	if s.Trouble != "" {
		b.para(s.Trouble, bold)
	}
	if len(s.Checks()) > 0 {
		benchTable(b, s)
	}
}

// benchLeastMM keeps a heading with what to do and the first rows.
const benchLeastMM = 34.0

// benchTable writes the readings of a section, with boxes to write in and to
// tick; what is only looked at or
// passes by a single bound has no reading.
func benchTable(b *book, s *bench.Section) {
	boxes := []column{{head: "reading", wide: 19, align: scene.Middle}, {head: "pass", wide: 10.5, align: scene.Middle},
		{head: "fail", wide: 9.5, align: scene.Middle}}
	if s.Kind == bench.Fuses || s.Kind == bench.Switches || s.Kind == bench.Continuity || s.Kind == bench.Isolation {
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

// benchHints writes what wrong readings usually mean, what the bounds rest on and
// what is not known, in two columns.
func benchHints(b *book, test *bench.Test) {
	b.inColumns(2)
	b.head("A wrong reading usually means (" + report.HintSource + ")")
	for _, s := range test.Sections {
		if len(s.Wrong) == 0 {
			continue
		}
		b.need(3 * scene.LineHeightMM(smallSizeMM))
		b.paraIn(strings.ToUpper(string(s.Kind[:1]))+string(s.Kind[1:]), scene.TextStyle{SizeMM: smallSizeMM, Face: scene.Bold, Colour: ink}, b.left(), b.width())
		for _, h := range s.Wrong {
			b.paraIn(h.Reading+": "+h.Means+".", small, b.left()+3, b.width()-3)
		}
	}
	b.head("How the bounds are made")
	b.bullets(append(slices.Clone(test.Bounds), report.BenchBases(test)...), smallQuiet)
	if len(test.Missing) > 0 {
		b.head("Not known, or assumed by common practice")
		b.bullets(test.Missing, smallQuiet)
	}
	b.inColumns(1)
}

// benchVerdict is where the tester signs.
func benchVerdict(b *book) {
	b.head("Outcome")
	b.need(22)
	b.para("Every line passed, or each failed line was put right and measured again. A harness that passes is not thereby safe "+
		"or lawful: see the cautions.", plain)
	b.blanks("passed (yes or no)", "open points", "signed", "date")
}
