package arrange

import (
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/route"
)

// routeAll gives every hop of a page its track and sets the places of the
// columns. It returns an inlet to take out when nets cannot pass each other.
func (p *Page) routeAll() (stuck *cell.Inlet) {
	channels := make([]route.Channel, max(len(p.Columns)-1, 0))
	for _, n := range p.nets {
		for _, h := range n.Hops {
			channels[h.Col].Hops = append(channels[h.Col].Hops, h)
		}
	}
	for i := range channels {
		if stuck := channels[i].Route(); stuck != nil {
			return stuck
		}
	}
	p.measureColumns(channels)
	return nil
}

// measureColumns sets the lead and body widths and packs the columns.
func (p *Page) measureColumns(channels []route.Channel) {
	n := len(p.Columns)
	p.Leads, p.Widths, p.ColumnX, p.tracks = make([]int, n), make([]int, n), make([]int, n), make([]int, n)
	x := 0
	for col, list := range p.Columns {
		if col > 0 && list[0].Tier != p.Columns[col-1][0].Tier {
			x = 0
		}
		body := 0
		blank := 0
		for _, c := range list {
			if c.Kind == cell.Blank { // stands under leads and bodies alike
				blank = c.Body
				continue
			}
			p.Leads[col] = max(p.Leads[col], c.Lead)
			body = max(body, c.Body, c.Wide)
		}
		p.Widths[col] = max(p.Leads[col]+body, blank)
		p.ColumnX[col] = x
		x += p.Widths[col]
		if col < len(channels) {
			x += channels[col].Tracks + 1
			p.tracks[col] = channels[col].Tracks
		}
	}
	p.setBodies()
}

func (p *Page) setBodies() {
	for col, list := range p.Columns {
		for _, c := range list {
			c.X = p.ColumnX[col] + p.Leads[col]
		}
	}
}

// placeColumns shares the width that is left in each tier among the channels and centres
// what remains.
func (p *Page) placeColumns(total int) {
	const most = 6 // a wider gap tears the drawing apart
	for _, t := range p.tiers() {
		left := total - p.ColumnX[t.end-1] - p.Widths[t.end-1]
		for col := t.start + 1; col < t.end && left > 0; col++ {
			add := min(left/(t.end-col), most)
			left -= add
			for k := col; k < t.end; k++ {
				p.ColumnX[k] += add
			}
		}
		for k := t.start; k < t.end; k++ {
			p.ColumnX[k] += max(left, 0) / 2
		}
	}
	p.setBodies()
}

// MostAir is the highest level of air that Spread knows.
const MostAir = 4

// slotAir is the level of air from which on every way of a block has the room of a load,
// so that one more or less there moves nothing else.
const slotAir = 2

// Spread gives the page a level of air: room between its cells, slots for the ways of its
// blocks, and the columns the width that is left. It tells whether the page still fits
// its sheet.
func (a *Arrangement) Spread(p *Page, level int) bool {
	p.slot = 0
	if level >= slotAir {
		p.slot, level = a.LoadRows(), level-slotAir
	}
	return a.spread(p, level)
}

func (a *Arrangement) spread(p *Page, air int) bool {
	p.solveRows(air)
	most := a.Rows
	if p.was == nil { // air leaves room for one load more
		most -= a.LoadRows()
	}
	if p.Height > most && (air > 0 || p.slot > 0) {
		return false
	}
	if p.routeAll() != nil { // with other rows another wire may be stuck
		if air > 0 || p.slot > 0 {
			return false
		}
		p.solveRows(0)
		p.routeAll()
	}
	columns := a.Columns
	if p.Width() > columns && (air > 0 || p.slot > 0) {
		return false
	}
	p.Side = columns-p.Width() >= column.WidthM && (p.was == nil || p.was.Side)
	if p.Side {
		columns -= column.WidthM
	}
	if p.keepColumns(columns) {
		return true
	}
	a.flatten(p, columns)
	p.placeColumns(columns)
	return true
}
