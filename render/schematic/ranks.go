package schematic

import "sort"

// rankCells gives each part its column: one to the right of whatever feeds it.
// An inlet that closes a ring is severed.
func (a *arrangement) rankCells(p *page) {
	done := map[*cell]bool{}
	parents := func(c *cell) (waiting []*inlet) {
		for _, in := range c.inlets {
			if from := a.outs[in.source]; from != nil && p.holds(from) && !done[from] && !p.severed[in] {
				waiting = append(waiting, in)
			}
		}
		return waiting
	}
	for n := 0; n < len(p.cells); {
		progress := false
		for _, c := range p.cells {
			if !done[c] && len(parents(c)) == 0 {
				c.col = a.columnOf(p, c)
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
	a.pullRight(p)
}

// columnOf is one more than the column of anything that feeds a cell here.
func (a *arrangement) columnOf(p *page, c *cell) int {
	col := 0
	for _, in := range c.inlets {
		from := a.outs[in.source]
		if from != nil && p.holds(from) && !p.severed[in] {
			col = max(col, from.col+1)
		} else {
			col = max(col, 1) // a flag stands before it
		}
	}
	return col
}

// pullRight moves loads to the last column.
func (a *arrangement) pullRight(p *page) {
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
func (a *arrangement) settle(p *page) {
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
