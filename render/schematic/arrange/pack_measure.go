package arrange

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
)

// least is the rows a cell takes with nothing but flags behind it.
func (k *packer) least(c *cell.Cell) int {
	sum := 0
	for _, r := range c.Rows {
		sum += k.rowLeast(c, r)
	}
	return sum
}

func (k *packer) rowLeast(c *cell.Cell, r *cell.Row) int {
	flags := 0
	for _, o := range c.Outlets {
		if o.Row == r && len(k.a.Feeds[o.Term]) > 0 {
			flags += flagRow
		}
	}
	return max(rowHeight(r), flags)
}

// rowHeight is the rows a row takes. The source's cellar counts for nothing: it
// stands beside what the battery feeds.
func rowHeight(r *cell.Row) int {
	if r.Cell.Kind == cell.Part && r.Cell.Part.Kind == circuit.Battery && r.Index > 0 {
		return 0
	}
	return int(math.Ceil(r.Top + r.Bottom))
}

// fullOf is the rows of a cell with everything it feeds.
func (a *Arrangement) fullOf(c *cell.Cell) int {
	if c.Full != 0 {
		return c.Full
	}
	c.Full = 1 // stops at a circuit that feeds itself
	sum := 0
	for _, r := range c.Rows {
		children := 0
		for _, o := range c.Outlets {
			if o.Row != r {
				continue
			}
			for _, in := range a.Feeds[o.Term] {
				if primary(in.Cell) == in {
					children += a.fullOf(in.Cell)
				}
			}
		}
		sum += max(rowHeight(r), children)
	}
	c.Full = max(sum, 1)
	return c.Full
}

// otherHalf is the half of a reversing contactor that turns the motor which a half feeds.
func (a *Arrangement) otherHalf(c *cell.Cell) *cell.Cell {
	if c.Part.Kind != circuit.Relay || !c.Geometry.Rests || c.Coil {
		return nil
	}
	for _, o := range c.Outlets {
		for _, in := range a.Feeds[o.Term] {
			for _, q := range in.Cell.Inlets {
				if half := a.Outs[q.Source]; half != nil && half != c && half.Part.Kind == circuit.Relay && half.Geometry.Rests {
					return half
				}
			}
		}
	}
	return nil
}

// fullWith is fullOf with the other half of a reversing contactor, which stands on the
// same sheet.
func (a *Arrangement) fullWith(c *cell.Cell) int {
	if half := a.otherHalf(c); half != nil && half.Sheet == 0 {
		return a.fullOf(c) + a.fullOf(half)
	}
	return a.fullOf(c)
}

// isEnd tells of cells that stand in the last column.
func isEnd(c *cell.Cell) bool {
	return c.Kind == cell.Part && len(c.Outlets) == 0 && (c.Coil || c.Ends())
}

// fits tells whether a cell's column, or that of the loads, leaves the sheet wide
// enough.
func (k *packer) fits(c *cell.Cell, rank int) bool {
	own, sum := c.Room(), max(k.loads, FlagBody)
	if isEnd(c) {
		own, sum = 0, max(sum, own)
	}
	for i := range max(len(k.columns), rank+1) {
		w := 0
		if i < len(k.columns) {
			w = k.columns[i]
		}
		if i == rank {
			w = max(w, own)
		}
		sum += w + channelM
	}
	return sum <= k.width
}

// fitsWhole tells whether the sheet is wide enough for a cell with everything that it
// feeds.
func (k *packer) fitsWhole(c *cell.Cell, rank int) bool {
	wide := &packer{a: k.a, columns: slices.Clone(k.columns), loads: k.loads, width: k.width}
	return wide.noteTree(c, rank, map[*cell.Cell]bool{})
}

// fitsAlone tells whether a cell with everything that it feeds fits a sheet of its own,
// behind a flag.
func (a *Arrangement) fitsAlone(c *cell.Cell, rows, width int) bool {
	alone := &packer{a: a, columns: []int{FlagBody}, width: width}
	return a.fullWith(c) <= rows && alone.noteTree(c, 1, map[*cell.Cell]bool{})
}

// feedsBlock tells of a block of fuses, or what feeds nothing else.
func (a *Arrangement) feedsBlock(c *cell.Cell) bool {
	for range len(a.Cells.List) {
		if len(c.Ways) > 1 {
			return true
		}
		if len(c.Outlets) != 1 || len(a.Feeds[c.Outlets[0].Term]) != 1 {
			return false
		}
		c = a.Feeds[c.Outlets[0].Term][0].Cell
	}
	return false
}

// noteTree widens the columns for a cell and everything that it feeds, and tells
// whether they fit.
func (k *packer) noteTree(c *cell.Cell, rank int, seen map[*cell.Cell]bool) bool {
	if seen[c] || c.Sheet > 0 {
		return true
	}
	seen[c] = true
	if !k.fits(c, rank) {
		return false
	}
	k.note(c, rank)
	for _, o := range c.Outlets {
		for _, in := range k.a.Feeds[o.Term] {
			if primary(in.Cell) == in && !k.noteTree(in.Cell, rank+1, seen) {
				return false
			}
		}
	}
	return true
}

// note widens the column of a cell.
func (k *packer) note(c *cell.Cell, rank int) {
	if isEnd(c) {
		k.loads = max(k.loads, c.Room())
		return
	}
	k.widen(rank, c.Room())
}

func (k *packer) widen(rank, width int) {
	for len(k.columns) <= rank {
		k.columns = append(k.columns, 0)
	}
	k.columns[rank] = max(k.columns[rank], width)
}
