package chart

import (
	"math"

	"fusewright/render/scene"
)

// nameRight writes the names of lines that end at the right border into the
// margin there, moved apart, with thin leaders where they had to move.
func (f *frame) nameRight() {
	var slots []*slot
	var names []*name
	for _, n := range f.names {
		if n.right {
			slots = append(slots, &slot{want: n.at.Y, size: rowHeight * 0.85})
			names = append(names, n)
		}
	}
	if !spread(slots, f.rect.Y-1.5, f.rect.Bottom()+1.5) {
		for _, n := range names {
			n.right = false // try inside, and then the key
		}
		return
	}
	room := f.nameRoom() + 0.01
	half := scene.CapHeightMM(textSize, scene.Regular) / 2
	for i, s := range slots {
		n := names[i]
		x := f.rect.Right() + nameGap
		leader := scene.Pen(0.18).In(n.look.colour)
		end := scene.Point{X: x - 0.7, Y: s.at}
		knee := scene.Point{X: f.rect.Right() + 0.5, Y: n.at.Y}
		f.sheet.Polyline([]scene.Point{n.at, knee, {X: x - 1.7, Y: s.at}, end}, leader)
		text := scene.Ellipsis(n.text, textSize, room, n.face())
		f.text(scene.Point{X: x, Y: s.at + half}, text, n.style())
	}
}

// nameInside writes the other names beside what they name. Marks come first,
// since they have no choice of where they belong.
func (f *frame) nameInside() {
	for _, marks := range []bool{true, false} {
		for _, n := range f.names {
			if n.right || (n.lines == nil) != marks {
				continue
			}
			best, ok := f.bestPlace(n, false)
			if !ok && marks {
				best, ok = f.bestPlace(n, true)
			}
			if ok {
				f.writeInside(n, best)
			} else {
				f.keys = append(f.keys, n)
			}
		}
	}
}

// spot is a possible place of a name.
type spot struct {
	at     scene.Point // left end of the baseline
	box    scene.Rect
	anchor scene.Point // what the leader leads to
	leader bool
	cost   float64
}

// gaps are the distances from what is named that are tried, in mm.
var gaps = []float64{1.2, 2.2, 4, 7, 11, 16}

// bestPlace tries places beside the anchors of a name, near ones first. A mark
// must be told of in the picture: when nothing else is left, its text may lie
// over lines, though never over texts.
func (f *frame) bestPlace(n *name, overLines bool) (best spot, ok bool) {
	anchors := []scene.Point{n.at}
	if n.lines != nil {
		anchors = along(n.lines, 40)
	}
	best.cost = math.Inf(1)
	for i, anchor := range anchors {
		// Names are best found a little past the middle of a line.
		part := math.Abs(float64(i)/float64(len(anchors)) - 0.6)
		for _, gap := range gaps {
			if gap+4*part >= best.cost {
				break // no place further off is better
			}
			for _, s := range f.spots(n, anchor, gap) {
				if !f.free(s, overLines) {
					continue
				}
				if s.cost = gap + 4*part + f.crowding(s.box, n); s.cost < best.cost {
					best, ok = s, true
				}
			}
		}
	}
	return best, ok
}

// spots lists the eight places around an anchor at a distance.
func (f *frame) spots(n *name, anchor scene.Point, gap float64) [8]spot {
	width := n.width()
	up, down := scene.CapHeightMM(textSize, n.face()), 0.22*textSize
	if n.lines == nil {
		gap += 1.2 // clear of the ring of the mark
	}
	var all [8]spot
	for i, side := range [...]struct{ x, y float64 }{
		{1, -1}, {1, 1}, {-1, -1}, {-1, 1}, {1, 0}, {-1, 0}, {0, -1}, {0, 1},
	} {
		x := anchor.X - width/2 + side.x*(width/2+gap)
		y := anchor.Y + up/2 + side.y*(up/2+gap)
		if side.y > 0 {
			y += down
		}
		box := scene.Rect{X: x, Y: y - up, W: width, H: up + down}
		all[i] = spot{at: scene.Point{X: x, Y: y}, box: box, anchor: anchor, leader: gap > 4}
	}
	return all
}

// free tells whether a spot touches nothing.
func (f *frame) free(s spot, overLines bool) bool {
	air := s.box.Grow(0.6)
	if !f.rect.Grow(-0.4).Contains(s.box) {
		return false
	}
	for _, box := range f.boxes {
		if air.Overlaps(box) {
			return false
		}
	}
	for _, line := range f.lines {
		if !overLines && crosses(line, air) {
			return false
		}
	}
	if !s.leader {
		return true
	}
	from, to := s.leaderLine()
	for _, box := range f.boxes {
		if box.Contains(scene.Rect{X: s.anchor.X, Y: s.anchor.Y}) {
			continue // the mark itself
		}
		if _, _, hit := clipSegment(from, to, box); hit {
			return false
		}
	}
	return true
}

// leaderLine runs from the anchor to the nearest point of the text's middle.
func (s spot) leaderLine() (from, to scene.Point) {
	return s.anchor, scene.Point{
		X: math.Min(math.Max(s.anchor.X, s.box.X-0.5), s.box.Right()+0.5),
		Y: math.Min(math.Max(s.anchor.Y, s.box.Y-0.4), s.box.Bottom()+0.3),
	}
}

// crowding makes places near the lines of others dearer, where a reader might
// take the name for theirs.
func (f *frame) crowding(box scene.Rect, n *name) float64 {
	cost := 0.0
	near := box.Grow(2.5)
	for _, other := range f.names {
		if other == n {
			continue
		}
		for _, line := range other.lines {
			if crosses(line, near) {
				cost += 6
			}
		}
	}
	return cost
}

func crosses(line []scene.Point, r scene.Rect) bool {
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		if max(a.X, b.X) < r.X || min(a.X, b.X) > r.Right() || max(a.Y, b.Y) < r.Y || min(a.Y, b.Y) > r.Bottom() {
			continue // the usual case
		}
		if _, _, hit := clipSegment(a, b, r); hit {
			return true
		}
	}
	return false
}

// along returns points spaced evenly along lines.
func along(lines [][]scene.Point, count int) []scene.Point {
	total := 0.0
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			total += distance(line[i-1], line[i])
		}
	}
	step := total / float64(count)
	var points []scene.Point
	next, done := step/2, 0.0
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			length := distance(line[i-1], line[i])
			for ; next < done+length && len(points) < count; next += step {
				part := (next - done) / length
				points = append(points, scene.Point{
					X: line[i-1].X + part*(line[i].X-line[i-1].X),
					Y: line[i-1].Y + part*(line[i].Y-line[i-1].Y),
				})
			}
			done += length
		}
	}
	return points
}

func distance(a, b scene.Point) float64 { return math.Hypot(b.X-a.X, b.Y-a.Y) }

// writeInside writes a name on a white ground, which covers the grid alone.
func (f *frame) writeInside(n *name, s spot) {
	if s.leader {
		from, to := s.leaderLine()
		f.sheet.Line(from, to, scene.Pen(0.18).In(n.look.colour))
		f.lines = append(f.lines, []scene.Point{from, to})
	}
	if colour, ok := f.groundOf(s.box.Grow(0.35)); ok {
		f.sheet.Rect(s.box.Grow(0.35), nil, scene.Paint(colour))
	}
	f.text(s.at, n.text, n.style())
}

// groundOf is the colour behind a name that hides the grid: that of the paper or
// of the span. Over a band, which hides the grid itself, and over the border of
// a span there is none.
func (f *frame) groundOf(box scene.Rect) (colour scene.RGB, ok bool) {
	for _, area := range f.tinted {
		if touches(area, box) {
			return colour, false
		}
	}
	for i, s := range f.plot.Spans {
		left, right, shown := f.spanEnds(s)
		if !shown || i%2 == 0 || right <= box.X || left >= box.Right() {
			continue
		}
		return spanTint, left <= box.X && box.Right() <= right
	}
	return paper, true
}

// touches tells whether a closed area and a rectangle have a point in common.
func touches(area []scene.Point, r scene.Rect) bool {
	return len(clipArea(area, r)) > 2
}

// The key: a row of samples with names, under the x axis.
const (
	sampleMM  = 9
	keyGap    = 5
	keyIndent = 1.5
)

// keyHeight is the room that a key takes.
func keyHeight(keys []*name, widthMM float64) float64 {
	if len(keys) == 0 {
		return 0
	}
	rows, _ := keyRows(keys, widthMM)
	return float64(rows)*rowHeight + 1
}

// keyRows places the entries of a key in rows; each place is x in mm and row.
func keyRows(keys []*name, widthMM float64) (rows int, places []scene.Point) {
	x, row := 0.0, 0
	for _, n := range keys {
		width := sampleMM + keyIndent + min(n.width(), widthMM-sampleMM-keyIndent)
		if x > 0 && x+width > widthMM {
			x, row = 0, row+1
		}
		places = append(places, scene.Point{X: x, Y: float64(row)})
		x += width + keyGap
	}
	return row + 1, places
}

// drawKeys draws the key below the panel.
func (f *frame) drawKeys() {
	_, places := keyRows(f.keys, f.outer.W)
	for i, n := range f.keys {
		at := scene.Point{X: f.outer.X + places[i].X, Y: f.outer.Bottom() + (places[i].Y+1)*rowHeight - 0.8}
		middle := at.Y - scene.CapHeightMM(textSize, scene.Regular)/2
		sample := scene.Rect{X: at.X, Y: middle - 1.2, W: sampleMM, H: 2.4}
		switch {
		case n.area:
			f.sheet.Rect(sample, &scene.Stroke{WidthMM: 0.25, Colour: n.look.colour, Dash: n.look.dash}, scene.Paint(n.look.tint()))
		case n.lines == nil:
			pen := scene.Pen(0.4)
			f.sheet.Circle(sample.Centre(), 1.1, &pen, nil)
		default:
			f.sheet.Line(scene.Point{X: at.X, Y: middle}, scene.Point{X: at.X + sampleMM, Y: middle}, n.look.stroke(curveLine))
		}
		room := f.outer.W - places[i].X - sampleMM - keyIndent
		f.text(scene.Point{X: at.X + sampleMM + keyIndent, Y: at.Y}, scene.Ellipsis(n.text, textSize, room, n.face()), n.style())
	}
}
