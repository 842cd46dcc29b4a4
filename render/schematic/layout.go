package schematic

import (
	"sort"

	"fusewright/render/placement"
)

// flagBody is the width of a cell with a flag and its words, in modules.
const flagBody = 12

// layOut shares the circuit out to pages and lays each out. Wire labels in one
// line are tried first; two lines are taken when that saves sheets.
func (d *drawing) layOut() error {
	one, two := d.count(false), 0
	if one > 1 {
		two = d.count(true)
	}
	if one > trialPages || one == 1 {
		return d.layOutWith(one > 1 && two < one)
	}
	if err := d.layOutWith(true); err != nil {
		return err
	}
	two = len(d.pages)
	if err := d.layOutWith(false); err != nil || len(d.pages) <= two {
		return err
	}
	return d.layOutWith(true)
}

// trialPages is how many pages are laid out both ways to see which is shorter;
// beyond that an estimate decides.
const trialPages = 6

// layOutWith lays all pages out with wire labels in two lines or one.
func (d *drawing) layOutWith(stacked bool) error {
	d.reset(stacked)
	queue := d.start()
	for {
		for len(queue) > 0 {
			p, rest, err := d.nextPage(queue)
			if err != nil {
				return err
			}
			d.pages = append(d.pages, p)
			queue = rest
		}
		// Parts that feed each other in a ring hang on no root.
		for _, c := range d.cells {
			if c.page == nil {
				queue = append(queue, feed{root: c})
				break
			}
		}
		if len(queue) == 0 {
			break
		}
	}
	d.addReferences()
	return nil
}

// reset builds the cells anew for a way of writing wire labels.
func (d *drawing) reset(stacked bool) {
	d.stacked = stacked
	d.cells, d.pages = nil, nil
	clear(d.byPart)
	clear(d.outs)
	clear(d.feeds)
	clear(d.returns)
	clear(d.landed)
	clear(d.refs)
	d.drawnRefs = nil
	d.buildCells()
}

// count is the number of pages, shared out but not laid out.
func (d *drawing) count(stacked bool) int {
	d.reset(stacked)
	queue := d.start()
	n := 0
	for len(queue) > 0 {
		_, queue = d.fill(queue, n, d.paper.rowsM(), d.paper.columnsM())
		n++
	}
	return n
}

// nextPage fills and lays out one page; when it comes out too large it is
// filled again with less.
func (d *drawing) nextPage(queue []feed) (*page, []feed, error) {
	rows, width := d.paper.rowsM(), d.paper.columnsM()
	for try := 0; ; try++ {
		p, rest := d.fill(append([]feed{}, queue...), len(d.pages), rows, width)
		if err := d.layPage(p); err != nil {
			return nil, nil, err
		}
		high, wide := p.height-d.paper.rowsM(), p.width()-d.paper.columnsM()
		if high <= 0 && wide <= 0 || try == 24 {
			return p, rest, nil
		}
		for _, c := range p.cells {
			if c.kind == partCell {
				c.page = nil
			}
		}
		if high > 0 {
			rows -= max(2, min(high, rows/3))
		}
		if wide > 0 {
			width -= max(wide, 3)
		}
	}
}

// width is the modules from the first column to the last.
func (p *page) width() int {
	last := len(p.columnX) - 1
	return p.columnX[last] + p.widths[last]
}

// layPage gives the cells of a page their columns, order, rows and tracks. A
// wire that cannot be routed without running over another is taken out and
// replaced by two flags, and the page laid out again.
func (d *drawing) layPage(p *page) error {
	parts := p.cells
	for {
		p.cells = append([]*cell{}, parts...)
		d.rankCells(p)
		d.addFlags(p)
		p.cellar = [2]*row{}
		d.addCellar(p)
		d.settle(p)
		d.makeNets(p)
		if err := orderColumns(p); err != nil {
			return err
		}
		p.solveRows(0)
		stuck := p.routeAll()
		if stuck == nil {
			return nil
		}
		p.severed[stuck] = true
	}
}

// spread gives the page air between its cells, and the columns the width that
// is left. It tells whether the page still fits its sheet.
func (d *drawing) spread(p *page, air int) bool {
	p.solveRows(air)
	if p.height > d.paper.rowsM() && air > 0 {
		return false
	}
	if p.routeAll() != nil { // with other rows another wire may be stuck
		if air > 0 {
			return false
		}
		p.solveRows(0)
		p.routeAll()
	}
	columns := d.paper.columnsM()
	if p.width() > columns && air > 0 {
		return false
	}
	p.side = columns-p.width() >= panelM
	if p.side {
		columns -= panelM
	}
	p.placeColumns(columns)
	return true
}

// rankCells gives each part its column: one to the right of whatever feeds it.
// An inlet that closes a ring is severed.
func (d *drawing) rankCells(p *page) {
	done := map[*cell]bool{}
	parents := func(c *cell) (waiting []*inlet) {
		for _, in := range c.inlets {
			if from := d.outs[in.source]; from != nil && from.page == p && !done[from] && !p.severed[in] {
				waiting = append(waiting, in)
			}
		}
		return waiting
	}
	for n := 0; n < len(p.cells); {
		progress := false
		for _, c := range p.cells {
			if !done[c] && len(parents(c)) == 0 {
				c.col = d.columnOf(p, c)
				done[c] = true
				n++
				progress = true
			}
		}
		if progress {
			continue
		}
		for _, c := range p.cells {
			if !done[c] {
				for _, in := range parents(c) {
					p.severed[in] = true
				}
				break
			}
		}
	}
	d.pullRight(p)
}

// columnOf is one more than the column of anything that feeds a cell here.
func (d *drawing) columnOf(p *page, c *cell) int {
	col := 0
	for _, in := range c.inlets {
		from := d.outs[in.source]
		if from != nil && from.page == p && !p.severed[in] {
			col = max(col, from.col+1)
		} else {
			col = max(col, 1) // a flag stands before it
		}
	}
	return col
}

// pullRight moves loads to the last column.
func (d *drawing) pullRight(p *page) {
	last := 0
	for _, c := range p.cells {
		last = max(last, c.col)
	}
	for _, c := range p.cells {
		if isEnd(c) {
			c.col = last
		}
	}
}

// settle fills the columns and drops empty ones.
func (d *drawing) settle(p *page) {
	used := map[int]bool{}
	for _, c := range p.cells {
		used[c.col] = true
	}
	var cols []int
	for col := range used {
		cols = append(cols, col)
	}
	sort.Ints(cols)
	rank := map[int]int{}
	for i, col := range cols {
		rank[col] = i
	}
	for _, c := range p.cells {
		c.col = rank[c.col]
	}
}

// orderColumns asks the placement for the order in each column.
func orderColumns(p *page) error {
	index := map[*cell]int{}
	var nodes []placement.Node
	for i, c := range p.cells {
		index[c] = i
		height := 0.0
		for _, r := range c.rows {
			height += r.top + r.bottom
		}
		nodes = append(nodes, placement.Node{Column: c.col, Height: height, In: len(c.inlets), Out: len(c.outlets)})
	}
	var edges []placement.Edge
	for _, n := range p.nets {
		for _, h := range n.hops {
			for _, to := range h.to {
				edges = append(edges, placement.Edge{
					From: index[h.from.cell], Out: h.from.port, To: index[to.cell], In: to.port, Weight: 1 + len(n.inlets),
				})
			}
		}
	}
	order, err := placement.Order(nodes, edges)
	if err != nil {
		return err
	}
	p.columns = make([][]*cell, len(order))
	for col, list := range order {
		for _, i := range list {
			p.columns[col] = append(p.columns[col], p.cells[i])
		}
	}
	p.keepCellar()
	return nil
}
