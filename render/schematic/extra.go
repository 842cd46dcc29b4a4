package schematic

import (
	"fmt"

	"fusewright/render/frame"
	"fusewright/render/scene"
)

// extraPage is a sheet of lists alone.
type extraPage struct {
	panels []*panel
}

// extraPages fills sheets with lists, column by column.
func (d *drawing) extraPages(lists []*panel) []*extraPage {
	var pages []*extraPage
	for len(lists) > 0 {
		placed, left, _ := place(lists, d.freshSlots())
		if len(placed) == 0 { // one list taller than a sheet: it may run on
			put(lists[0], []*slot{newSlot(d.paper.Inner().X+4, d.paper.Inner().Y+4, 0)}, d.paper.Inner().Y+4, lists[0].height())
			placed, left = lists[:1], lists[1:]
		}
		pages = append(pages, &extraPage{panels: placed})
		lists = left
	}
	return pages
}

// freshSlots are the columns of an empty sheet.
func (d *drawing) freshSlots() []*slot {
	var list []*slot
	in := d.paper.Inner()
	for x := in.X + 4; x+panelW-4 < in.Right(); x += panelStep {
		bottom := in.Bottom() - 12
		if x+panelW > in.Right()-frame.TitleW {
			bottom = in.Bottom() - frame.TitleH - 2
		}
		list = append(list, newSlot(x, in.Y+5, bottom))
	}
	return list
}

// paintExtra draws a sheet of lists in its frame.
func (d *drawing) paintExtra(e *extraPage, number, total int) *scene.Sheet {
	sheet := scene.NewSheet(d.paper.W, d.paper.H, fmt.Sprintf("lists to the %s, sheet %d of %d", d.subject(), number, total))
	sheet.ID = d.sheetID(number)
	d.paintFrame(sheet, number, total)
	for _, p := range e.panels {
		p.paint(sheet)
	}
	return sheet
}
