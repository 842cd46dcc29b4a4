package schematic

import (
	"sort"

	"fusewright/harness/network/circuit"
)

// net is everything on a page that a terminal feeds by wires: from its outlet
// through the columns to the inlets.
type net struct {
	term   *circuit.Terminal
	from   *outlet
	inlets []*inlet
	hops   []*hop
}

// end is a connection point of a cell: row, offset and number among the points
// of its side.
type end struct {
	cell *cell
	row  *row
	off  int
	port int
	in   *inlet // nil for a passing wire
}

func (e end) y() int { return e.row.y + e.off }

// hop is the part of a net in one channel, between two columns.
type hop struct {
	net   *net
	col   int // of the left column
	from  end
	to    []end
	track int // from the left of the channel, from 1; 0 = straight
}

// makeNets finds the nets of a page and gives each a passing cell in every
// column it has to cross.
func (d *drawing) makeNets(p *page) {
	p.nets = nil
	ports := sortPorts(p)
	for _, c := range append([]*cell{}, p.cells...) {
		for _, o := range c.outlets {
			n := &net{term: o.term, from: o}
			for _, q := range p.cells {
				if q.kind == partCell && c.kind == inCell || c.kind == partCell {
					n.inlets = append(n.inlets, d.inletsFrom(p, c, q, o.term)...)
				}
			}
			if len(n.inlets) > 0 {
				p.nets = append(p.nets, n)
				n.build(p, ports)
			}
		}
	}
}

// inletsFrom lists the inlets of a cell that a source cell feeds directly.
func (d *drawing) inletsFrom(p *page, from, to *cell, t *circuit.Terminal) (list []*inlet) {
	for _, in := range to.inlets {
		if in.source != t {
			continue
		}
		switch {
		case to.kind == outCell:
			if from.kind == partCell {
				list = append(list, in)
			}
		case d.comesByFlag(p, in) == (from.kind == inCell):
			list = append(list, in)
		}
	}
	return list
}

// sortPorts numbers the connection points of each side from top to bottom.
func sortPorts(p *page) map[any]int {
	ports := map[any]int{}
	for _, c := range p.cells {
		ins := append([]*inlet{}, c.inlets...)
		sort.SliceStable(ins, func(i, j int) bool { return before(ins[i].row, ins[i].off, ins[j].row, ins[j].off) })
		for i, in := range ins {
			ports[in] = i
		}
		outs := append([]*outlet{}, c.outlets...)
		sort.SliceStable(outs, func(i, j int) bool { return before(outs[i].row, outs[i].off, outs[j].row, outs[j].off) })
		for i, o := range outs {
			ports[o] = i
		}
	}
	return ports
}

func before(a *row, offA int, b *row, offB int) bool {
	if a.index != b.index {
		return a.index < b.index
	}
	return offA < offB
}

// build makes the hops of a net, with passing cells for inlets further right.
func (n *net) build(p *page, ports map[any]int) {
	last := 0
	for _, in := range n.inlets {
		last = max(last, in.cell.col)
	}
	at := end{cell: n.from.cell, row: n.from.row, off: n.from.off, port: ports[n.from]}
	for col := n.from.cell.col; col < last; col++ {
		h := &hop{net: n, col: col, from: at}
		for _, in := range n.inlets {
			if in.cell.col == col+1 {
				h.to = append(h.to, end{cell: in.cell, row: in.row, off: in.off, port: ports[in], in: in})
			}
		}
		if col+1 < last {
			pass := &cell{kind: passCell, term: n.term, page: p, col: col + 1}
			pass.rows = []*row{{cell: pass, top: 0.6, bottom: 0.6}}
			p.cells = append(p.cells, pass)
			at = end{cell: pass, row: pass.rows[0]}
			h.to = append(h.to, at)
		}
		n.hops = append(n.hops, h)
	}
}
