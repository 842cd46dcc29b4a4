package document

import (
	"fmt"
	"strconv"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
)

// contentsRowMM is the height of a line of the contents.
const contentsRowMM = 5.4

// contents lists the sections with the page each begins on; every line leads
// there. Where they would not all stand on this page with what stands below them, they
// stand in two columns.
func (b *book) contents(sections []Section, firstPage int, belowMM float64) (onPage int) {
	high := contentsRowMM * float64(len(sections))
	half := contentsRowMM*float64((len(sections)+1)/2) + columnsAboveMM
	if room := b.bottom() - b.y - b.headMM("Contents") - belowMM; high > room && half <= room {
		b.need(half)
		b.inColumns(2)
		b.levelPage, b.level = len(b.sheets), b.y+half
		defer func() { b.levelPage = 0; b.inColumns(1) }()
	} else {
		b.need(min(high, 30*contentsRowMM)) // whole on one page, when a page holds it
	}
	page := firstPage
	onPage = len(b.sheets)
	for i, s := range sections {
		b.need(contentsRowMM)
		extent := wording.Count(len(s.Sheets), "page", "pages")
		if s.explained > 0 {
			extent += fmt.Sprintf(", legend on page %d", firstPage+s.explained-1)
		}
		b.contentsLine(strconv.Itoa(i+1), s.Title, extent, page)
		page += len(s.Sheets)
	}
	return onPage
}

// contentsLine is one section: number, title, extent, dots, page.
func (b *book) contentsLine(number, title, extent string, page int) {
	s := b.sheet()
	y := b.y + 3.6
	s.Begin(scene.Group{ID: s.UniqueID("contents-" + number), Class: "contents", Title: "to " + title, Link: pageID(page)})
	right := large
	right.Align = scene.Right
	s.TextAt(scene.Point{X: b.left() + 7, Y: y}, number, right)
	s.TextAt(scene.Point{X: b.left() + 11, Y: y}, title, large)
	x := b.left() + 11 + large.Width(title) + 3
	s.TextAt(scene.Point{X: x, Y: y}, extent, quiet)
	s.TextAt(scene.Point{X: b.right(), Y: y}, strconv.Itoa(page), right)
	dots := scene.Pen(thinMM).In(faint).Dashed(0, 1.6)
	dots.Round = true
	dots.WidthMM = 0.4
	from, to := x+quiet.Width(extent)+3, b.right()-large.Width(strconv.Itoa(page))-3
	if to > from {
		s.Line(scene.Point{X: from, Y: y - 0.2}, scene.Point{X: to, Y: y - 0.2}, dots)
	}
	s.End()
	b.y += contentsRowMM
}

// pageID names a page of the dossier as the target of links.
func pageID(page int) string { return fmt.Sprintf("dossier-page-%d", page) }
