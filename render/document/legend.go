package document

import (
	"slices"

	"fusewright/harness"
	"fusewright/render/scene"
)

// Legend explains sheets on which it found no room: a block, for the cover or another
// page with room for it, or sheets of their own behind them.
type Legend struct {
	Sheets []*scene.Sheet
	Block  *scene.Sheet // nil = none
}

// BlockMM is the width of a legend's block, aboveLegendMM the space above it.
const BlockMM, aboveLegendMM = 174.0, 5.0

// withLegends finds a place for the legends of sections: the cover, which then gets the
// blocks, else a page, else sheets behind their own. The sections given are changed, their
// sheets are not.
func withLegends(r *harness.Review, title string, sections []Section) (onCover []*scene.Sheet) {
	for _, s := range sections {
		if s.Legend.Block != nil {
			onCover = append(onCover, s.Legend.Block)
		}
	}
	bare, _ := front(r, title, sections, 0, nil)
	if with, _ := front(r, title, sections, 0, onCover); len(with) == len(bare) {
		return onCover
	}
	for i := range sections {
		if s := &sections[i]; s.Legend.Block != nil && !s.explainOn(sections) {
			s.Sheets = slices.Concat(s.Sheets, s.Legend.Sheets)
		}
	}
	return nil
}

// explainOn puts a section's legend on a page that has room for it.
func (s *Section) explainOn(sections []Section) bool {
	page := 0
	for i := range sections {
		to := &sections[i]
		for k, sheet := range to.Sheets {
			if y := lowest(sheet) + aboveLegendMM; takesLegend(sheet) && y+s.Legend.Block.HeightMM <= sheet.HeightMM-marginMM-footMM {
				copied := *sheet
				copied.Items = slices.Clone(sheet.Items)
				copied.Put(s.Legend.Block, scene.Point{X: marginMM, Y: y})
				to.Sheets = slices.Clone(to.Sheets)
				to.Sheets[k] = &copied
				s.explained = page + 1
				return true
			}
			page++
		}
	}
	return false
}

// takesLegend tells of a page that is read: not a framed one, nor one that is cut up.
func takesLegend(sheet *scene.Sheet) bool {
	return !slices.ContainsFunc(sheet.Items, func(i scene.Item) bool {
		return i.Begin != nil && slices.Contains([]string{"frame", "card", "label"}, i.Begin.Class)
	})
}

// lowest is how far down a page is written on, its foot apart.
func lowest(sheet *scene.Sheet) (y float64) {
	for _, item := range withoutGroup(sheet.Items, "foot") {
		if item.Path != nil || item.Text != nil {
			y = max(y, item.Bounds().Bottom())
		}
	}
	return y
}
