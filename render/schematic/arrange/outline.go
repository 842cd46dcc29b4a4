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
	Short       bool    // ends before the grounds of its last column
}

// placeOf is the place of a cell; flags and passing wires have none.
func placeOf(c *cell.Cell) *design.Place {
	if c.Empty || c.Kind != cell.Part && c.Kind != cell.Blank {
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

// own are the rows of a cell that belong to its place: the ground of a relay's coil may
// stand at another.
func (a *Arrangement) own(c *cell.Cell) (top, bottom float64) {
	top, bottom = extent(c)
	if c.Kind == cell.Part && c.Part.Kind == circuit.Relay && c.Mate == nil {
		if coils := c.CoilReturns(); a.Abroad(coils) {
			bottom = float64(c.Rows[0].Y+c.Geometry.Floor+c.Geometry.Drop*len(coils)) + 0.45
		}
	}
	return top, bottom
}

// clash tells of a cell whose grounds of other places would stand within a region of its
// own.
func (a *Arrangement) clash(c *cell.Cell, r Region) bool {
	if c.Kind == cell.Blank { // the source's cellar, without the source
		return r.First >= c.Col
	}
	if c.Kind != cell.Part {
		return false
	}
	if _, bottom := a.own(c); c.Part.Kind == circuit.Relay && c.Mate == nil {
		_, all := extent(c)
		return all > bottom && r.Bottom > math.Ceil(bottom) || a.Abroad(c.ContactReturns())
	}
	if c.Part.Kind == circuit.Battery { // the bars stand in its cellar, which reaches into the next column
		return r.Last == c.Col || slices.ContainsFunc(c.Returns, func(w *circuit.Wire) bool { return w.From.Part.Place != c.Part.Place })
	}
	return a.Abroad(c.Returns) && (c.Col != r.Last || !hasReturnRun(c))
}

// regions joins the cells of each place as long as nothing foreign comes in.
func (a *Arrangement) regions(p *Page) []Region {
	var list []Region
	for _, column := range p.Columns {
		for _, c := range column {
			place := placeOf(c)
			if place == nil || c.Kind == cell.Blank {
				continue
			}
			top, bottom := a.own(c)
			last := c.Col
			if c.Part.Kind == circuit.Battery && p.Cellar[0] != nil { // its cellar reaches into the next column
				low := piecesOf(c)[1]
				top, bottom, last = low[0], low[1], min(c.Col+1, len(p.Columns)-1)
			}
			list = append(list, Region{Place: place, First: c.Col, Last: last, Top: top, Bottom: bottom})
		}
	}
	for i := 0; i < len(list); i++ {
		for k := i + 1; k < len(list); k++ {
			if both, ok := a.merged(p, list[i], list[k]); ok {
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
func (a *Arrangement) merged(p *Page, q, s Region) (Region, bool) {
	if q.Place != s.Place || p.Columns[q.First][0].Tier != p.Columns[s.First][0].Tier {
		return q, false
	}
	r := Region{Place: q.Place, First: min(q.First, s.First), Last: max(q.Last, s.Last), Top: min(q.Top, s.Top), Bottom: max(q.Bottom, s.Bottom)}
	for col := r.First; col <= r.Last; col++ {
		for _, c := range p.Columns[col] {
			top, bottom := extent(c)
			within := c.Kind != cell.Pass && top < r.Bottom && bottom > r.Top
			if within && (placeOf(c) != r.Place || a.clash(c, r)) {
				return r, false
			}
		}
	}
	return r, true
}

// frameOf widens a region to its outline, its name in a band at the top, and
// tells whether the outline is free.
func (a *Arrangement) frameOf(p *Page, r Region, done []Region) (Region, bool) {
	inner := r
	r.Top = math.Floor(r.Top-PlaceBand-0.5) + 0.5
	r.Bottom = math.Ceil(r.Bottom-0.5) + 0.5
	if r.Top < -0.5 {
		return r, false
	}
	for col := r.First; col <= r.Last; col++ {
		for _, c := range p.Columns[col] {
			if ownTop, ownBottom := a.own(c); placeOf(c) == r.Place && c.Kind == cell.Part && c.Part.Kind != circuit.Battery && ownTop >= inner.Top && ownBottom <= inner.Bottom {
				if a.clash(c, r) {
					return r, false
				}
				r.Short = r.Short || hasReturnRun(c) && a.Abroad(c.Returns)
				continue
			}
			for _, piece := range piecesOf(c) {
				top, bottom := piece[0], piece[1]
				if placeOf(c) == r.Place && top >= inner.Top && bottom <= inner.Bottom {
					if a.clash(c, r) {
						return r, false
					}
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
func (a *Arrangement) Frames(p *Page) (list []Region) {
	for _, r := range a.regions(p) {
		if frame, ok := a.frameOf(p, r, list); ok {
			list = append(list, frame)
		}
	}
	return list
}
