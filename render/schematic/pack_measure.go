package schematic

import (
	"math"

	"fusewright/harness/network/circuit"
)

// least is the rows a cell takes with nothing but flags behind it.
func (k *packer) least(c *cell) int {
	sum := 0
	for _, r := range c.rows {
		sum += k.rowLeast(c, r)
	}
	return sum
}

func (k *packer) rowLeast(c *cell, r *row) int {
	flags := 0
	for _, o := range c.outlets {
		if o.row == r && len(k.a.feeds[o.term]) > 0 {
			flags += flagRow
		}
	}
	return max(rowHeight(r), flags)
}

// rowHeight is the rows a row takes. The source's cellar counts for nothing: it
// stands beside what the battery feeds.
func rowHeight(r *row) int {
	if r.cell.kind == partCell && r.cell.part.Kind == circuit.Battery && r.index > 0 {
		return 0
	}
	return int(math.Ceil(r.top + r.bottom))
}

// fullOf is the rows of a cell with everything it feeds.
func (a *arrangement) fullOf(c *cell) int {
	if c.full != 0 {
		return c.full
	}
	c.full = 1 // stops at a circuit that feeds itself
	sum := 0
	for _, r := range c.rows {
		children := 0
		for _, o := range c.outlets {
			if o.row != r {
				continue
			}
			for _, in := range a.feeds[o.term] {
				if primary(in.cell) == in {
					children += a.fullOf(in.cell)
				}
			}
		}
		sum += max(rowHeight(r), children)
	}
	c.full = max(sum, 1)
	return c.full
}

// isEnd tells of cells that stand in the last column.
func isEnd(c *cell) bool {
	return c.kind == partCell && (c.coil || c.part.Kind == circuit.Load && len(c.outlets) == 0)
}

// fits tells whether a cell's column leaves the sheet wide enough.
func (k *packer) fits(c *cell, rank int) bool {
	width := c.lead + c.body
	if isEnd(c) {
		return k.total(rank, 0, width) <= k.width
	}
	return k.total(rank, width, 0) <= k.width
}

// total is the width of the page with one more cell in a column or among the
// loads.
func (k *packer) total(rank, width, load int) int {
	sum, n := max(k.loads, load, flagBody), max(len(k.columns), rank+1)
	for i := range n {
		w := 0
		if i < len(k.columns) {
			w = k.columns[i]
		}
		if i == rank {
			w = max(w, width)
		}
		sum += w + channelM
	}
	return sum
}

// note widens the column of a cell.
func (k *packer) note(c *cell, rank int) {
	if isEnd(c) {
		k.loads = max(k.loads, c.lead+c.body)
		return
	}
	k.widen(rank, c.lead+c.body)
}

func (k *packer) widen(rank, width int) {
	for len(k.columns) <= rank {
		k.columns = append(k.columns, 0)
	}
	k.columns[rank] = max(k.columns[rank], width)
}
