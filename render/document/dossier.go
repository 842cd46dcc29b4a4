package document

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
)

// Section is one paper of the dossier with its sheets, which may be of any size.
type Section struct {
	Title  string
	Sheets []*scene.Sheet
	Legend Legend

	explained int // page behind the front that has the legend, from 1; 0 = none
}

// DocumentOf is an empty document of a design: its title behind the kind's, its author
// and its date.
func DocumentOf(r *harness.Review, kind string) *scene.Document {
	d := &scene.Document{Title: kind + " · " + r.Design.Title.Value, Author: r.Design.Author.Value, Subject: Caution}
	if date, err := time.Parse(time.DateOnly, r.Design.Date.Value); err == nil {
		d.Date = date
	}
	return d
}

// Dossier binds sections into one document: the cover with the contents first,
// page numbers over the whole, a bookmark for each page, and links from the
// contents, from every part or wire number to the schematic, and from the foot
// of each page back to the contents. Sections without sheets are left out. The
// sheets given are not changed.
func Dossier(r *harness.Review, title string, sections []Section) *scene.Document {
	sections = slices.DeleteFunc(slices.Clone(sections), func(s Section) bool { return len(s.Sheets) == 0 })
	// The number of pages in front does not depend on the page numbers in them.
	legends := withLegends(r, title, sections)
	first, _ := front(r, title, sections, 0, legends)
	first, contentsPage := front(r, title, sections, len(first)+1, legends)
	all := append([]Section{{Title: "Cover and contents", Sheets: first}}, sections...)
	total := 0
	for _, s := range all {
		total += len(s.Sheets)
	}
	links := referenceLinks(r.Circuit, sections)
	pages := pagesOf(all)
	doc := DocumentOf(r, title)
	for _, s := range all {
		for i, sheet := range s.Sheets {
			page := len(doc.Sheets) + 1
			bound := bind(sheet, links, pages)
			if len(s.Sheets) == 1 {
				bound.Items = withoutGroup(bound.Items, pageOfPaper)
			}
			bound.ID, bound.Title, bound.Level = pageID(page), s.Title, 0
			if i > 0 {
				bound.Title, bound.Level = pageTitle(s.Title, sheet.Title, i+1), 1
			}
			stamp(bound, page, total, pageID(contentsPage))
			doc.Sheets = append(doc.Sheets, bound)
		}
	}
	return doc
}

// pageTitle is the bookmark of a page after a paper's first: what begins on it, else
// its number.
func pageTitle(paper, sheet string, page int) string {
	if _, begins, ok := strings.Cut(sheet, paper+": "); ok && begins != "" {
		return strings.Replace(paper, "Fault and protection study", "Study", 1) + ": " + begins
	}
	return fmt.Sprintf("%s, page %d", paper, page)
}

// pagesOf maps the ID that a sheet has by itself to its page of the dossier.
func pagesOf(sections []Section) map[string]string {
	pages, page := map[string]string{}, 0
	for _, s := range sections {
		for _, sheet := range s.Sheets {
			page++
			if sheet.ID != "" {
				pages[sheet.ID] = pageID(page)
			}
		}
	}
	return pages
}

// bind copies a sheet, leads its links to other sheets to their pages, and makes
// every part or wire number at the start of a text a link, but on framed sheets:
// drawings show the parts themselves.
func bind(sheet *scene.Sheet, links, pages map[string]string) *scene.Sheet {
	bound := *sheet
	bound.Items = make([]scene.Item, 0, len(sheet.Items)+16)
	framed := isFramed(sheet)
	inLink := 0 // depth of groups that are links already
	for _, item := range sheet.Items {
		switch {
		case item.Begin != nil && (inLink > 0 || item.Begin.Link != ""):
			inLink++
		case item.End && inLink > 0:
			inLink--
		}
		if item.Begin != nil && pages[item.Begin.Link] != "" {
			group := *item.Begin
			group.Link = pages[group.Link]
			item.Begin = &group
		}
		target := ""
		if item.Text != nil && !framed && inLink == 0 {
			word, _, _ := strings.Cut(item.Text.String, " ")
			target = links[strings.TrimRight(word, ",:")]
		}
		if target == "" {
			bound.Items = append(bound.Items, item)
			continue
		}
		link := scene.Group{Class: "reference", Title: "to the schematic", Link: target}
		bound.Items = append(bound.Items, scene.Item{Begin: &link}, item, scene.Item{End: true})
	}
	return &bound
}

// withoutGroup leaves out what stands in groups of a class: of a paper of one
// sheet the dossier's number alone is left.
func withoutGroup(items []scene.Item, class string) []scene.Item {
	kept, depth := items[:0:0], 0
	for _, item := range items {
		switch {
		case item.Begin != nil && (depth > 0 || item.Begin.Class == class):
			depth++
		case item.End && depth > 0:
			depth--
		case depth == 0:
			kept = append(kept, item)
		}
	}
	return kept
}

// isFramed tells whether a sheet has a drawing frame.
func isFramed(s *scene.Sheet) bool { return hasClass(s, "frame") }

func hasClass(s *scene.Sheet, class string) bool {
	return slices.ContainsFunc(s.Items, func(i scene.Item) bool { return i.Begin != nil && i.Begin.Class == class })
}

// Where the dossier's page number stands: in the strip of the frame that holds
// the zones, or in the margin below the foot.
const (
	stampFrameX, stampFrameY = 6.5, 6.5
	stampY                   = 10.4
	stampLabelsY             = 6.2 // below the labels, which begin and end in the margins
)

// stamp writes the page of the dossier at the lower right and makes it lead to
// the contents.
func stamp(s *scene.Sheet, page, total int, back string) {
	at := scene.Point{X: s.WidthMM - marginMM, Y: s.HeightMM - stampY}
	if isFramed(s) {
		at = scene.Point{X: s.WidthMM - stampFrameX, Y: s.HeightMM - stampFrameY}
	}
	if hasClass(s, "label") {
		at.Y = s.HeightMM - stampLabelsY
	}
	s.Begin(scene.Group{ID: s.UniqueID("dossier-number"), Class: "page number",
		Title: fmt.Sprintf("page %d of %d of the dossier; to the contents", page, total), Link: back})
	s.TextAt(at, fmt.Sprintf("dossier %d/%d", page, total),
		scene.TextStyle{SizeMM: smallSizeMM + 0.15, Face: scene.Bold, Align: scene.Right, Colour: ink})
	s.End()
}

// referenceLinks maps reference designations and wire numbers to the groups that
// draw them; fuses in blocks lead to their block.
func referenceLinks(c *circuit.Circuit, sections []Section) map[string]string {
	drawn := map[string]bool{}
	for _, s := range sections {
		for _, sheet := range s.Sheets {
			for _, item := range sheet.Items {
				if item.Begin != nil && item.Begin.ID != "" {
					drawn[item.Begin.ID] = true
				}
			}
		}
	}
	links := map[string]string{}
	set := func(ref string, ids ...string) {
		for _, id := range ids {
			if drawn[id] {
				links[ref] = id
				return
			}
		}
	}
	for _, w := range c.Wires {
		set(w.Number, scene.ID("wire-"+w.Number))
	}
	for _, p := range c.Parts {
		whole := scene.ID("part-" + p.Ref)
		set(p.Ref, whole, whole+"-1")
		for _, b := range p.Branches {
			if b.Fuse != nil && b.Fuse.Ref != "" && p.Kind == circuit.Block {
				set(b.Fuse.Ref, whole, whole+"-1")
			}
		}
	}
	return links
}
