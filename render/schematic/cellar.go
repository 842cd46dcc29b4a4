package schematic

import "fusewright/harness/network/circuit"

// addCellar keeps the room of the cellar free in the column next to the source.
func (a *arrangement) addCellar(p *page) {
	for _, c := range p.cells {
		if c.kind == partCell && c.part.Kind == circuit.Battery {
			low := c.rows[1]
			blank := &cell{kind: blankCell, part: c.part, sheet: p.index + 1, col: c.col + 1, body: sourceCellar - sourcePost}
			blank.rows = []*row{{cell: blank, top: low.top, bottom: low.bottom}}
			p.cells = append(p.cells, blank)
			p.cellar = [2]*row{low, blank.rows[0]}
			return
		}
	}
}

// keepCellar orders the columns of the source and next to it: what the battery
// feeds stands above the cellar, everything else below it.
func (p *page) keepCellar() {
	if p.cellar[0] == nil {
		return
	}
	source := p.cellar[0].cell
	fed := map[*cell]bool{}
	for _, n := range p.nets {
		if n.from.cell == source {
			for _, to := range n.hops[0].to {
				fed[to.cell] = true
			}
		}
	}
	rank := func(c *cell) int {
		switch {
		case c == source || fed[c]:
			return 0
		case c.kind == blankCell:
			return 1
		}
		return 2
	}
	for _, col := range []int{source.col, source.col + 1} {
		var sorted []*cell
		for r := range 3 {
			for _, c := range p.columns[col] {
				if rank(c) == r {
					sorted = append(sorted, c)
				}
			}
		}
		p.columns[col] = sorted
	}
}
