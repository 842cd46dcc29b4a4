// Package pdf writes a scene document as a PDF: pages of any size, subsets of
// the embedded faces, a bookmark per sheet, links between pages. The same
// document always gives the same bytes.
//
// It is the only package that knows gofpdf. That library is no longer
// developed, so whatever it gets wrong is mended here; see subset.go.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"github.com/jung-kurt/gofpdf"

	"fusewright/render/scene"
)

// fixedDate stands in when the document gives no date: no clock may enter.
var fixedDate = time.Date(2000, time.January, 1, 0, 0, 0, 0, time.UTC)

// maxSheets keeps a broken caller from filling the memory.
const maxSheets = 10000

// Write writes the document. It is checked first, and built in memory, so on
// any error but one of w itself nothing has been written.
func Write(w io.Writer, document *scene.Document) error {
	if err := document.Validate(); err != nil {
		return err
	}
	if len(document.Sheets) > maxSheets {
		return fmt.Errorf("document of %d sheets (expected at most %d)", len(document.Sheets), maxSheets)
	}
	file := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: size(document.Sheets[0])})
	prepare(file, document)
	p := &printer{file: file, links: map[string]int{}, depth: -1}
	p.linkTargets(document)
	for number, sheet := range document.Sheets {
		p.page(number, sheet, document.Sheets[len(document.Sheets)-1])
	}
	var out bytes.Buffer
	if err := file.Output(&out); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	tagSubsets(out.Bytes())
	sayLanguage(out.Bytes())
	_, err := w.Write(out.Bytes())
	return err
}

func size(sheet *scene.Sheet) gofpdf.SizeType {
	return gofpdf.SizeType{Wd: sheet.WidthMM, Ht: sheet.HeightMM}
}

// prepare sets what holds for the whole file.
func prepare(file *gofpdf.Fpdf, document *scene.Document) {
	file.SetMargins(0, 0, 0)
	file.SetAutoPageBreak(false, 0)
	file.SetCatalogSort(true)
	file.SetDisplayMode(placeholderZoom, placeholderLayout)
	date := document.Date
	if date.IsZero() {
		date = fixedDate
	}
	file.SetCreationDate(date.UTC())
	file.SetModificationDate(date.UTC())
	file.SetTitle(scene.Clean(document.Title), true)
	file.SetAuthor(scene.Clean(document.Author), true)
	file.SetSubject(scene.Clean(document.Subject), true)
	file.SetCreator("Fusewright", true)
	file.SetProducer("Fusewright", true)
	used := facesOf(document)
	for _, face := range scene.Faces {
		if used[face] {
			file.AddUTF8FontFromBytes(familyOf(face), "", scene.FontFile(face))
		}
	}
}

// facesOf tells which faces the texts have: a face that is none of them would be
// embedded all the same, and takes a while. The regular one stands in for others.
func facesOf(document *scene.Document) map[scene.Face]bool {
	used := map[scene.Face]bool{scene.Regular: true}
	for _, sheet := range document.Sheets {
		for _, item := range sheet.Items {
			if item.Text != nil {
				used[item.Text.Face] = true
			}
		}
	}
	return used
}

// printer is the back-end.
type printer struct {
	file   *gofpdf.Fpdf
	links  map[string]int // gofpdf's link numbers by ID
	height float64        // of the present page, mm
	groups []openGroup
	depth  int // of the bookmark made last; -1 = none yet

	// What the page was last told, so that it is not told again.
	colour scene.RGB
	stroke strokeState
}

// strokeState is the part of a stroke that can be compared.
type strokeState struct {
	width  float64
	colour scene.RGB
	round  bool
	dashed bool
}

// openGroup gathers the area of a linked group.
type openGroup struct {
	link string
	area scene.Rect
}

// linkTargets finds the page of each ID that a link leads to; the first sheet
// that has it wins.
func (p *printer) linkTargets(document *scene.Document) {
	wanted := map[string]bool{}
	for _, sheet := range document.Sheets {
		for _, item := range sheet.Items {
			if item.Begin != nil && item.Begin.Link != "" {
				wanted[item.Begin.Link] = true
			}
		}
	}
	if len(wanted) == 0 {
		return
	}
	for number, sheet := range document.Sheets {
		p.target(wanted, sheet.ID, 0, number+1)
		for i, item := range sheet.Items {
			if item.Begin != nil && wanted[item.Begin.ID] {
				p.target(wanted, item.Begin.ID, groupTop(sheet, i), number+1)
			}
		}
	}
}

func (p *printer) target(wanted map[string]bool, id string, topMM float64, page int) {
	if _, known := p.links[id]; known || !wanted[id] {
		return
	}
	p.links[id] = p.file.AddLink()
	p.file.SetLink(p.links[id], place(topMM), page)
}

// groupTop is the upper edge of the group that begins at an item, less a little
// air, so that the viewer shows it whole.
func groupTop(sheet *scene.Sheet, begin int) float64 {
	var area scene.Rect
	depth := 0
	for _, item := range sheet.Items[begin:] {
		if item.Begin != nil {
			depth++
		}
		if item.End {
			depth--
		}
		if depth == 0 {
			break
		}
		area = area.Union(item.Bounds())
	}
	return max(0, area.Y-5)
}

// place avoids -1, which gofpdf takes for "here".
func place(y float64) float64 {
	if y == -1 {
		return -1.0001
	}
	return y
}

// page draws one sheet. gofpdf measures all bookmarks down from the top of the
// last page, whatever the size of their own, hence the difference of heights.
func (p *printer) page(number int, sheet, last *scene.Sheet) {
	p.file.AddPageFormat("P", size(sheet))
	p.height = sheet.HeightMM
	p.stroke, p.colour = strokeState{}, scene.RGB{}
	p.file.SetTextColor(0, 0, 0)
	p.file.SetFont(familyOf(scene.Regular), "", 10)
	title := scene.Clean(sheet.Title)
	if title == "" {
		title = fmt.Sprintf("Sheet %d", number+1)
	}
	p.file.Bookmark(title, p.level(sheet), place(last.HeightMM-sheet.HeightMM))
	if err := sheet.Replay(p); err != nil { // checked before: cannot happen
		p.file.SetError(err)
	}
}

// level is the depth of a sheet's bookmark. gofpdf needs each to have a parent:
// none may lie more than one deeper than the one before.
func (p *printer) level(sheet *scene.Sheet) int {
	p.depth = min(max(sheet.Level, 0), p.depth+1)
	return p.depth
}

// Begin opens a group; only its link matters to a PDF.
func (p *printer) Begin(g scene.Group) {
	p.groups = append(p.groups, openGroup{link: g.Link})
}

// End closes a group and lays its link over the area it covers.
func (p *printer) End() {
	last := len(p.groups) - 1
	group := p.groups[last]
	p.groups = p.groups[:last]
	if group.link != "" && group.area != (scene.Rect{}) {
		a := group.area
		p.file.Link(a.X, a.Y, a.W, a.H, p.links[group.link])
	}
	p.cover(group.area)
}

// cover adds an area to the group that is open, if any.
func (p *printer) cover(area scene.Rect) {
	if last := len(p.groups) - 1; last >= 0 {
		p.groups[last].area = p.groups[last].area.Union(area)
	}
}
