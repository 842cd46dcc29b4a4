package arrange

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
)

// addCellar keeps the room of the cellar free in the column next to the source.
func (a *Arrangement) addCellar(p *Page) {
	for _, c := range p.Cells {
		if c.Kind == cell.Part && c.Part.Kind == circuit.Battery {
			low := c.Rows[1]
			blank := &cell.Cell{Kind: cell.Blank, Part: c.Part, Sheet: p.Index + 1, Tier: c.Tier, Col: c.Col + 1, Body: c.Cellar - cell.SourcePost}
			blank.Rows = []*cell.Row{{Cell: blank, Top: low.Top, Bottom: low.Bottom}}
			p.Cells = append(p.Cells, blank)
			p.Cellar = [2]*cell.Row{low, blank.Rows[0]}
			return
		}
	}
}

// keepCellar orders the columns of the source and next to it: what the battery
// feeds stands above the cellar, everything else below it.
func (p *Page) keepCellar() {
	if p.Cellar[0] == nil {
		return
	}
	source := p.Cellar[0].Cell
	fed := map[*cell.Cell]bool{}
	for _, n := range p.nets {
		if n.From.Cell == source {
			for _, to := range n.Hops[0].To {
				fed[to.Cell] = true
			}
		}
	}
	rank := func(c *cell.Cell) int {
		switch {
		case c == source || fed[c]:
			return 0
		case c.Kind == cell.Blank:
			return 1
		}
		return 2
	}
	for _, col := range []int{source.Col, source.Col + 1} {
		var sorted []*cell.Cell
		for r := range 3 {
			for _, c := range p.Columns[col] {
				if rank(c) == r {
					sorted = append(sorted, c)
				}
			}
		}
		p.Columns[col] = sorted
	}
}
