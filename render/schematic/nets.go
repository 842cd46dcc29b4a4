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

// netsOf finds the nets among the cells of a page, and a passing cell in every
// column that one has to cross. byFlag tells of an inlet whose source is not
// wired to it here.
func netsOf(cells []*cell, byFlag func(*inlet) bool) (nets []*net, passing []*cell) {
	ports := sortPorts(cells)
	for _, c := range cells {
		for _, o := range c.outlets {
			n := &net{term: o.term, from: o}
			for _, q := range cells {
				if q.kind == partCell && c.kind == inCell || c.kind == partCell {
					n.inlets = append(n.inlets, inletsFrom(c, q, o.term, byFlag)...)
				}
			}
			if len(n.inlets) > 0 {
				nets = append(nets, n)
				passing = append(passing, n.build(ports)...)
			}
		}
	}
	return nets, passing
}

// inletsFrom lists the inlets of a cell that a source cell feeds directly.
func inletsFrom(from, to *cell, t *circuit.Terminal, byFlag func(*inlet) bool) (list []*inlet) {
	for _, in := range to.inlets {
		if in.source != t {
			continue
		}
		switch {
		case to.kind == outCell:
			if from.kind == partCell {
				list = append(list, in)
			}
		case byFlag(in) == (from.kind == inCell):
			list = append(list, in)
		}
	}
	return list
}

// sortPorts numbers the connection points of each side from top to bottom.
func sortPorts(cells []*cell) map[any]int {
	ports := map[any]int{}
	for _, c := range cells {
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
func (n *net) build(ports map[any]int) (passing []*cell) {
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
			pass := &cell{kind: passCell, term: n.term, sheet: n.from.cell.sheet, col: col + 1}
			pass.rows = []*row{{cell: pass, top: 0.6, bottom: 0.6}}
			passing = append(passing, pass)
			at = end{cell: pass, row: pass.rows[0]}
			h.to = append(h.to, at)
		}
		n.hops = append(n.hops, h)
	}
	return passing
}

// coilsOnly tells that a net feeds nothing but relay coils.
func (n *net) coilsOnly() bool {
	for _, in := range n.inlets {
		if in.wire == nil || in.wire.Role != circuit.CoilFeedWire || in.cell.coil {
			return false
		}
	}
	return true
}
