package chart

import (
	"math"

	"fusewright/render/scene"
)

// polylines places the points of a curve on the sheet and cuts them to the
// frame. A NaN, or a value that the axis cannot show, breaks the line.
func (f *frame) polylines(c Curve) [][]scene.Point {
	var lines [][]scene.Point
	var line []scene.Point
	flush := func() {
		lines = append(lines, clipLine(thin(line), f.rect)...)
		line = nil
	}
	for i := range c.X {
		at, ok := f.point(c.X[i], c.Y[i])
		if !ok {
			flush()
			continue
		}
		line = append(line, at)
	}
	flush()
	return lines
}

// point places one pair of values.
func (f *frame) point(x, y float64) (at scene.Point, ok bool) {
	px, okX := f.x.place(x)
	py, okY := f.y.place(y)
	return scene.Point{X: px, Y: py}, okX && okY
}

// thin drops points that lie closer together than can be seen.
func thin(line []scene.Point) []scene.Point {
	const seen = 0.05
	var kept []scene.Point
	for i, at := range line {
		last := len(kept) - 1
		if last < 0 || i == len(line)-1 || math.Hypot(at.X-kept[last].X, at.Y-kept[last].Y) >= seen {
			kept = append(kept, at)
		}
	}
	return kept
}

// clipLine cuts a line to a rectangle; it may fall into several pieces.
func clipLine(line []scene.Point, r scene.Rect) [][]scene.Point {
	var pieces [][]scene.Point
	var piece []scene.Point
	for i := 1; i < len(line); i++ {
		a, b, ok := clipSegment(line[i-1], line[i], r)
		if !ok {
			continue
		}
		if len(piece) == 0 || piece[len(piece)-1] != a {
			if len(piece) > 1 {
				pieces = append(pieces, piece)
			}
			piece = []scene.Point{a}
		}
		piece = append(piece, b)
	}
	if len(piece) > 1 {
		pieces = append(pieces, piece)
	}
	return pieces
}

// clipSegment cuts a straight piece to a rectangle, after the parametric method
// of textbooks: each side narrows the part of the piece that is inside.
func clipSegment(a, b scene.Point, r scene.Rect) (from, to scene.Point, ok bool) {
	dx, dy := b.X-a.X, b.Y-a.Y
	first, last := 0.0, 1.0
	for _, side := range [...]struct{ along, room float64 }{
		{-dx, a.X - r.X}, {dx, r.Right() - a.X}, {-dy, a.Y - r.Y}, {dy, r.Bottom() - a.Y},
	} {
		switch {
		case side.along == 0 && side.room < 0:
			return a, b, false
		case side.along < 0:
			first = max(first, side.room/side.along)
		case side.along > 0:
			last = min(last, side.room/side.along)
		}
	}
	if first > last {
		return a, b, false
	}
	on := func(part float64) scene.Point {
		switch part {
		case 0:
			return a
		case 1:
			return b
		}
		return scene.Point{X: a.X + part*dx, Y: a.Y + part*dy}
	}
	return on(first), on(last), true
}

// clipArea cuts a closed area to a rectangle, one side after the other.
func clipArea(area []scene.Point, r scene.Rect) []scene.Point {
	sides := [...]func(p scene.Point) float64{ // above zero is inside
		func(p scene.Point) float64 { return p.X - r.X },
		func(p scene.Point) float64 { return r.Right() - p.X },
		func(p scene.Point) float64 { return p.Y - r.Y },
		func(p scene.Point) float64 { return r.Bottom() - p.Y },
	}
	for _, inside := range sides {
		var kept []scene.Point
		for i, b := range area {
			a := area[(i+len(area)-1)%len(area)]
			roomA, roomB := inside(a), inside(b)
			if (roomA < 0) != (roomB < 0) {
				part := roomA / (roomA - roomB)
				kept = append(kept, scene.Point{X: a.X + part*(b.X-a.X), Y: a.Y + part*(b.Y-a.Y)})
			}
			if roomB >= 0 {
				kept = append(kept, b)
			}
		}
		area = kept
	}
	return area
}
