package layout

import (
	"math"

	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// Measures of dimensions after ISO 129-1 in millimetres on paper.
const (
	dimensionMM = 0.25
	arrowMM     = 2.4
	gapMM       = 1.0 // band to extension line
	overMM      = 1.5 // extension line past the dimension line
	liftMM      = 0.9 // dimension line to its text
)

// offsets are how far from the run its dimension line may stand, nearest first.
var offsets = []float64{7, 10, 13, 16.5, 20}

// dimension gives a run its length: an arrowed line beside it or, where that
// would cross something, the bare number along it.
func (p *picture) dimension(l *formboard.Limb) {
	a, b := p.ends(l)
	if b.X < a.X-1e-9 || math.Abs(b.X-a.X) < 1e-9 && b.Y > a.Y {
		a, b = b, a // text reads from below or from the right
	}
	for _, off := range offsets {
		for _, side := range p.openSides(l, a, b) {
			if d := newDimension(a, b, side*off, p.half(l.Run), p.unit.Dim(l.Run.Length)); p.fits(d, l) {
				p.paintDimension(d)
				return
			}
		}
	}
	p.bareLength(l, a, b)
}

// openSides are the sides of a run, the one whose neighbours at both ends lean
// further away first; of equal ones the upper.
func (p *picture) openSides(l *formboard.Limb, a, b scene.Point) []float64 {
	lean := map[float64]float64{-1: 180, 1: 180}
	for _, spot := range []*formboard.Spot{l.From, l.To} {
		c, far := p.at(spot.At), p.at(l.Far(spot).At)
		for _, n := range spot.Limbs {
			if n == l {
				continue
			}
			q := p.at(n.Far(spot).At)
			deg := math.Abs(math.Remainder(math.Atan2(q.Y-c.Y, q.X-c.X)-math.Atan2(far.Y-c.Y, far.X-c.X), 2*math.Pi)) * 180 / math.Pi
			side := 1.0
			if (b.X-a.X)*(q.Y-c.Y)-(b.Y-a.Y)*(q.X-c.X) < 0 {
				side = -1
			}
			if deg < 179 {
				lean[side] = math.Min(lean[side], deg)
			}
		}
	}
	if lean[1] > lean[-1]+1e-6 {
		return []float64{1, -1}
	}
	return []float64{-1, 1}
}

// dimensioned is a dimension ready to paint.
type dimensioned struct {
	line    [2]scene.Point
	extends [][2]scene.Point
	arrows  [][3]scene.Point
	text    scene.Text
}

func newDimension(a, b scene.Point, off, half float64, words string) *dimensioned {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	side := math.Copysign(1, off)
	from, to := 0.0, long
	style := scene.TextStyle{SizeMM: frame.NormalMM, Align: scene.Middle, Colour: scene.Ink,
		Turn: math.Atan2(a.Y-b.Y, b.X-a.X) * 180 / math.Pi}
	wide := style.Width(words)
	middle, inside := long/2, 1.0
	if long < wide+2*arrowMM+1 { // arrows from outside, the text after the right one
		from, to, inside = -arrowMM-2, long+arrowMM+2.5+wide, -1
		middle = to - wide/2
	}
	d := &dimensioned{line: [2]scene.Point{along(a, b, from, off), along(a, b, to, off)}}
	for i, x := range []float64{0, long} {
		d.extends = append(d.extends, [2]scene.Point{along(a, b, x, side*(half+gapMM)), along(a, b, x, off+side*overMM)})
		back := inside * arrowMM * float64(1-2*i)
		d.arrows = append(d.arrows, [3]scene.Point{along(a, b, x, off), along(a, b, x+back, off-arrowMM/6),
			along(a, b, x+back, off+arrowMM/6)})
	}
	d.text = scene.Text{At: along(a, b, middle, off-liftMM), String: words, SizeMM: style.SizeMM, Align: scene.Middle,
		Colour: scene.Ink, Turn: style.Turn}
	return d
}

// shapes are the outlines of a dimension: extension lines last.
func (d *dimensioned) shapes() []shape {
	list := []shape{widen(textShape(d.text)), lineShape(along(d.line[0], d.line[1], 0.4, 0), along(d.line[1], d.line[0], 0.4, 0), 1)}
	for _, e := range d.extends {
		list = append(list, lineShape(e[0], e[1], 0.3))
	}
	return list
}

// widen gives a text a little air.
func widen(s shape) shape {
	const air = 0.35
	out := make(shape, len(s))
	along, up := [2]float64{}, [2]float64{}
	along[0], along[1] = unit(s[0], s[1])
	up[0], up[1] = unit(s[3], s[0])
	for i, p := range s {
		x, y := -air, air
		if i == 1 || i == 2 {
			x = air
		}
		if i >= 2 {
			y = -air
		}
		out[i] = scene.Point{X: p.X + x*along[0] + y*up[0], Y: p.Y + x*along[1] + y*up[1]}
	}
	return out
}

// fits tells whether a dimension meets nothing. Extension lines of neighbours
// may run into one another, since they begin at the same nail.
func (p *picture) fits(d *dimensioned, l *formboard.Limb) bool {
	shapes := d.shapes()
	for i, s := range shapes {
		if !p.free(s, l) || p.lines.meets(s) || i < 2 && p.extends.meets(s) {
			return false
		}
	}
	return true
}

func (p *picture) paintDimension(d *dimensioned) {
	s := p.sheet
	pen := scene.Pen(dimensionMM)
	s.Begin(scene.Group{Class: "dimension", Title: d.text.String + " " + p.unit.Small()})
	for _, e := range d.extends {
		s.Line(e[0], e[1], pen)
	}
	s.Line(d.line[0], d.line[1], pen)
	for _, a := range d.arrows {
		s.Polygon(a[:], nil, scene.Paint(scene.Ink))
	}
	s.Text(d.text)
	s.End()
	shapes := d.shapes()
	p.taken.add(shapes[0])
	p.lines.add(shapes[1])
	for _, e := range d.extends {
		p.extends.add(lineShape(e[0], e[1], 0.1))
	}
}

// bareLength writes the length along the run.
func (p *picture) bareLength(l *formboard.Limb, a, b scene.Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	turn := math.Atan2(a.Y-b.Y, b.X-a.X) * 180 / math.Pi
	words := p.unit.Dim(l.Run.Length)
	for _, share := range []float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2} {
		for _, off := range []float64{-p.half(l.Run) - 1.2, p.half(l.Run) + 3.7} {
			t := scene.Text{At: along(a, b, share*long, off), String: words, SizeMM: frame.NormalMM,
				Align: scene.Middle, Colour: scene.Ink, Turn: turn}
			if s := widen(textShape(t)); p.free(s, l) && !p.crosses(s) {
				p.sheet.Begin(scene.Group{Class: "dimension", Title: words + " " + p.unit.Small()})
				p.sheet.Text(t)
				p.sheet.End()
				p.taken.add(s)
				return
			}
		}
	}
	mid := along(a, b, long/2, 0)
	p.label(mid, p.half(l.Run), 90, []*formboard.Limb{l}, &block{
		lines: []phrase{{words, scene.Regular, frame.NormalMM}}, group: scene.Group{Class: "dimension", Title: words + " " + p.unit.Small()}})
}
