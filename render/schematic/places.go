package schematic

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
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

// placeBoxes draws dash-dot outlines of places when the design asks for them. A
// place whose parts stand apart gets several; an outline that would run through
// anything but wires is left out.
func (a *painter) placeBoxes() {
	if !a.outlined {
		return
	}
	for _, frame := range a.page.frames() {
		a.placeBox(frame)
	}
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

// placeBox draws one outline with its name.
func (a *painter) placeBox(r region) {
	p := a.page
	left := float64(p.columnX[r.first]) - placeSide
	right := float64(p.columnX[r.last]+p.widths[r.last]) + placeSide
	for _, c := range p.columns[r.last] {
		if c.kind == blankCell {
			right = max(right, float64(p.columnX[r.last]+c.body)+placeSide)
		}
	}
	corner, far := a.at(left, r.top), a.at(right, r.bottom)
	pen := scene.Pen(symbol.ThinMM).In(grey).Dashed(4, 0.9, 0.5, 0.9)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("place-" + r.place.Name), Class: "place", Title: r.place.Name})
	a.sheet.Rect(scene.Rect{X: corner.X, Y: corner.Y, W: far.X - corner.X, H: far.Y - corner.Y}, &pen, nil)
	words := []string{r.place.Name}
	if r.place.Wet {
		words = append(words, "wet")
	}
	if r.place.AmbientC.Given() {
		words = append(words, number(r.place.AmbientC.Value)+" °C")
	}
	start := left
	if trunk := a.trunkAbove(r); trunk > 0 {
		start = trunk
	}
	room := a.bandRoom(r, start, right)*symbol.M - 2
	text := scene.Ellipsis(wording.Present(words, " · "), smallMM, room, scene.Italic)
	a.text(a.at(start, 0).X+1.2, corner.Y+0.8+capMM, text, scene.Italic, scene.Left, grey)
	a.sheet.End()
}

// trunkAbove is the column of the grid in which the source's trunk comes down
// through the upper edge of a region; 0 when it does not.
func (a *painter) trunkAbove(r region) float64 {
	low := a.page.cellar[0]
	if low == nil || low.cell.col < r.first || low.cell.col > r.last {
		return 0
	}
	if post := low.cell.rows[0]; float64(post.y) < r.top+placeBand && float64(low.y) > r.top {
		return float64(low.cell.x + sourceTrunk)
	}
	return 0
}

// overhang is how far captions over an outline may reach beyond its cell: not at
// all when places are outlined, little when labels of two lines stand beside.
func (d *drawing) overhang(modules int) int {
	switch {
	case d.outlined:
		return 0
	case d.stacked || d.changes != nil:
		return min(modules, 1)
	}
	return modules
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

// bandRoom is how far the name of an outline may reach before a wire that runs
// down through it, in modules.
func (a *painter) bandRoom(r region, left, right float64) float64 {
	end := right
	for _, l := range a.page.lines {
		for k := 1; k < len(l.pts); k++ {
			u, v := l.pts[k-1], l.pts[k]
			x := float64(u.x)
			crosses := float64(min(u.y, v.y)) < r.top+placeBand && float64(max(u.y, v.y)) > r.top
			if u.x == v.x && x > left && x < end && crosses {
				end = x
			}
		}
	}
	return end - left
}
