package arrange

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
)

// placeGap is the extra room between cells of different places when places are
// outlined, and placeBand the room of an outline's name, in modules.
const (
	placeGap  = 3
	PlaceBand = 1.5
	PlaceSide = 0.35 // from a column's edge to the outline
)

// Region is a block of columns and rows that belongs to one place.
type Region struct {
	Place       *design.Place
	First, Last int     // columns
	Top, Bottom float64 // modules
}

// placeOf is the place of a cell; flags and passing wires have none.
func placeOf(c *cell.Cell) *design.Place {
	if c.Kind != cell.Part && c.Kind != cell.Blank {
		return nil
	}
	return c.Part.Place
}

// extent is the rows a cell takes.
func extent(c *cell.Cell) (top, bottom float64) {
	top, bottom = math.Inf(1), math.Inf(-1)
	for _, r := range c.Rows {
		top = min(top, float64(r.Y)-r.Top)
		bottom = max(bottom, float64(r.Y)+r.Bottom)
	}
	return top, bottom
}

// piecesOf are the stretches of rows that a cell stands in: one, but the source's
// post and cellar count apart.
func piecesOf(c *cell.Cell) (list [][2]float64) {
	if c.Kind == cell.Part && c.Part.Kind == circuit.Battery {
		for _, r := range c.Rows {
			list = append(list, [2]float64{float64(r.Y) - r.Top, float64(r.Y) + r.Bottom})
		}
		return list
	}
	top, bottom := extent(c)
	return [][2]float64{{top, bottom}}
}

// regions joins the cells of each place as long as nothing foreign comes in.
func (p *Page) regions() []Region {
	var list []Region
	for _, column := range p.Columns {
		for _, c := range column {
			place := placeOf(c)
			if place == nil || c.Kind == cell.Blank {
				continue
			}
			top, bottom := extent(c)
			last := c.Col
			if c.Part.Kind == circuit.Battery && p.Cellar[0] != nil { // its cellar reaches into the next column
				low := piecesOf(c)[1]
				top, bottom, last = low[0], low[1], min(c.Col+1, len(p.Columns)-1)
			}
			list = append(list, Region{place, c.Col, last, top, bottom})
		}
	}
	for i := 0; i < len(list); i++ {
		for k := i + 1; k < len(list); k++ {
			if both, ok := p.merged(list[i], list[k]); ok {
				list[i], list = both, slices.Delete(list, k, k+1)
				i = -1 // what is larger may meet others
				break
			}
		}
	}
	return list
}

// merged is the region round two regions of one place, if it holds no part or
// flag of another.
func (p *Page) merged(a, b Region) (Region, bool) {
	if a.Place != b.Place {
		return a, false
	}
	r := Region{a.Place, min(a.First, b.First), max(a.Last, b.Last), min(a.Top, b.Top), max(a.Bottom, b.Bottom)}
	for col := r.First; col <= r.Last; col++ {
		for _, c := range p.Columns[col] {
			top, bottom := extent(c)
			if c.Kind != cell.Pass && placeOf(c) != r.Place && top < r.Bottom && bottom > r.Top {
				return r, false
			}
		}
	}
	return r, true
}

// frameOf widens a region to its outline, its name in a band at the top, and
// tells whether the outline is free.
func (p *Page) frameOf(r Region, done []Region) (Region, bool) {
	inner := r
	r.Top = math.Floor(r.Top-PlaceBand-0.5) + 0.5
	r.Bottom = math.Ceil(r.Bottom-0.5) + 0.5
	if r.Top < -0.5 {
		return r, false
	}
	for col := r.First; col <= r.Last; col++ {
		for _, c := range p.Columns[col] {
			for _, piece := range piecesOf(c) {
				top, bottom := piece[0], piece[1]
				if placeOf(c) == r.Place && top >= inner.Top && bottom <= inner.Bottom {
					continue
				}
				if c.Kind == cell.Pass && top > inner.Top && bottom < inner.Bottom {
					continue
				}
				if top < r.Bottom && bottom > r.Top {
					return r, false
				}
			}
		}
	}
	return r, !slices.ContainsFunc(done, func(q Region) bool {
		return q.First <= r.Last && r.First <= q.Last && q.Top < r.Bottom && r.Top < q.Bottom
	})
}

// Frames are the outlines of a page that are free to be drawn.
func (p *Page) Frames() (list []Region) {
	for _, r := range p.regions() {
		if frame, ok := p.frameOf(r, list); ok {
			list = append(list, frame)
		}
	}
	return list
}
