package arrange

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/symbol"
)

// LabelRooms gives every wire whose label stands in two lines one line instead,
// where the wire has room for it before its end.
func (a *Arrangement) LabelRooms(p *Page) {
	p.OneLine = map[*cell.Inlet]bool{}
	if !a.Stacked || a.Study != nil || a.Outlined { // outlines stand between the columns
		return
	}
	for _, l := range p.Lines {
		if l.In.Wire == nil || l.In.Cell.Flat || l.In.Cell.Kind != cell.Part || cell.SharesTerminal(l.In) {
			continue
		}
		right, y := l.In.Cell.X, l.In.Y()
		left := right - a.InletM(l.In.Wire, l.In.Cell.Part, false)
		if l.LevelFrom() <= left && a.free(p, l, left, right, y) {
			p.OneLine[l.In] = true
		}
	}
}

// free tells whether nothing stands above a row between two columns of the grid,
// in the room of a label in one line, but the line itself; where others join it, a
// label would not tell whose it is.
func (a *Arrangement) free(p *Page, own route.Line, left, right, y int) bool {
	top := float64(y) - (lettering.GapMM+lettering.CapMM+0.6)/symbol.M
	for _, l := range p.Lines {
		for k := 1; k < len(l.Pts); k++ {
			a, b := l.Pts[k-1], l.Pts[k]
			level := a.Y == b.Y
			if level && a.Y == y && l.Net == own.Net {
				continue
			}
			if max(a.X, b.X) < left || min(a.X, b.X) > right {
				continue
			}
			joins := l.Net == own.Net && min(a.Y, b.Y) == y
			if float64(max(a.Y, b.Y)) > top && (min(a.Y, b.Y) < y || joins) || level && a.Y == y {
				return false
			}
		}
	}
	for _, c := range p.Cells {
		if c == own.In.Cell || c.Kind == cell.Pass {
			continue
		}
		from, to := c.X-max(c.Lead, p.Leads[c.Col]), c.X+c.Body
		switch {
		case c.Kind == cell.Part && c.Part.Kind == circuit.Battery:
			from, to = c.X, c.X+cell.SourcePost
		case c.Kind == cell.Blank:
			from, to = p.ColumnX[c.Col], p.ColumnX[c.Col]+c.Body
		case c.Kind == cell.Part && (c.Part.Kind == circuit.Relay || parts.Fans(c.Part)):
			to += 2 // captions over an outline may stand out
		}
		if to <= left || from >= right {
			continue
		}
		for _, r := range c.Rows {
			if float64(r.Y)-r.Top < float64(y) && float64(r.Y)+r.Bottom > top {
				return false
			}
		}
	}
	return true
}
