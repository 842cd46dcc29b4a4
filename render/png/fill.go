package png

import (
	"image"
	"image/color"
	"math"

	"fusewright/render/scene"
)

// tileSize is the side of the squares, in pixels, that a line is filled in. The
// rasteriser's work grows with the area it is given, and a long line, or the
// frame of a sheet, touches little of its own bounding box.
const tileSize = 128

// fillWhole fills one area bounded by several closed lines, by the winding
// rule: a hole is a line that goes the other way round.
func (p *painter) fillWhole(pieces [][]vec, colour scene.RGB) {
	area := p.visible(boundsOf(pieces...))
	p.fill(area, pieces, rgba(colour))
}

// fillPieces fills areas that all go the same way round, so that where they
// overlap they add up to full cover. Each tile gets the pieces that reach it.
func (p *painter) fillPieces(pieces [][]vec, colour scene.RGB) {
	area := p.visible(boundsOf(pieces...))
	if area.Dx() <= 2*tileSize && area.Dy() <= 2*tileSize {
		p.fill(area, pieces, rgba(colour))
		return
	}
	columns := (area.Dx() + tileSize - 1) / tileSize
	rows := (area.Dy() + tileSize - 1) / tileSize
	tiles := make([][][]vec, columns*rows)
	for _, piece := range pieces {
		reach := p.visible(boundsOf(piece)).Intersect(area)
		if reach.Empty() {
			continue
		}
		for row := (reach.Min.Y - area.Min.Y) / tileSize; row <= (reach.Max.Y-1-area.Min.Y)/tileSize; row++ {
			for column := (reach.Min.X - area.Min.X) / tileSize; column <= (reach.Max.X-1-area.Min.X)/tileSize; column++ {
				tiles[row*columns+column] = append(tiles[row*columns+column], piece)
			}
		}
	}
	for i, inside := range tiles {
		corner := area.Min.Add(image.Pt(i%columns*tileSize, i/columns*tileSize))
		tile := image.Rectangle{Min: corner, Max: corner.Add(image.Pt(tileSize, tileSize))}.Intersect(area)
		p.fill(tile, inside, rgba(colour))
	}
}

// fill fills closed lines inside a rectangle of the picture.
func (p *painter) fill(area image.Rectangle, pieces [][]vec, colour color.RGBA) {
	if area.Empty() || len(pieces) == 0 {
		return
	}
	p.raster.Reset(area.Dx(), area.Dy())
	corner := vec{float64(area.Min.X), float64(area.Min.Y)}
	size := vec{float64(area.Dx()), float64(area.Dy())}
	for _, piece := range pieces {
		for i := range piece {
			p.edge(piece[i].minus(corner), piece[(i+1)%len(piece)].minus(corner), size)
		}
	}
	p.raster.Draw(p.picture, area, image.NewUniform(colour), image.Point{})
}

// edge hands one edge to the rasteriser, cut to the area. What is above, below
// or to the right of it has no effect; what is to the left acts as if it ran
// along the left border. Without the cut a far-off place would cost a step a row
// and lose its fractions in the rasteriser's short numbers.
func (p *painter) edge(a, b, size vec) {
	if a.y == b.y {
		return
	}
	from, to := cutRows(a, b, size.y), cutRows(b, a, size.y)
	if from.y == to.y {
		return
	}
	// Where the edge crosses the upright borders, as parts of its length.
	first, second := crossing(from, to, 0), crossing(from, to, size.x)
	if first > second {
		first, second = second, first
	}
	one, two := from.towards(to, first), from.towards(to, second)
	p.piece(from, one, size.x)
	p.piece(one, two, size.x)
	p.piece(two, to, size.x)
}

// crossing tells at which part of its length an edge crosses an upright line; 0
// or 1 when it does not.
func crossing(from, to vec, x float64) float64 {
	if from.x == to.x {
		return 0
	}
	return math.Min(math.Max((x-from.x)/(to.x-from.x), 0), 1)
}

// piece hands on an edge that crosses no upright border.
func (p *painter) piece(a, b vec, width float64) {
	if a.y == b.y {
		return
	}
	inside := func(x float64) float32 { return float32(math.Min(math.Max(x, 0), width)) }
	p.raster.MoveTo(inside(a.x), float32(a.y))
	p.raster.LineTo(inside(b.x), float32(b.y))
}

// cutRows returns a, or where the edge from a to b enters the rows of the area.
func cutRows(a, b vec, height float64) vec {
	y := math.Min(math.Max(a.y, 0), height)
	if y == a.y {
		return a
	}
	if (b.y-y)*(y-a.y) <= 0 { // b is on the same side
		return vec{b.x, y}
	}
	return vec{a.x + (b.x-a.x)*(y-a.y)/(b.y-a.y), y}
}

// visible rounds bounds outwards to pixels and cuts them to the picture.
func (p *painter) visible(low, high vec) image.Rectangle {
	limit := func(v float64, most int) int { return int(math.Min(math.Max(v, 0), float64(most))) }
	size := p.picture.Rect.Max
	return image.Rect(
		limit(math.Floor(low.x), size.X), limit(math.Floor(low.y), size.Y),
		limit(math.Ceil(high.x), size.X), limit(math.Ceil(high.y), size.Y))
}

// boundsOf returns the corners round all points; with none, an empty area.
func boundsOf(pieces ...[]vec) (low, high vec) {
	low, high = vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}
	for _, piece := range pieces {
		for _, at := range piece {
			low = vec{math.Min(low.x, at.x), math.Min(low.y, at.y)}
			high = vec{math.Max(high.x, at.x), math.Max(high.y, at.y)}
		}
	}
	if low.x > high.x {
		return vec{}, vec{}
	}
	return low, high
}
