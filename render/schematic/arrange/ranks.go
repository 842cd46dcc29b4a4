package arrange

import (
	"cmp"
	"maps"
	"slices"

	"fusewright/render/placement"
	"fusewright/render/schematic/cell"
)

// rankCells gives each part its column: one to the right of whatever feeds it.
// An inlet that closes a ring is severed.
func (a *Arrangement) rankCells(p *Page) {
	done := map[*cell.Cell]bool{}
	parents := func(c *cell.Cell) (waiting []*cell.Inlet) {
		for _, in := range c.Inlets {
			if from := a.Outs[in.Source]; p.Wires(from, in) && !done[from] {
				waiting = append(waiting, in)
			}
		}
		return waiting
	}
	for n := 0; n < len(p.Cells); {
		progress := false
		for _, c := range p.Cells {
			if !done[c] && len(parents(c)) == 0 {
				c.Col = a.columnOf(p, c)
				done[c] = true
				n++
				progress = true
			}
		}
		if progress {
			continue
		}
		for _, c := range p.Cells {
			if !done[c] {
				for _, in := range parents(c) {
					p.Severed[in] = true
				}
				break
			}
		}
	}
	a.pullRight(p)
	a.alignHalves(p)
}

// alignHalves puts the halves of a reversing contactor one below the other, as far to the right as either stands.
func (a *Arrangement) alignHalves(p *Page) {
	for _, c := range p.Cells {
		half := a.otherHalf(c)
		if half == nil || !p.Holds(half) || half.Tier != c.Tier || half.Col >= c.Col {
			continue
		}
		if !slices.ContainsFunc(half.Outlets, func(o *cell.Outlet) bool {
			return slices.ContainsFunc(a.Feeds[o.Term], func(in *cell.Inlet) bool { return p.Wires(half, in) && in.Cell.Col <= c.Col })
		}) {
			half.Col = c.Col
		}
	}
}

// columnOf is one more than the column of anything that feeds a cell here.
func (a *Arrangement) columnOf(p *Page, c *cell.Cell) int {
	col := 0
	for _, in := range c.Inlets {
		if from := a.Outs[in.Source]; p.Wires(from, in) {
			col = max(col, from.Col+1)
		} else {
			col = max(col, 1) // a flag stands before it
		}
	}
	return col
}

// pullRight moves loads to the last column of their tier.
func (a *Arrangement) pullRight(p *Page) {
	last := map[int]int{}
	for _, c := range p.Cells {
		last[c.Tier] = max(last[c.Tier], c.Col)
	}
	for _, c := range p.Cells {
		if isEnd(c) {
			c.Col = last[c.Tier]
		}
	}
}

// settle fills the columns, those of one tier after those of the one above it, and drops empty ones.
func (a *Arrangement) settle(p *Page) {
	type place struct{ tier, col int }
	used := map[place]bool{}
	for _, c := range p.Cells {
		used[place{c.Tier, c.Col}] = true
	}
	rank := map[place]int{}
	for i, at := range slices.SortedFunc(maps.Keys(used), func(a, b place) int { return cmp.Or(a.tier-b.tier, a.col-b.col) }) {
		rank[at] = i
	}
	for _, c := range p.Cells {
		c.Col = rank[place{c.Tier, c.Col}]
	}
}

// orderColumns asks the placement for the order in each column.
func orderColumns(p *Page) error {
	index := map[*cell.Cell]int{}
	var nodes []placement.Node
	for i, c := range p.Cells {
		index[c] = i
		height := 0.0
		for _, r := range c.Rows {
			height += r.Top + r.Bottom
		}
		nodes = append(nodes, placement.Node{Column: c.Col, Height: height, In: len(c.Inlets), Out: len(c.Outlets)})
	}
	var edges []placement.Edge
	for _, n := range p.nets {
		for _, h := range n.Hops {
			for _, to := range h.To {
				edges = append(edges, placement.Edge{
					From: index[h.From.Cell], Out: h.From.Port, To: index[to.Cell], In: to.Port, Weight: 1 + len(n.Inlets),
				})
			}
		}
	}
	order, err := placement.Order(nodes, edges)
	if err != nil {
		return err
	}
	p.Columns = make([][]*cell.Cell, len(order))
	for col, list := range order {
		for _, i := range list {
			p.Columns[col] = append(p.Columns[col], p.Cells[i])
		}
	}
	p.keepCellar()
	return nil
}
