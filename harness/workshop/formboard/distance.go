package formboard

import "math"

// Distance is the least distance between two limbs in millimetres; 0 when they
// cross or touch.
func Distance(a, b *Limb) float64 {
	p, q, r, s := a.From.At, a.To.At, b.From.At, b.To.At
	if cross(p, q, r, s) {
		return 0
	}
	return math.Min(math.Min(toLine(r, p, q), toLine(s, p, q)), math.Min(toLine(p, r, s), toLine(q, r, s)))
}

// cross tells whether two lines cross in their insides.
func cross(p, q, r, s Point) bool {
	return turn(p, q, r)*turn(p, q, s) < 0 && turn(r, s, p)*turn(r, s, q) < 0
}

func turn(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

// toLine is the distance of a point from a line between two others.
func toLine(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if square := dx*dx + dy*dy; square > 0 {
		t = math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/square))
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}
