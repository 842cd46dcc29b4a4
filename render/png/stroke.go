package png

import (
	"math"

	"fusewright/render/scene"
)

// miterLimit is the longest spike of a sharp corner in line widths; the SVG and
// the PDF have the same.
const miterLimit = 10

// maxDashes is how many dashes one path may have; beyond it they could not be
// seen and the line is drawn solid.
const maxDashes = 20_000

// strokePieces turns lines of some width into areas that all go the same way
// round: a rectangle for each straight piece, a wedge on the outer side of each
// corner, a half disc on each round end. Neighbours share their edges exactly,
// so no seam shows between them.
func strokePieces(lines []line, stroke *scene.Stroke, scale float64) [][]vec {
	s := &stroker{half: stroke.WidthMM * scale / 2, round: stroke.Round}
	for _, l := range lines {
		l = withoutRepeats(l)
		if len(stroke.Dash) == 0 {
			s.line(l)
			continue
		}
		for _, dash := range dashes(l, stroke.Dash, scale) {
			s.line(dash)
		}
	}
	return s.pieces
}

type stroker struct {
	half   float64 // half the width in pixels
	round  bool
	pieces [][]vec
}

// withoutRepeats drops points that repeat the one before; a closed line gets
// its first point again at the end.
func withoutRepeats(l line) line {
	var points []vec
	all := l.points
	if l.closed && len(all) > 0 {
		all = append(append([]vec{}, all...), all[0])
	}
	for _, at := range all {
		if len(points) == 0 || at != points[len(points)-1] {
			points = append(points, at)
		}
	}
	return line{points, l.closed}
}

// line adds the areas of one line without repeated points.
func (s *stroker) line(l line) {
	points := l.points
	last := len(points) - 1
	if last == 0 {
		s.dot(points[0])
		return
	}
	closed := l.closed && last > 1
	start, end := s.normal(points[0], points[1]), s.normal(points[last-1], points[last])
	if closed {
		end, start = s.join(points[last-1], points[0], points[1])
	}
	from := start
	for i := 1; i <= last; i++ {
		a, b := points[i-1], points[i]
		to, next := end, vec{}
		if i < last {
			to, next = s.join(a, b, points[i+1])
		}
		s.pieces = append(s.pieces, []vec{a.plus(from), b.plus(to), b.minus(to), a.minus(from)})
		from = next
	}
	if !closed && s.round {
		s.wedge(points[0], start.times(-1), start, math.Pi)
		s.wedge(points[last], end, end.times(-1), math.Pi)
	}
}

// join returns the half widths with which the piece before a corner ends and the
// one after it starts. At a slight bend, as between the chords of a curve, both
// are the same, along the line that halves the angle, so the pieces neither
// overlap nor leave a gap. At a sharp corner each piece ends square and the
// outer side is filled.
func (s *stroker) join(a, b, c vec) (end, start vec) {
	const slight = math.Pi / 9
	end, start = s.normal(a, b), s.normal(b, c)
	angle := math.Atan2(math.Abs(end.cross(start)), end.dot(start))
	inset := s.half * math.Tan(angle/2) // of the inner side along each piece
	if angle < slight && inset < math.Min(distance(a, b), distance(b, c))/2 {
		halved := end.plus(start).times(1 / (1 + math.Cos(angle)))
		return halved, halved
	}
	s.corner(b, end, start)
	return end, start
}

// normal is the vector from a line to its left edge as seen along it, with y
// downwards: the direction turned by a quarter, as long as half the width.
func (s *stroker) normal(a, b vec) vec {
	d := b.minus(a)
	k := s.half / math.Hypot(d.x, d.y)
	return vec{d.y * k, -d.x * k}
}

// dot is a line without length: round ends make it a disc, others show nothing.
func (s *stroker) dot(at vec) {
	if s.round {
		n := vec{s.half, 0}
		s.wedge(at, n, n.times(-1), math.Pi)
		s.wedge(at, n.times(-1), n, math.Pi)
	}
}

// corner fills the outer side of the corner at b, given the normals of the
// pieces before and after it.
func (s *stroker) corner(b, from, to vec) {
	turn := from.cross(to)
	if turn < 0 { // turns left: the outer side is the right one
		from, to = to.times(-1), from.times(-1)
	}
	angle := math.Atan2(math.Abs(turn), from.dot(to))
	switch {
	case angle < 1e-9:
	case s.round:
		s.wedge(b, from, to, angle)
	case 1/math.Cos(angle/2) <= miterLimit && angle < math.Pi:
		tip := from.plus(to).times(1 / (1 + math.Cos(angle)))
		s.pieces = append(s.pieces, []vec{b, b.plus(from), b.plus(tip), b.plus(to)})
	default:
		s.pieces = append(s.pieces, []vec{b, b.plus(from), b.plus(to)})
	}
}

// wedge adds a slice of a disc from one edge to the other, turning by angle, in
// chords no further than a fiftieth of a pixel from the circle.
func (s *stroker) wedge(at, from, to vec, angle float64) {
	step := 2 * math.Acos(math.Max(0, 1-0.02/math.Max(s.half, 0.02)))
	steps := int(math.Min(200, math.Ceil(angle/math.Max(step, 1e-3))))
	piece := []vec{at, at.plus(from)}
	for i := 1; i < steps; i++ {
		sin, cos := math.Sincos(angle * float64(i) / float64(steps))
		piece = append(piece, at.plus(vec{from.x*cos - from.y*sin, from.x*sin + from.y*cos}))
	}
	s.pieces = append(s.pieces, append(piece, at.plus(to)))
}

// dashes cuts a line into its dashes; a pattern starts anew with each line.
func dashes(l line, patternMM []float64, scale float64) []line {
	sum, length := 0.0, 0.0
	for _, part := range patternMM {
		sum += part * scale
	}
	for i := 1; i < len(l.points); i++ {
		length += distance(l.points[i-1], l.points[i])
	}
	if length/sum*float64(len(patternMM)) > maxDashes {
		return []line{l}
	}
	d := &dasher{pattern: patternMM, scale: scale, left: patternMM[0] * scale}
	for i := 1; i < len(l.points); i++ {
		d.piece(l.points[i-1], l.points[i])
	}
	d.finish()
	return d.dashes
}

// dasher walks along a line with the dash pattern.
type dasher struct {
	pattern []float64
	scale   float64
	index   int     // of the pattern part we are in; even ones are drawn
	left    float64 // of that part, in pixels
	open    []vec   // the dash being drawn
	dashes  []line
}

func (d *dasher) piece(a, b vec) {
	whole := distance(a, b)
	done := 0.0
	if d.index%2 == 0 && len(d.open) == 0 {
		d.open = []vec{a}
	}
	for whole-done > d.left {
		done += d.left
		d.turn(a.towards(b, done/whole))
	}
	d.left -= whole - done
	if d.index%2 == 0 {
		d.open = append(d.open, b)
	}
}

// turn ends a part of the pattern at a place and begins the next.
func (d *dasher) turn(at vec) {
	if d.index%2 == 0 {
		d.open = append(d.open, at)
		d.finish()
	} else {
		d.open = []vec{at}
	}
	d.index = (d.index + 1) % len(d.pattern)
	d.left = d.pattern[d.index] * d.scale
}

func (d *dasher) finish() {
	if len(d.open) > 0 {
		d.dashes = append(d.dashes, withoutRepeats(line{points: d.open}))
	}
	d.open = nil
}

func distance(a, b vec) float64 { return math.Hypot(b.x-a.x, b.y-a.y) }
