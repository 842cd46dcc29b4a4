package sign

import (
	"iter"
	"math"
	"slices"

	"fusewright/render/scene"
)

// Where a sign finds room on a finished sheet. Measures in mm.
const (
	signAir   = 0.3 // about a sign, half its line included
	signStep  = 1.0 // from place to place that is tried
	leaderMM  = 0.25
	leaderMin = 2.2 // a sign so near needs no leader
	crossing  = 12  // what a leader over a line is worth, as a longer way
)

// space is what a sheet has drawn on it.
type space struct {
	areas        []scene.Rect // where signs may stand
	words, lines *raster      // no leader runs over words
	signs        []scene.Rect
}

func spaceOn(sheet *scene.Sheet, items []scene.Item, areas []scene.Rect) *space {
	s := &space{areas: areas, words: newRaster(sheet), lines: newRaster(sheet)}
	for _, item := range items {
		s.note(item)
	}
	return s
}

// note notes what an item covers.
func (s *space) note(item scene.Item) {
	switch p := item.Path; {
	case item.Text != nil:
		s.words.cover(scene.InkBox(*item.Text))
	case p == nil:
	case p.Fill != nil:
		s.lines.cover(p.Bounds())
	default:
		var at, start scene.Point
		for verb, pts := range p.Steps() {
			to := start
			switch verb {
			case scene.Move:
				start, at = pts[0], pts[0]
				continue
			case scene.Line, scene.Cubic:
				to = pts[len(pts)-1]
			}
			s.lines.cover(scene.Around(append([]scene.Point{at, to}, pts...)...).Grow(p.Stroke.WidthMM / 2))
			at = to
		}
	}
}

// nearest is the free place of a sign that is nearest to a line, beside it at first, else
// farther away, and the point of the line that it belongs to.
func (s *space) nearest(pts []scene.Point) (spot scene.Rect, from scene.Point, ok bool) {
	for _, most := range []float64{8, 30} {
		about := scene.Around(pts...).Grow(most)
		best := math.Inf(1)
		for y := about.Y; y+DeltaH <= about.Bottom(); y += signStep {
			for x := about.X; x+DeltaW <= about.Right(); x += signStep {
				r := scene.Rect{X: x, Y: y, W: DeltaW, H: DeltaH}
				if !s.free(r) {
					continue
				}
				to, mm := closest(pts, r)
				if mm >= min(best, most) {
					continue
				}
				if cost, ok := s.leader(r, to, mm); ok && cost < best {
					best, spot, from = cost, r, to
				}
			}
		}
		if !math.IsInf(best, 1) {
			return spot, from, true
		}
	}
	return spot, from, false
}

func (s *space) free(r scene.Rect) bool {
	r = r.Grow(signAir)
	return !s.words.meets(r) && !s.lines.meets(r) && !slices.ContainsFunc(s.signs, r.Overlaps) &&
		slices.ContainsFunc(s.areas, func(a scene.Rect) bool { return a.Contains(r) })
}

// leader is the length of the way from a sign to what it belongs to, more where it runs
// over lines; never over words or signs.
func (s *space) leader(r scene.Rect, to scene.Point, mm float64) (cost float64, ok bool) {
	if mm <= leaderMin {
		return mm, true
	}
	a := edge(r, to)
	cost = mm
	const piece = 0.5
	over := false
	for at := piece; at < mm; at += piece {
		dot := scene.Rect{X: a.X + (to.X-a.X)*at/mm, Y: a.Y + (to.Y-a.Y)*at/mm}.Grow(piece / 2)
		if s.words.meets(dot) || slices.ContainsFunc(s.signs, dot.Overlaps) {
			return 0, false
		}
		if now := at < mm-bandHalf-piece && s.lines.meets(dot); now != over {
			if over = now; now {
				cost += crossing
			}
		}
	}
	return cost, true
}

// edge is the point of a box that is nearest to another.
func edge(r scene.Rect, to scene.Point) scene.Point {
	return scene.Point{X: min(max(to.X, r.X), r.Right()), Y: min(max(to.Y, r.Y), r.Bottom())}
}

func away(a, b scene.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// closest is the point of an upright and level line that is nearest to a box, and how far.
func closest(pts []scene.Point, r scene.Rect) (to scene.Point, mm float64) {
	mm = math.Inf(1)
	for i := 1; i < len(pts); i++ {
		p := edge(scene.Around(pts[i-1], pts[i]), r.Centre())
		if d := away(edge(r, p), p); d < mm {
			to, mm = p, d
		}
	}
	return to, mm
}

// raster is what is covered of a sheet, in squares of half a millimetre.
type raster struct {
	across, down int
	covered      []bool
}

const square = 0.5 // mm

func newRaster(sheet *scene.Sheet) *raster {
	r := &raster{across: int(sheet.WidthMM/square) + 1, down: int(sheet.HeightMM/square) + 1}
	r.covered = make([]bool, r.across*r.down)
	return r
}

// rows are the squares of a box, row by row.
func (r *raster) rows(b scene.Rect) iter.Seq[[]bool] {
	in := func(mm float64, most int) int { return min(max(int(mm/square), 0), most-1) }
	return func(yield func([]bool) bool) {
		for y := in(b.Y, r.down); y <= in(b.Bottom(), r.down); y++ {
			if !yield(r.covered[y*r.across+in(b.X, r.across) : y*r.across+in(b.Right(), r.across)+1]) {
				return
			}
		}
	}
}

func (r *raster) cover(b scene.Rect) {
	for row := range r.rows(b) {
		for x := range row {
			row[x] = true
		}
	}
}

func (r *raster) meets(b scene.Rect) bool {
	for row := range r.rows(b) {
		if slices.Contains(row, true) {
			return true
		}
	}
	return false
}
