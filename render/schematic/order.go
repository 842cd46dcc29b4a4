package schematic

import "fusewright/render/placement"

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
