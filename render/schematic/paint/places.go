package paint

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/symbol"
)

// placeBox draws the dash-dot outline of a place, which the design has asked for,
// with its name. A place whose parts stand apart gets several; an outline that
// would run through anything but wires is left out.
func (a *painter) placeBox(r arrange.Region) {
	p := a.on
	left := float64(p.ColumnX[r.First]) - arrange.PlaceSide
	right := float64(p.ColumnX[r.Last]+p.Widths[r.Last]) + arrange.PlaceSide
	if r.Short {
		right -= a.OutlineM() + arrange.PlaceSide
	}
	for _, c := range p.Columns[r.Last] {
		if c.Kind == cell.Blank {
			right = max(right, float64(p.ColumnX[r.Last]+c.Body)+arrange.PlaceSide)
		}
	}
	corner, far := a.at(left, r.Top), a.at(right, r.Bottom)
	pen := scene.Pen(symbol.ThinMM).In(lettering.Grey).Dashed(4, 0.9, 0.5, 0.9)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("place-" + r.Place.Name), Class: "place", Title: r.Place.Name})
	a.sheet.Rect(scene.Rect{X: corner.X, Y: corner.Y, W: far.X - corner.X, H: far.Y - corner.Y}, &pen, nil)
	words := []string{r.Place.Name}
	if r.Place.Wet {
		words = append(words, "wet")
	}
	if r.Place.AmbientC.Given() {
		words = append(words, quantity.Plain(r.Place.AmbientC.Value, quantity.Temperature))
	}
	start := left
	if trunk := a.trunkAbove(r); trunk > 0 {
		start = trunk
	}
	room := a.bandRoom(r, start, right)*symbol.M - 2
	for len(words) > 1 && lettering.TextW(wording.Present(words, " · "), scene.Italic) > room {
		words = words[:len(words)-1]
	}
	text := scene.Ellipsis(wording.Present(words, " · "), lettering.SmallMM, room, scene.Italic)
	a.text(a.at(start, 0).X+1.2, corner.Y+0.8+lettering.CapMM, text, scene.Italic, scene.Left, lettering.Grey)
	a.sheet.End()
}

// trunkAbove is the column of the grid in which the source's trunk comes down
// through the upper edge of a region; 0 when it does not.
func (a *painter) trunkAbove(r arrange.Region) float64 {
	low := a.on.Cellar[0]
	if low == nil || low.Cell.Col < r.First || low.Cell.Col > r.Last {
		return 0
	}
	if post := low.Cell.Rows[0]; float64(post.Y) < r.Top+arrange.PlaceBand && float64(low.Y) > r.Top {
		return float64(low.Cell.X + cell.SourceTrunk)
	}
	return 0
}

// bandRoom is how far the name of an outline may reach before a wire that runs
// down through it, in modules.
func (a *painter) bandRoom(r arrange.Region, left, right float64) float64 {
	end := right
	for _, l := range a.on.Lines {
		for k := 1; k < len(l.Pts); k++ {
			u, v := l.Pts[k-1], l.Pts[k]
			x := float64(u.X)
			crosses := float64(min(u.Y, v.Y)) < r.Top+arrange.PlaceBand && float64(max(u.Y, v.Y)) > r.Top
			if u.X == v.X && x > left && x < end && crosses {
				end = x
			}
		}
	}
	return end - left
}
