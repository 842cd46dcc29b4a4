package sign

import (
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
	s.words.count()
	s.lines.count()
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
				if _, mm := closest(pts, r); mm >= min(best, most) {
					continue
				}
				for _, to := range targets(pts, r) {
					if cost, ok := s.leader(r, to); ok && cost < best {
						best, spot, from = cost, r, to
					}
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
func (s *space) leader(r scene.Rect, to scene.Point) (cost float64, ok bool) {
	a := edge(r, to)
	mm := away(a, to)
	if mm <= leaderMin {
		return mm, true
	}
	cost = mm
	const piece = 0.5
	over := false
	for at := piece; at < mm-bandHalf-piece; at += piece {
		dot := scene.Rect{X: a.X + (to.X-a.X)*at/mm, Y: a.Y + (to.Y-a.Y)*at/mm}.Grow(piece / 2)
		if s.words.meets(dot) || slices.ContainsFunc(s.signs, dot.Overlaps) {
			return 0, false
		}
		if now := s.lines.meets(dot); now != over {
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

// targets are where a leader from a box may end on a line: as near as it can, at its
// corners and half-way between.
func targets(pts []scene.Point, r scene.Rect) []scene.Point {
	to, _ := closest(pts, r)
	list := []scene.Point{to}
	for i := 1; i < len(pts); i++ {
		list = append(list, scene.Around(pts[i-1], pts[i]).Centre(), pts[i])
	}
	return list
}

// raster is what is covered of a sheet, in squares.
type raster struct {
	across, down int
	sum          []int32 // covered squares above and at the left, after count
}

const square = 0.5 // mm

func newRaster(sheet *scene.Sheet) *raster {
	r := &raster{across: int(sheet.WidthMM/square) + 2, down: int(sheet.HeightMM/square) + 2}
	r.sum = make([]int32, r.across*r.down)
	return r
}

// squares are the first and the last but one column and row of a box.
func (r *raster) squares(b scene.Rect) (x0, y0, x1, y1 int) {
	in := func(mm, most float64) int { return int(min(max(mm/square, 0), most)) }
	wide, high := float64(r.across-1), float64(r.down-1)
	return in(b.X, wide), in(b.Y, high), in(b.Right()+square, wide), in(b.Bottom()+square, high)
}

func (r *raster) cover(b scene.Rect) {
	x0, y0, x1, y1 := r.squares(b)
	for y := y0; y < y1; y++ {
		for x := x0; x < x1; x++ {
			r.sum[(y+1)*r.across+x+1] = 1
		}
	}
}

func (r *raster) count() {
	for y := 1; y < r.down; y++ {
		row := int32(0)
		for x := 1; x < r.across; x++ {
			row += r.sum[y*r.across+x]
			r.sum[y*r.across+x] = row + r.sum[(y-1)*r.across+x]
		}
	}
}

func (r *raster) meets(b scene.Rect) bool {
	x0, y0, x1, y1 := r.squares(b)
	return r.sum[y1*r.across+x1]-r.sum[y0*r.across+x1]-r.sum[y1*r.across+x0]+r.sum[y0*r.across+x0] > 0
}
