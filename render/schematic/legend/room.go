package legend

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/frame"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/column"
	"fusewright/render/symbol"
)

// slots are the free columns of a page: at the right of the circuit when it is
// narrow, under it, and beside the title block.
func (l *Lists) slots(p *arrange.Page) []*column.Slot {
	var list []*column.Slot
	field, in := l.arr.Field, l.arr.Paper.Inner()
	stripTop := in.Bottom() - frame.TitleH
	right := field.Right()
	if p.Side {
		right -= column.Width
		list = append(list, column.NewSlot(right+2, field.Y+2, stripTop-2))
	}
	for x := in.X + 4; x+column.Width-4 < right; x += column.Step {
		bottom := in.Bottom() - 9 // the caution stands below
		if x+column.Width-4 >= in.Right()-frame.TitleW {
			bottom = stripTop - 2
		}
		list = append(list, column.NewSlot(x, l.bottomOf(p, x, x+column.Width), bottom))
	}
	return list
}

// bottomOf is the lower edge, in mm, of whatever the circuit has between two
// upright lines.
func (l *Lists) bottomOf(p *arrange.Page, left, right float64) float64 {
	field := l.arr.Field
	low := 0.0
	note := func(x0, x1 int, y float64) {
		if field.X+float64(x0-1)*symbol.M < right && field.X+float64(x1+1)*symbol.M > left {
			low = max(low, y)
		}
	}
	for _, c := range p.Cells {
		for _, r := range c.Rows {
			width := c.Body + c.RunMore
			if c.Kind == cell.Pass {
				width = p.Widths[c.Col]
			}
			if c.Kind == cell.Part && c.Part.Kind == circuit.Battery {
				width = c.Cellar
			}
			note(c.X-1-max(c.Lead, p.Leads[c.Col]), c.X+width, float64(r.Y)+r.Bottom)
		}
	}
	p.TraceLines()
	for _, l := range p.Lines {
		for k := 1; k < len(l.Pts); k++ {
			a, b := l.Pts[k-1], l.Pts[k]
			note(min(a.X, b.X), max(a.X, b.X), float64(max(a.Y, b.Y))+0.5)
		}
	}
	if p.Outlined {
		for _, r := range l.arr.Frames(p) {
			note(p.ColumnX[r.First]-1, p.ColumnX[r.Last]+p.Widths[r.Last]+1, r.Bottom+0.3)
		}
	}
	return field.Y + low*symbol.M + 3
}

// extraPages fills sheets with lists, column by column.
func (l *Lists) extraPages(rest []*column.List) (pages [][]*column.List) {
	for len(rest) > 0 {
		placed, left, _ := column.Place(rest, l.freshSlots())
		if len(placed) == 0 { // one list taller than a sheet: it may run on
			column.Put(rest[0], []*column.Slot{column.NewSlot(l.arr.Paper.Inner().X+4, l.arr.Paper.Inner().Y+4, 0)}, l.arr.Paper.Inner().Y+4, rest[0].Height())
			placed, left = rest[:1], rest[1:]
		}
		pages = append(pages, placed)
		rest = left
	}
	return pages
}

// freshSlots are the columns of an empty sheet.
func (l *Lists) freshSlots() []*column.Slot {
	var list []*column.Slot
	in := l.arr.Paper.Inner()
	for x := in.X + 4; x+column.Width-4 < in.Right(); x += column.Step {
		bottom := in.Bottom() - 12
		if x+column.Width > in.Right()-frame.TitleW {
			bottom = in.Bottom() - frame.TitleH - 2
		}
		list = append(list, column.NewSlot(x, in.Y+5, bottom))
	}
	return list
}
