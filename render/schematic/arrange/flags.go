package arrange

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// addFlags puts a flag before every wire whose source stands elsewhere, one for
// each terminal, and a flag behind every terminal that goes on elsewhere.
func (a *Arrangement) addFlags(p *Page) {
	parts := p.Cells
	type place struct {
		term *circuit.Terminal
		tier int
	}
	incoming := map[place]*cell.Cell{}
	for _, c := range parts {
		for _, in := range c.Inlets {
			if !a.ComesByFlag(p, in) {
				continue
			}
			at := place{in.Source, c.Tier}
			flag := incoming[at]
			if flag == nil {
				flag = newFlag(cell.In, in.Source, c)
				flag.Col = c.Col - 1
				flag.Empty = true
				flag.Outlets = []*cell.Outlet{{Cell: flag, Term: in.Source, Row: flag.Rows[0], Dx: FlagBody}}
				incoming[at] = flag
				p.Cells = append(p.Cells, flag)
			}
			flag.Col = min(flag.Col, c.Col-1)
			flag.Empty = flag.Empty && c.Empty
		}
	}
	for _, c := range parts {
		for _, o := range c.Outlets {
			if a.goesByFlag(p, o) {
				flag := newFlag(cell.Out, o.Term, c)
				flag.Col = c.Col + 1
				flag.Empty = !slices.ContainsFunc(a.Feeds[o.Term], func(in *cell.Inlet) bool {
					return !in.Cell.Empty && !p.Wires(c, in)
				})
				flag.Inlets = []*cell.Inlet{{Cell: flag, Source: o.Term, Term: o.Term, Row: flag.Rows[0]}}
				p.Cells = append(p.Cells, flag)
			}
		}
	}
}

// newFlag is a flag beside a cell.
func newFlag(kind cell.Kind, t *circuit.Terminal, beside *cell.Cell) *cell.Cell {
	c := &cell.Cell{Kind: kind, Term: t, Part: t.Part, Body: FlagBody, Sheet: beside.Sheet, Tier: beside.Tier}
	c.Rows = []*cell.Row{{Cell: c, Top: 0.8, Bottom: 1.9}}
	if kind == cell.In { // the name of the part
		const wide = (FlagBody-2)*symbol.M - 1
		c.Caption.Lines = lettering.Wrap(parts.NameOf(t.Part), wide, wide)
		c.Rows[0].Bottom += float64(len(c.Caption.Lines)-1) * lettering.LineMM / symbol.M
	}
	return c
}

// ComesByFlag tells whether an inlet's source is not wired to it on this page.
func (a *Arrangement) ComesByFlag(p *Page, in *cell.Inlet) bool {
	return !p.Wires(a.Outs[in.Source], in)
}

// goesByFlag tells whether an outlet feeds something that is not wired to it on
// this page.
func (a *Arrangement) goesByFlag(p *Page, o *cell.Outlet) bool {
	return slices.ContainsFunc(a.Feeds[o.Term], func(in *cell.Inlet) bool { return !p.Wires(o.Cell, in) })
}
