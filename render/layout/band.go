package layout

import (
	"math"

	"fusewright/harness/workshop/formboard"
	"fusewright/library"
	"fusewright/render/scene"
)

// halfMM is half the width of a bundle's band by its diameter class.
var halfMM = []float64{0.6, 0.85, 1.15, 1.5, 1.85}

// Line widths after the series of ISO 128: outlines, and what fills them.
const (
	outlineMM = 0.35
	hairMM    = 0.18
)

// band paints a run as a band whose width tells its diameter class and whose
// filling tells its cover. It gives the band's outline.
func (p *picture) band(l *formboard.Limb) shape {
	a, b := p.ends(l)
	h := p.half(l.Run)
	p.sheet.Begin(scene.Group{ID: p.sheet.UniqueID("run-" + number(l.Run)), Class: "run",
		Title: "run " + number(l.Run) + ": " + l.Run.Bundle.Run.Name, Desc: runWords(p.unit, l.Run)})
	for _, piece := range l.Pieces() {
		paintBand(p.sheet, along(a, b, piece[0]*p.ratio, 0), along(a, b, piece[1]*p.ratio, 0), h, l.Run.Bundle.Run.Cover)
	}
	p.breakOf(l)
	p.sheet.End()
	return lineShape(a, b, 2*h+outlineMM)
}

// paintBand draws a band from a to b.
func paintBand(s *scene.Sheet, a, b scene.Point, h float64, cover *library.Cover) {
	pen := scene.Pen(outlineMM)
	s.Polygon(lineShape(a, b, 2*h), &pen, scene.Paint(scene.RGB{R: 255, G: 255, B: 255}))
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	hair := scene.Pen(hairMM)
	for _, line := range filling(long, h, cover, wholeBand) {
		s.Line(along(a, b, line[0].X, line[0].Y), along(a, b, line[1].X, line[1].Y), hair)
	}
}

// filling is the lines inside a band, as far as they lie in a stretch of it: x along it, y
// across. Without a cover the wires show; braid is crossed, heat sleeve and tape are
// hatched closely and widely, conduit is ribbed.
func filling(long, h float64, cover *library.Cover, in stretch) [][2]scene.Point {
	switch {
	case cover == nil:
		y := h / 2.2
		return [][2]scene.Point{{{X: 0, Y: -y}, {X: long, Y: -y}}, {{X: 0, Y: y}, {X: long, Y: y}}}
	case cover.Kind == "conduit":
		return slanted(long, h, 1.1, 0, in)
	case cover.Kind == "loom tape":
		return slanted(long, h, 3.2, -1.2, in)
	case cover.Heat:
		return slanted(long, h, 0.9, 1, in)
	}
	return append(slanted(long, h, 1.8, 1, in), slanted(long, h, 1.8, -1, in)...)
}

// stretch is a part of a band, in millimetres along it.
type stretch struct{ from, to float64 }

var wholeBand = stretch{math.Inf(-1), math.Inf(1)}

// stretchIn is what of a band from a to b may lie in a rectangle.
func stretchIn(a, b scene.Point, long float64, r scene.Rect) stretch {
	if long == 0 {
		return wholeBand
	}
	in := stretch{math.Inf(1), math.Inf(-1)}
	for _, c := range []scene.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.X, Y: r.Bottom()}, {X: r.Right(), Y: r.Bottom()}} {
		x := ((c.X-a.X)*(b.X-a.X) + (c.Y-a.Y)*(b.Y-a.Y)) / long
		in.from, in.to = math.Min(in.from, x-1), math.Max(in.to, x+1)
	}
	return in
}

// slanted lines stand every step along the band, leaning by their height.
func slanted(long, h, step, lean float64, in stretch) [][2]scene.Point {
	var out [][2]scene.Point
	shift := lean * 2 * h
	for x := step/2 - math.Abs(shift); x < long+math.Abs(shift); x += step {
		if math.Max(x, x+shift) < in.from || math.Min(x, x+shift) > in.to {
			continue
		}
		from, to := scene.Point{X: x, Y: -h}, scene.Point{X: x + shift, Y: h}
		if shift < 0 { // drawn from left to right
			from, to = to, from
		}
		if a, b, ok := clip(from, to, scene.Rect{Y: -2 * h, W: long, H: 4 * h}); ok {
			out = append(out, [2]scene.Point{a, b})
		}
	}
	return out
}

// clampMM is how far a clamp's mark stands out of its band.
const clampMM = 1.1

// clamps marks the supports of a run: a bar across the band with feet.
func (p *picture) clamps(l *formboard.Limb) {
	a, b := p.ends(l)
	// Too short a run, or too many clamps, and one could not tell them apart.
	gap := l.Run.Spacing() * p.ratio
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	if long < 12 || gap > 0 && gap < 6 {
		return
	}
	p.sheet.Begin(scene.Group{Class: "clamp"})
	defer p.sheet.End()
	for _, mm := range l.Run.Supports {
		at, ok := l.Station(mm)
		if at *= p.ratio; !ok || at < p.nailMM(l.From)+1.5 || at > long-p.nailMM(l.To)-1.5 {
			continue // left out, or the nail's mark would hide it
		}
		p.marks.add(paintClamp(p.sheet, a, b, at, p.half(l.Run)))
	}
}

func paintClamp(s *scene.Sheet, a, b scene.Point, mm, h float64) shape {
	out := h + clampMM
	from, to := along(a, b, mm, -out), along(a, b, mm, out)
	s.Line(from, to, scene.Pen(0.7))
	for _, y := range []float64{-out, out} {
		s.Line(along(a, b, mm-0.9, y), along(a, b, mm+0.9, y), scene.Pen(0.5))
	}
	return lineShape(along(a, b, mm, -out-0.3), along(a, b, mm, out+0.3), 2)
}

// nail marks a spot: a ring with a point where runs part, a ring at an end, two
// rings where another section goes on, a square at the loose end of a loop.
func (p *picture) nail(s *formboard.Spot) {
	c := p.at(s.At)
	r := p.nailMM(s)
	p.sheet.Begin(scene.Group{ID: p.sheet.UniqueID("place-" + s.Place.Name), Class: "place", Title: s.Place.Name})
	paintNail(p.sheet, c, r, nailKind(s))
	p.sheet.End()
	if s.Copy {
		p.taken.add(rectShape(scene.Rect{X: c.X - r, Y: c.Y - r, W: 2 * r, H: 2 * r}))
		return
	}
	p.taken.add(discShape(c, r))
}

// nailMM is the radius of a spot's mark: it covers the ends of its bands.
func (p *picture) nailMM(s *formboard.Spot) float64 {
	r := 1.3
	for _, l := range s.Limbs {
		r = math.Max(r, p.half(l.Run)+0.5)
	}
	return r
}

type nailSort int

const (
	endNail nailSort = iota
	breakoutNail
	goesOnNail
	looseNail
	connectorNail
)

func nailKind(s *formboard.Spot) nailSort {
	switch {
	case s.Copy:
		return looseNail
	case len(s.Inlines) > 0:
		return connectorNail
	case len(s.Others) > 0:
		return goesOnNail
	case s.Breakout():
		return breakoutNail
	}
	return endNail
}

func paintNail(s *scene.Sheet, c scene.Point, r float64, kind nailSort) {
	pen := scene.Pen(0.5)
	white := scene.Paint(scene.RGB{R: 255, G: 255, B: 255})
	if kind == looseNail || kind == connectorNail {
		s.Rect(scene.Rect{X: c.X - r, Y: c.Y - r, W: 2 * r, H: 2 * r}, &pen, white)
		if kind == connectorNail {
			s.Line(scene.Point{X: c.X - r, Y: c.Y + r}, scene.Point{X: c.X + r, Y: c.Y - r}, pen)
			s.Dot(c, r*0.45, scene.Ink)
		}
		return
	}
	s.Circle(c, r, &pen, white)
	switch kind {
	case breakoutNail:
		s.Dot(c, r*0.45, scene.Ink)
	case goesOnNail:
		s.Circle(c, r*0.55, &pen, nil)
	}
}
