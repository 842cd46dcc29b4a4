package layout

import (
	"math"

	"fusewright/harness/formboard"
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
		for _, side := range []float64{-1, 1} {
			if d := newDimension(a, b, side*off, half(l.Run), lengthText(l.Run)); p.fits(d, l) {
				p.paintDimension(d)
				return
			}
		}
	}
	p.bareLength(l, a, b)
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
	list := []shape{widen(textShape(d.text)), lineShape(d.line[0], d.line[1], 1)}
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

// fits tells whether a dimension meets nothing. Extension lines begin at the
// run's ends, where nails and other bands are, so they stay clear of words and
// bands only.
func (p *picture) fits(d *dimensioned, l *formboard.Limb) bool {
	for _, s := range d.shapes() {
		if !p.free(s, l) || p.lines.meets(s) {
			return false
		}
	}
	return true
}

func (p *picture) paintDimension(d *dimensioned) {
	s := p.sheet
	pen := scene.Pen(dimensionMM)
	s.Begin(scene.Group{Class: "dimension", Title: d.text.String + " mm"})
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
		// The foot stays open: the next run's extension line begins there too.
		p.lines.add(lineShape(along(e[0], e[1], 1.5, 0), e[1], 0.1))
	}
}

// bareLength writes the length along the run.
func (p *picture) bareLength(l *formboard.Limb, a, b scene.Point) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	turn := math.Atan2(a.Y-b.Y, b.X-a.X) * 180 / math.Pi
	words := lengthText(l.Run)
	for _, share := range []float64{0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2} {
		for _, off := range []float64{-half(l.Run) - 1.2, half(l.Run) + 3.7} {
			t := scene.Text{At: along(a, b, share*long, off), String: words, SizeMM: frame.NormalMM,
				Align: scene.Middle, Colour: scene.Ink, Turn: turn}
			if s := widen(textShape(t)); p.free(s, l) && !p.lines.meets(s) {
				p.sheet.Begin(scene.Group{Class: "dimension", Title: words + " mm"})
				p.sheet.Text(t)
				p.sheet.End()
				p.taken.add(s)
				return
			}
		}
	}
	mid := along(a, b, long/2, 0)
	p.label(mid, half(l.Run), 90, []*formboard.Limb{l}, &block{lines: []phrase{{words, scene.Regular, frame.NormalMM}}})
}
