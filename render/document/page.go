// Package document lays out the papers of a design — cut list, bill of
// materials, charging budget, findings — as scene sheets and as CSV. It takes
// finished lists from the harness packages and computes nothing electrical.
package document

import (
	"fmt"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/caution"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// Caution stands at the foot of every page, where petrol vapour can gather with a word
// about that.
const Caution = caution.Paper

// Page measures in millimetres; text sizes are those of the em square, so the
// smallest capital is 2.0 mm high.
const (
	marginMM    = 15.0
	headingMM   = 21.0
	footMM      = 12.0
	titleSizeMM = 5.4
	headSizeMM  = 3.9
	textSizeMM  = 3.0
	smallSizeMM = 2.92
	hairMM      = 0.18
	thinMM      = 0.25
	thickMM     = 0.5
)

var (
	ink   = scene.Ink
	grey  = scene.RGB{R: 85, G: 85, B: 85}
	pale  = scene.RGB{R: 238, G: 238, B: 238}
	faint = scene.RGB{R: 150, G: 150, B: 150}
)

// The styles of text that the papers share.
var (
	plain      = scene.TextStyle{SizeMM: textSizeMM, Colour: ink}
	bold       = scene.TextStyle{SizeMM: textSizeMM, Face: scene.Bold, Colour: ink}
	italic     = scene.TextStyle{SizeMM: textSizeMM, Face: scene.Italic, Colour: ink}
	quiet      = scene.TextStyle{SizeMM: textSizeMM, Colour: grey}
	small      = scene.TextStyle{SizeMM: smallSizeMM, Colour: ink}
	smallQuiet = scene.TextStyle{SizeMM: smallSizeMM, Colour: grey}
	large      = scene.TextStyle{SizeMM: coverSizeMM, Colour: ink}
	heading    = scene.TextStyle{SizeMM: headSizeMM, Face: scene.Bold, Colour: ink}
)

// Paper is a page size in millimetres, upright.
type Paper struct {
	Name       string
	Wide, High float64
}

// PaperFor is the page size that goes with the design's sheet size: Letter with
// Letter and Tabloid, A4 with everything else.
func PaperFor(sheetSize string) Paper {
	switch sheetSize {
	case "Letter", "Tabloid":
		return Paper{"Letter", 215.9, 279.4}
	}
	return Paper{"A4", 210, 297}
}

// book lays text and tables on pages one below the other.
type book struct {
	kind   string // "Bill of materials"
	review *harness.Review
	paper  Paper
	sheets []*scene.Sheet
	y      float64 // where the next thing goes
}

func newBook(kind string, r *harness.Review) *book {
	return newBookOn(PaperFor(r.Design.Sheet.Size), kind, r)
}

// newWideBook begins a document on pages that lie on their side.
func newWideBook(kind string, r *harness.Review) *book {
	p := PaperFor(r.Design.Sheet.Size)
	p.Wide, p.High = p.High, p.Wide
	return newBookOn(p, kind, r)
}

func newBookOn(p Paper, kind string, r *harness.Review) *book {
	b := &book{kind: kind, review: r, paper: p}
	b.newPage()
	return b
}

// sheet is the page being filled.
func (b *book) sheet() *scene.Sheet { return b.sheets[len(b.sheets)-1] }

func (b *book) left() float64  { return marginMM }
func (b *book) right() float64 { return b.paper.Wide - marginMM }
func (b *book) width() float64 { return b.right() - b.left() }

// bottom is the lowest place for content.
func (b *book) bottom() float64 { return b.paper.High - marginMM - footMM }

// newPage begins a page with its heading.
func (b *book) newPage() {
	s := scene.NewSheet(b.paper.Wide, b.paper.High, b.kind)
	b.sheets = append(b.sheets, s)
	d := b.review.Design
	s.Begin(scene.Group{ID: s.UniqueID("heading"), Class: "heading", Title: b.kind})
	top := marginMM + scene.CapHeightMM(titleSizeMM, scene.Bold)
	metaWide := 60.0
	s.TextAt(scene.Point{X: b.left(), Y: top}, b.kind,
		scene.TextStyle{SizeMM: titleSizeMM, Face: scene.Bold, Colour: ink})
	b.headLine(d.Title.Value, top+6.4, scene.TextStyle{SizeMM: headSizeMM, Colour: ink}, metaWide)
	b.headLine(d.Vehicle.Value, top+10.6, smallQuiet, 0)
	for i, line := range meta(b.review) {
		line = scene.Ellipsis(line, smallSizeMM, metaWide, scene.Regular)
		s.TextAt(scene.Point{X: b.right(), Y: marginMM + 2.4 + float64(i)*4.2}, line,
			scene.TextStyle{SizeMM: smallSizeMM, Align: scene.Right, Colour: grey})
	}
	rule := marginMM + headingMM - 4.0
	s.Line(scene.Point{X: b.left(), Y: rule}, scene.Point{X: b.right(), Y: rule}, scene.Pen(thickMM))
	s.End()
	b.y = marginMM + headingMM
}

// headLine writes one line of the heading, cut to leave room at its right.
func (b *book) headLine(text string, y float64, style scene.TextStyle, keepMM float64) {
	text = scene.Ellipsis(text, style.SizeMM, b.width()-keepMM, style.Face)
	b.sheet().TextAt(scene.Point{X: b.left(), Y: y}, text, style)
}

// meta is the short facts at the right of a heading, at most two lines.
func meta(r *harness.Review) []string {
	d := r.Design
	var rev, lines []string
	if d.Revision.Given() {
		rev = append(rev, "revision "+d.Revision.Value)
	}
	if d.Date.Given() {
		rev = append(rev, d.Date.Value)
	}
	if len(rev) > 0 {
		lines = append(lines, strings.Join(rev, " · "))
	}
	return append(lines, report.CountsOf(r.Findings).String())
}

// pageOfPaper is the class of a page's own number.
const pageOfPaper = "page of paper"

// finish writes the feet, now that the number of pages is known.
func (b *book) finish() []*scene.Sheet {
	for i, s := range b.sheets {
		y := b.paper.High - marginMM
		s.Begin(scene.Group{ID: s.UniqueID("foot"), Class: "foot", Title: "caution and page number"})
		s.Line(scene.Point{X: b.left(), Y: y - 8}, scene.Point{X: b.right(), Y: y - 8}, scene.Pen(thinMM))
		style := smallQuiet
		s.Paragraph(scene.Rect{X: b.left(), Y: y - 7, W: b.width() - 28, H: 8}, caution.OnPages(b.review.Design.PetrolVapour()), style)
		style.Align = scene.Right
		s.Begin(scene.Group{Class: pageOfPaper})
		s.TextAt(scene.Point{X: b.right(), Y: y - 4.2}, fmt.Sprintf("page %d of %d", i+1, len(b.sheets)), style)
		s.End()
		s.End()
	}
	return b.sheets
}

// need begins a new page when less than the height is left.
func (b *book) need(heightMM float64) {
	if b.y+heightMM > b.bottom() {
		b.newPage()
	}
}

// head writes a section heading, on more lines when it is long.
func (b *book) head(text string) {
	style := heading
	lines := wrap(text, headSizeMM, b.width(), scene.Bold)
	step := scene.LineHeightMM(headSizeMM)
	b.need(14 + step*float64(len(lines)-1))
	b.y += 3
	for i, line := range lines {
		b.sheet().TextAt(scene.Point{X: b.left(), Y: b.y + 3 + step*float64(i)}, line, style)
	}
	b.y += 7 + step*float64(len(lines)-1)
}

// para writes wrapped prose over page ends.
func (b *book) para(text string, style scene.TextStyle) {
	b.paraIn(text, style, b.left(), b.width())
	b.y += 1.5
}

// keptLines is the longest paragraph that is not split between pages.
const keptLines = 8

// paraIn writes wrapped prose in a column.
func (b *book) paraIn(text string, style scene.TextStyle, x, width float64) {
	step := scene.LineHeightMM(style.SizeMM)
	lines := wrap(text, style.SizeMM, width, style.Face)
	if len(lines) <= keptLines {
		b.need(float64(len(lines)) * step)
	}
	for _, line := range lines {
		b.need(step)
		b.sheet().TextAt(scene.Point{X: x, Y: b.y + scene.AscentMM(style.SizeMM, style.Face)}, line, style)
		b.y += step
	}
}
