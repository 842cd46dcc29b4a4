// Package route leads wires from column to column: which cells a net joins, on
// which track it changes rows, and the way of every line on the grid.
package route

import (
	"cmp"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
	"slices"
)

// Net is everything on a page that a terminal feeds by wires: from its outlet
// through the columns to the inlets.
type Net struct {
	Term   *circuit.Terminal
	From   *cell.Outlet
	Inlets []*cell.Inlet
	Hops   []*hop
}

// End is a connection point of a cell: row, offset and number among the points
// of its side.
type End struct {
	Cell *cell.Cell
	Row  *cell.Row
	Off  int
	Port int
	In   *cell.Inlet // nil for a passing wire
}

func (e End) y() int { return e.Row.Y + e.Off }

// hop is the part of a net in one channel, between two columns.
type hop struct {
	net   *Net
	Col   int // of the left column
	From  End
	To    []End
	track int // from the left of the channel, from 1; 0 = straight
}

// Nets finds the nets among the cells of a page, and a passing cell in every
// column that one has to cross. byFlag tells of an inlet whose source is not
// wired to it here.
func Nets(cells []*cell.Cell, byFlag func(*cell.Inlet) bool) (nets []*Net, passing []*cell.Cell) {
	ports := sortPorts(cells)
	for _, c := range cells {
		for _, o := range c.Outlets {
			n := &Net{Term: o.Term, From: o}
			for _, q := range cells {
				if c.Tier == q.Tier && (q.Kind == cell.Part && c.Kind == cell.In || c.Kind == cell.Part) {
					n.Inlets = append(n.Inlets, inletsFrom(c, q, o.Term, byFlag)...)
				}
			}
			if len(n.Inlets) > 0 {
				nets = append(nets, n)
				passing = append(passing, n.build(ports)...)
			}
		}
	}
	return nets, passing
}

// inletsFrom lists the inlets of a cell that a source cell feeds directly.
func inletsFrom(from, to *cell.Cell, t *circuit.Terminal, byFlag func(*cell.Inlet) bool) (list []*cell.Inlet) {
	for _, in := range to.Inlets {
		if in.Source != t {
			continue
		}
		switch {
		case to.Kind == cell.Out:
			if from.Kind == cell.Part {
				list = append(list, in)
			}
		case byFlag(in) == (from.Kind == cell.In):
			list = append(list, in)
		}
	}
	return list
}

// sortPorts numbers the connection points of each side from top to bottom.
func sortPorts(cells []*cell.Cell) map[any]int {
	ports := map[any]int{}
	for _, c := range cells {
		for i, in := range slices.SortedStableFunc(slices.Values(c.Inlets), func(a, b *cell.Inlet) int {
			return before(a.Row, a.Off, b.Row, b.Off)
		}) {
			ports[in] = i
		}
		for i, o := range slices.SortedStableFunc(slices.Values(c.Outlets), func(a, b *cell.Outlet) int {
			return before(a.Row, a.Off, b.Row, b.Off)
		}) {
			ports[o] = i
		}
	}
	return ports
}

func before(a *cell.Row, offA int, b *cell.Row, offB int) int {
	return cmp.Or(cmp.Compare(a.Index, b.Index), cmp.Compare(offA, offB))
}

// build makes the hops of a net, with passing cells for inlets further right.
func (n *Net) build(ports map[any]int) (passing []*cell.Cell) {
	last := 0
	for _, in := range n.Inlets {
		last = max(last, in.Cell.Col)
	}
	at := End{Cell: n.From.Cell, Row: n.From.Row, Off: n.From.Off, Port: ports[n.From]}
	for col := n.From.Cell.Col; col < last; col++ {
		h := &hop{net: n, Col: col, From: at}
		for _, in := range n.Inlets {
			if in.Cell.Col == col+1 {
				h.To = append(h.To, End{Cell: in.Cell, Row: in.Row, Off: in.Off, Port: ports[in], In: in})
			}
		}
		if col+1 < last {
			pass := &cell.Cell{Kind: cell.Pass, Term: n.Term, Sheet: n.From.Cell.Sheet, Tier: n.From.Cell.Tier, Col: col + 1}
			pass.Rows = []*cell.Row{{Cell: pass, Top: 0.6, Bottom: 0.6}}
			passing = append(passing, pass)
			at = End{Cell: pass, Row: pass.Rows[0]}
			h.To = append(h.To, at)
		}
		n.Hops = append(n.Hops, h)
	}
	return passing
}

// CoilsOnly tells that a net feeds nothing but relay coils.
func (n *Net) CoilsOnly() bool {
	return !slices.ContainsFunc(n.Inlets, func(in *cell.Inlet) bool {
		return in.Wire == nil || in.Wire.Role != circuit.CoilFeedWire || in.Cell.Coil
	})
}
