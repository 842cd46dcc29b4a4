package schematic

import (
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// placeBoxes draws dash-dot outlines of places when the design asks for them. A
// place whose parts stand apart gets several; an outline that would run through
// anything but wires is left out.
func (a *painter) placeBoxes() {
	if !a.outlined {
		return
	}
	for _, frame := range a.on.frames() {
		a.placeBox(frame)
	}
}

// placeBox draws one outline with its name.
func (a *painter) placeBox(r region) {
	p := a.on
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
	low := a.on.cellar[0]
	if low == nil || low.cell.col < r.first || low.cell.col > r.last {
		return 0
	}
	if post := low.cell.rows[0]; float64(post.y) < r.top+placeBand && float64(low.y) > r.top {
		return float64(low.cell.x + sourceTrunk)
	}
	return 0
}

// bandRoom is how far the name of an outline may reach before a wire that runs
// down through it, in modules.
func (a *painter) bandRoom(r region, left, right float64) float64 {
	end := right
	for _, l := range a.on.lines {
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
