package symbol

import "math"

// lamp is a circle with a diagonal cross (IEC 60617 08-10-01).
func lamp() *Symbol {
	return twoPole(Lamp, 1.25, 1.25, func(p *Pen, _ string) {
		const r = 1.25
		d := r * math.Sqrt2 / 2
		p.Line(0, 0, 2-r, 0)
		p.Circle(2, 0, r)
		p.Line(2-d, -d, 2+d, d)
		p.Line(2-d, d, 2+d, -d)
		p.Line(2+r, 0, 4, 0)
	})
}
