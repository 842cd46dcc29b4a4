package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"math"
)

// placeGap is the extra room between cells of different places when places are
// outlined, and placeBand the room of an outline's name, in modules.
const (
	placeGap  = 3
	placeBand = 1.5
	placeSide = 0.35 // from a column's edge to the outline
)

// region is a block of columns and rows that belongs to one place.
type region struct {
	place       *design.Place
	first, last int     // columns
	top, bottom float64 // modules
}

// placeOf is the place of a cell; flags and passing wires have none.
func placeOf(c *cell) *design.Place {
	if c.kind != partCell && c.kind != blankCell {
		return nil
	}
	return c.part.Place
}

// extent is the rows a cell takes.
func extent(c *cell) (top, bottom float64) {
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, r := range c.rows {
		top = min(top, float64(r.y)-r.top)
		bottom = max(bottom, float64(r.y)+r.bottom)
	}
	return top, bottom
}

// piecesOf are the stretches of rows that a cell stands in: one, but the source's
// post and cellar count apart.
func piecesOf(c *cell) (list [][2]float64) {
	if c.kind == partCell && c.part.Kind == circuit.Battery {
		for _, r := range c.rows {
			list = append(list, [2]float64{float64(r.y) - r.top, float64(r.y) + r.bottom})
		}
		return list
	}
	top, bottom := extent(c)
	return [][2]float64{{top, bottom}}
}

// regions joins the cells of each place as long as nothing foreign comes in.
func (p *page) regions() []region {
	var list []region
	for _, column := range p.columns {
		for _, c := range column {
			place := placeOf(c)
			if place == nil || c.kind == blankCell {
				continue
			}
			top, bottom := extent(c)
			last := c.col
			if c.part.Kind == circuit.Battery && p.cellar[0] != nil { // its cellar reaches into the next column
				low := piecesOf(c)[1]
				top, bottom, last = low[0], low[1], min(c.col+1, len(p.columns)-1)
			}
			list = append(list, region{place, c.col, last, top, bottom})
		}
	}
	for joined := true; joined; {
		joined = false
		for i := 0; i < len(list) && !joined; i++ {
			for k := i + 1; k < len(list) && !joined; k++ {
				both, ok := p.merged(list[i], list[k])
				if ok {
					list[i] = both
					list = append(list[:k], list[k+1:]...)
					joined = true
				}
			}
		}
	}
	return list
}

// merged is the region round two regions of one place, if it holds no part or
// flag of another.
func (p *page) merged(a, b region) (region, bool) {
	if a.place != b.place {
		return a, false
	}
	r := region{a.place, min(a.first, b.first), max(a.last, b.last), min(a.top, b.top), max(a.bottom, b.bottom)}
	for col := r.first; col <= r.last; col++ {
		for _, c := range p.columns[col] {
			top, bottom := extent(c)
			if c.kind != passCell && placeOf(c) != r.place && top < r.bottom && bottom > r.top {
				return r, false
			}
		}
	}
	return r, true
}

// frameOf widens a region to its outline, its name in a band at the top, and
// tells whether the outline is free.
func (p *page) frameOf(r region, done []region) (region, bool) {
	inner := r
	r.top = math.Floor(r.top-placeBand-0.5) + 0.5
	r.bottom = math.Ceil(r.bottom-0.5) + 0.5
	if r.top < -0.5 {
		return r, false
	}
	for col := r.first; col <= r.last; col++ {
		for _, c := range p.columns[col] {
			for _, piece := range piecesOf(c) {
				top, bottom := piece[0], piece[1]
				if placeOf(c) == r.place && top >= inner.top && bottom <= inner.bottom {
					continue
				}
				if c.kind == passCell && top > inner.top && bottom < inner.bottom {
					continue
				}
				if top < r.bottom && bottom > r.top {
					return r, false
				}
			}
		}
	}
	for _, q := range done {
		if q.first <= r.last && r.first <= q.last && q.top < r.bottom && r.top < q.bottom {
			return r, false
		}
	}
	return r, true
}

// frames are the outlines of a page that are free to be drawn.
func (p *page) frames() (list []region) {
	for _, r := range p.regions() {
		if frame, ok := p.frameOf(r, list); ok {
			list = append(list, frame)
		}
	}
	return list
}
