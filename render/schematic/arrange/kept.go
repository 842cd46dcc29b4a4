package arrange

import (
	"slices"

	"fusewright/render/schematic/cell"
)

// moved counts the parts of a page that do not stand where they stood.
func (p *Page) moved(columns int) (n int) {
	if p.was == nil {
		return 0
	}
	leads, _, x := p.keptColumns(columns)
	for _, c := range p.Cells {
		o := p.before(c)
		if o == nil || c.Kind != cell.Part {
			continue
		}
		if x == nil || x[c.Col]+leads[c.Col] != o.X || slices.ContainsFunc(c.Rows, func(r *cell.Row) bool {
			y, stood := p.stood(r)
			return stood && y != r.Y
		}) {
			n++
		}
	}
	return n
}

// before is the cell that stood for the same on the earlier page; nil = none.
func (p *Page) before(c *cell.Cell) *cell.Cell {
	if p.was == nil {
		return nil
	}
	name := standsFor(c)
	i := slices.IndexFunc(p.was.Cells, func(o *cell.Cell) bool { return o.Kind != cell.Blank && standsFor(o) == name })
	if i < 0 {
		return nil
	}
	return p.was.Cells[i]
}

// stood is the row at which a row stood.
func (p *Page) stood(r *cell.Row) (y int, ok bool) {
	o := p.before(r.Cell)
	if o == nil || r.Cell.Kind == cell.Blank || r.Index >= len(o.Rows) {
		return 0, false
	}
	return o.Rows[r.Index].Y, true
}

// keepOrder puts what stood in the order in which it stood; what is new stays behind what it
// would stand behind.
func (p *Page) keepOrder() {
	if p.was == nil {
		return
	}
	for col, list := range p.Columns {
		type ranked struct {
			c *cell.Cell
			y int
		}
		var rows []ranked
		low := 0
		for _, c := range list {
			if y, stood := p.stood(c.Rows[0]); stood {
				low = y
			}
			rows = append(rows, ranked{c, low})
		}
		slices.SortStableFunc(rows, func(a, b ranked) int { return a.y - b.y })
		for i, r := range rows {
			p.Columns[col][i] = r.c
		}
	}
}

// keptColumns are the columns with all bodies where they stood, or as near as there is
// room; nil where there is none.
func (p *Page) keptColumns(total int) (leads, widths, x []int) {
	if p.was == nil || len(p.Columns) != len(p.was.Columns) {
		return nil, nil, nil
	}
	for _, as := range []*Page{p.was, p} { // with the room of before, else with what is needed
		leads, widths, x = nil, nil, nil
		end, tiers := 0, p.tiers()
		for col := range p.Columns {
			if slices.ContainsFunc(tiers, func(t tier) bool { return t.start == col }) {
				end = 0
			}
			lead := max(p.Leads[col], as.Leads[col])
			width := lead + max(p.Widths[col]-p.Leads[col], as.Widths[col]-as.Leads[col])
			at := max(end, p.was.ColumnX[col]+p.was.Leads[col]-lead)
			leads, widths, x = append(leads, lead), append(widths, width), append(x, at)
			end = at + width + p.tracks[col] + 1
		}
		for _, t := range tiers {
			limit := total
			for col := t.end - 1; col >= t.start; col-- {
				x[col] = min(x[col], limit-widths[col])
				if limit = x[col]; col > t.start {
					limit -= p.tracks[col-1] + 1
				}
			}
		}
		if !slices.ContainsFunc(tiers, func(t tier) bool { return x[t.start] < 0 }) {
			return leads, widths, x
		}
	}
	return nil, nil, nil
}

// keepColumns sets the columns where they stood, and tells whether they have the room.
func (p *Page) keepColumns(total int) bool {
	leads, widths, x := p.keptColumns(total)
	if x == nil {
		return false
	}
	p.Leads, p.Widths, p.ColumnX = leads, widths, x
	for _, c := range p.Cells {
		c.Flat, c.FlatReturns, c.RunMore = false, false, 0
		if o := p.before(c); o != nil && leads[c.Col] >= p.was.Leads[c.Col] && widths[c.Col]-leads[c.Col] >= p.was.Widths[c.Col]-p.was.Leads[c.Col] {
			c.Flat, c.FlatReturns = o.Flat, o.FlatReturns
		}
		if hasReturnRun(c) {
			c.RunMore = p.Widths[c.Col] - p.Leads[c.Col] - c.Body
		}
	}
	p.setBodies()
	return true
}

// Moved counts the parts that do not stand where they stood before.
func (a *Arrangement) Moved(before *Arrangement) (n int) {
	was := map[string]*cell.Cell{}
	for _, o := range before.List {
		was[standsFor(o)] = o
	}
	for _, c := range a.List {
		o := was[standsFor(c)]
		if o != nil && !c.Empty && (c.Sheet != o.Sheet || c.X != o.X || c.Rows[0].Y != o.Rows[0].Y) {
			n++
		}
	}
	return n
}
