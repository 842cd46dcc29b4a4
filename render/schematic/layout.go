package schematic

import "fusewright/render/placement"

// flagBody is the width of a cell with a flag and its words, in modules.
const flagBody = 12

// layOut shares the circuit out to pages and lays each out, with wire labels in
// one line or in two, whichever needs fewer sheets and flags.
func (d *drawing) layOut() error {
	if d.study != nil { // its labels always take two lines
		return d.layOutWith(true)
	}
	pages, one := d.estimate(false)
	if pages > trialPages {
		_, two := d.estimate(true)
		return d.layOutWith(two < one)
	}
	if err := d.layOutWith(false); err != nil || len(d.pages) == 1 && d.flagCount() == 0 {
		return err
	}
	one = effort*len(d.pages) + d.flagCount()
	if err := d.layOutWith(true); err != nil {
		return err
	}
	if effort*len(d.pages)+d.flagCount() < one {
		return nil
	}
	return d.layOutWith(false)
}

// trialPages is how many pages are laid out both ways to see which is better;
// beyond that an estimate decides. A reader turns a page as readily as he
// follows effort flags.
const (
	trialPages = 6
	effort     = 4
)

// flagCount is how many terminals go on elsewhere.
func (d *drawing) flagCount() (n int) {
	for _, p := range d.pages {
		for _, c := range p.cells {
			if c.kind == outCell {
				n++
			}
		}
	}
	return n
}

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

// estimate shares the circuit out without laying it out: the number of pages,
// and pages and flags weighed together.
func (d *drawing) estimate(stacked bool) (pages, weight int) {
	d.reset(stacked)
	queue := d.start()
	for len(queue) > 0 {
		before := len(queue)
		_, queue = d.fill(queue, pages, d.paper.rowsM(), d.paper.columnsM())
		pages++
		weight += effort + max(len(queue)-before, 0)
	}
	return pages, weight
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
	d.flatten(p, columns-p.width())
	p.placeColumns(columns)
	return true
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
