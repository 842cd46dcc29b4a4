package schematic

import (
	"fusewright/harness/network/circuit"
)

// labelRooms gives every wire whose label stands in two lines one line instead,
// where the wire has room for it before its end.
func (a *arrangement) labelRooms(p *page) {
	p.oneLine = map[*inlet]bool{}
	if !a.stacked || a.study != nil || a.outlined { // outlines stand between the columns
		return
	}
	for _, l := range p.lines {
		if l.in.wire == nil || l.in.cell.flat || l.in.cell.kind != partCell || sharesTerminal(l.in) {
			continue
		}
		right, y := l.in.cell.x, l.in.y()
		left := right - a.labelMOf(l.in.wire, false) - a.signs.leadGap(l.in.cell.part)
		if l.levelFrom() <= left && p.free(l, left, right, y, a.labelHeight()) {
			p.oneLine[l.in] = true
		}
	}
}

// labelHeight is the room of a label in one line above its wire, in modules.
func (a *arrangement) labelHeight() float64 { return (gapMM + capMM + 0.6) / 2.5 }

// free tells whether nothing stands above a row between two columns of the grid,
// up to a height, but the line itself.
func (p *page) free(own line, left, right, y int, height float64) bool {
	top := float64(y) - height
	for _, l := range p.lines {
		for k := 1; k < len(l.pts); k++ {
			a, b := l.pts[k-1], l.pts[k]
			level := a.y == b.y
			if level && a.y == y && l.net == own.net {
				continue
			}
			if max(a.x, b.x) < left || min(a.x, b.x) > right {
				continue
			}
			if float64(max(a.y, b.y)) > top && min(a.y, b.y) < y || level && a.y == y {
				return false
			}
		}
	}
	for _, c := range p.cells {
		if c == own.in.cell || c.kind == passCell {
			continue
		}
		from, to := c.x-max(c.lead, p.leads[c.col]), c.x+c.body
		switch {
		case c.kind == partCell && c.part.Kind == circuit.Battery:
			from, to = c.x, c.x+sourcePost
		case c.kind == blankCell:
			from, to = p.columnX[c.col], p.columnX[c.col]+c.body
		case c.kind == partCell && (c.part.Kind == circuit.Relay || c.part.Kind == circuit.Block):
			to += 2 // captions over an outline may stand out
		}
		if to <= left || from >= right {
			continue
		}
		for _, r := range c.rows {
			if float64(r.y)-r.top < float64(y) && float64(r.y)+r.bottom > top {
				return false
			}
		}
	}
	return true
}
