package arrange

import (
	"fusewright/render/placement"
	"fusewright/render/schematic/cell"
)

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
