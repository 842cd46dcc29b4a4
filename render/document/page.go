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
	marginMM  = 15.0
	headingMM = 21.0

	nextHeadingMM = 10.0 // on the pages after the first

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
	tight  bool    // rows and headings closer together, to save a page

	// Text columns side by side: how many there are, the one being filled, where
	// they begin on this page and how far down the longest reaches.
	cols, col int
	top, low  float64
	pageTop   float64

	// Where columns end on one page, so that they are equally long; no page while 0.
	level     float64
	levelPage int

	due []string // headings that wait for what they are the headings of

	// What was worked out before: rows are measured before they are set, and set again in
	// columns of other lengths.
	wraps map[wrapping][]string
	fits  map[fitting][]column
}

// wrapping is what the lines of a text depend on.
type wrapping struct {
	text           string
	sizeMM, wideMM float64
	face           scene.Face
}

// wrap is scene.Wrap, worked out once; its lines are only read.
func (b *book) wrap(text string, sizeMM, wideMM float64, face scene.Face) []string {
	of := wrapping{text, sizeMM, wideMM, face}
	lines, known := b.wraps[of]
	if !known {
		lines = scene.Wrap(text, sizeMM, wideMM, face)
		b.wraps[of] = lines
	}
	return lines
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
	b := &book{kind: kind, review: r, paper: p, cols: 1, wraps: map[wrapping][]string{}, fits: map[fitting][]column{}}
	b.newPage()
	return b
}

// pulledBack fills a book; where closer together everything takes a page less, that is
// kept.
func pulledBack(blank func() *book, fill func(*book) error) ([]*scene.Sheet, error) {
	b := blank()
	if err := fill(b); err != nil {
		return nil, err
	}
	if len(b.sheets) > 1 {
		closer := blank()
		closer.tight, closer.wraps, closer.fits = true, b.wraps, b.fits
		if err := fill(closer); err == nil && len(closer.sheets) < len(b.sheets) {
			b = closer
		}
	}
	return b.finish(), nil
}

// upright is pulledBack on upright pages for what cannot fail.
func upright(kind string, r *harness.Review, fill func(*book)) []*scene.Sheet {
	sheets, _ := pulledBack(func() *book { return newBook(kind, r) }, func(b *book) error { fill(b); return nil })
	return sheets
}

// sheet is the page being filled.
func (b *book) sheet() *scene.Sheet { return b.sheets[len(b.sheets)-1] }

// wholeMM is the width between the margins, edge the right one of them.
func (b *book) wholeMM() float64 { return b.paper.Wide - 2*marginMM }
func (b *book) edge() float64    { return b.paper.Wide - marginMM }

// newPage begins a page with its heading, which is short on all but the first.
func (b *book) newPage() {
	s := scene.NewSheet(b.paper.Wide, b.paper.High, b.kind)
	b.sheets = append(b.sheets, s)
	b.col = 0
	s.Begin(scene.Group{ID: s.UniqueID("heading"), Class: "heading", Title: b.kind})
	b.y = marginMM + nextHeadingMM
	if len(b.sheets) == 1 {
		b.y = marginMM + headingMM
		b.firstHeading()
	} else {
		top := marginMM + scene.CapHeightMM(headSizeMM, scene.Bold)
		s.TextAt(scene.Point{X: marginMM, Y: top}, b.kind, heading)
		b.headLine(b.review.Design.Title.Value, marginMM+heading.Width(b.kind)+4, top, smallQuiet, 0)
	}
	rule := b.y - 4.0
	s.Line(scene.Point{X: marginMM, Y: rule}, scene.Point{X: b.edge(), Y: rule}, scene.Pen(thickMM))
	s.End()
	b.top, b.low, b.pageTop = b.y, b.y, b.y
}

func (b *book) firstHeading() {
	s, d := b.sheet(), b.review.Design
	top := marginMM + scene.CapHeightMM(titleSizeMM, scene.Bold)
	metaWide := 60.0
	s.TextAt(scene.Point{X: marginMM, Y: top}, b.kind,
		scene.TextStyle{SizeMM: titleSizeMM, Face: scene.Bold, Colour: ink})
	b.headLine(d.Title.Value, marginMM, top+6.4, scene.TextStyle{SizeMM: headSizeMM, Colour: ink}, metaWide)
	b.headLine(d.Vehicle.Value, marginMM, top+10.6, smallQuiet, 0)
	for i, line := range meta(b.review) {
		line = scene.Ellipsis(line, smallSizeMM, metaWide, scene.Regular)
		s.TextAt(scene.Point{X: b.edge(), Y: marginMM + 2.4 + float64(i)*4.2}, line,
			scene.TextStyle{SizeMM: smallSizeMM, Align: scene.Right, Colour: grey})
	}
}

// headLine writes one line of the heading, cut to leave room at its right.
func (b *book) headLine(text string, x, y float64, style scene.TextStyle, keepMM float64) {
	text = scene.Ellipsis(text, style.SizeMM, b.edge()-x-keepMM, style.Face)
	b.sheet().TextAt(scene.Point{X: x, Y: y}, text, style)
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
		s.Line(scene.Point{X: marginMM, Y: y - 8}, scene.Point{X: b.edge(), Y: y - 8}, scene.Pen(thinMM))
		style := smallQuiet
		s.Paragraph(scene.Rect{X: marginMM, Y: y - 7, W: b.wholeMM() - 28, H: 8}, b.review.Design.Caution(), style)
		style.Align = scene.Right
		s.Begin(scene.Group{Class: pageOfPaper})
		s.TextAt(scene.Point{X: b.edge(), Y: y - 4.2}, fmt.Sprintf("page %d of %d", i+1, len(b.sheets)), style)
		s.End()
		s.End()
	}
	return b.sheets
}

// need makes room for what is kept together: in the next column or on the next page
// when less than the height is left here. Headings that wait go before it.
func (b *book) need(heightMM float64) {
	high := 0.0
	for _, text := range b.due {
		high += b.headMM(text)
	}
	for b.y+high+heightMM > b.bottom() && b.y > b.pageTop {
		b.next()
	}
	due := b.due
	b.due = nil
	for _, text := range due {
		b.writeHead(text)
	}
}

// head begins a section; its heading is written with what comes first in it, on more
// lines when it is long.
func (b *book) head(text string) { b.due = append(b.due, text) }

func (b *book) headLines(text string) []string {
	return scene.Wrap(text, headSizeMM, b.width(), scene.Bold)
}

// aboveHeadMM is the space above a heading that is not the first of its page.
func (b *book) aboveHeadMM() float64 {
	if b.tight {
		return 2
	}
	return 3.5
}

func (b *book) headMM(text string) float64 {
	return b.aboveHeadMM() + 5 + scene.LineHeightMM(headSizeMM)*float64(len(b.headLines(text))-1)
}

func (b *book) writeHead(text string) {
	if b.y > b.top+0.1 {
		b.y += b.aboveHeadMM()
	}
	step := scene.LineHeightMM(headSizeMM)
	lines := b.headLines(text)
	for i, line := range lines {
		b.sheet().TextAt(scene.Point{X: b.left(), Y: b.y + 3 + step*float64(i)}, line, heading)
	}
	b.y += 5 + step*float64(len(lines)-1)
	if s := b.sheet(); s.Title == b.kind && len(b.sheets) > 1 {
		s.Title = b.kind + ": " + shortTitle(text)
	}
}

// shortTitle is the beginning of a heading, for a bookmark.
func shortTitle(text string) string {
	if at := strings.IndexAny(text, ":(;"); at > 0 {
		text = text[:at]
	}
	return strings.TrimSpace(text)
}

// para writes wrapped prose over page ends.
func (b *book) para(text string, style scene.TextStyle) {
	b.paraIn(text, style, b.left(), b.width())
	if b.tight {
		b.y += 0.8
	} else {
		b.y += 1.5
	}
}

// keptLines is the longest paragraph that is not split between pages.
const keptLines = 8

// paraIn writes wrapped prose in a column.
func (b *book) paraIn(text string, style scene.TextStyle, x, width float64) {
	step, indent := scene.LineHeightMM(style.SizeMM), x-b.left()
	lines := b.wrap(text, style.SizeMM, width, style.Face)
	if len(lines) <= keptLines {
		b.need(float64(len(lines)) * step)
	}
	for _, line := range lines {
		b.need(step)
		b.sheet().TextAt(scene.Point{X: b.left() + indent, Y: b.y + scene.AscentMM(style.SizeMM, style.Face)}, line, style)
		b.y += step
	}
}
