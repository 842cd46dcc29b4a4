package layout

import (
	"math"

	"fusewright/render/scene"
)

// shape is a convex outline on the sheet, used to tell what meets what.
type shape []scene.Point

// lineShape is a line of a width.
func lineShape(a, b scene.Point, widthMM float64) shape {
	ux, uy := unit(a, b)
	nx, ny := -uy*widthMM/2, ux*widthMM/2
	return shape{{X: a.X + nx, Y: a.Y + ny}, {X: b.X + nx, Y: b.Y + ny},
		{X: b.X - nx, Y: b.Y - ny}, {X: a.X - nx, Y: a.Y - ny}}
}

func rectShape(r scene.Rect) shape {
	return shape{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}}
}

// discShape is a disc as an octagon around it.
func discShape(c scene.Point, r float64) shape {
	var s shape
	for i := range 8 {
		x, y := direction(22.5 + 45*float64(i))
		s = append(s, scene.Point{X: c.X + 1.082*r*x, Y: c.Y + 1.082*r*y})
	}
	return s
}

// textShape is what the ink of a text covers, turned with it.
func textShape(t scene.Text) shape {
	corners := scene.InkCorners(t)
	return corners[:]
}

// direction is the unit step on the sheet of an angle counter-clockwise.
func direction(degrees float64) (x, y float64) {
	sin, cos := scene.SinCos(degrees)
	return cos, 0 - sin
}

func unit(a, b scene.Point) (x, y float64) {
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	if l == 0 {
		return 1, 0
	}
	return (b.X - a.X) / l, (b.Y - a.Y) / l
}

// along is the point at a distance from a towards b, and aside of it: positive
// to the right of the way on the sheet.
func along(a, b scene.Point, mm, aside float64) scene.Point {
	ux, uy := unit(a, b)
	return scene.Point{X: a.X + ux*mm - uy*aside, Y: a.Y + uy*mm + ux*aside}
}

// shares are points on the way from a to b.
func shares(a, b scene.Point, of ...float64) (list []scene.Point) {
	for _, share := range of {
		list = append(list, along(a, b, share*math.Hypot(b.X-a.X, b.Y-a.Y), 0))
	}
	return list
}

func (a shape) box() scene.Rect { return scene.Around(a...) }

// meets tells whether two outlines overlap: they do unless a side of one of
// them parts them. Outlines that only touch do not.
func (a shape) meets(b shape) bool {
	if !a.box().Overlaps(b.box()) {
		return false
	}
	return !a.parts(b) && !b.parts(a)
}

// parts tells whether a line along a side of a has a and b on different sides.
func (a shape) parts(b shape) bool {
	const touch = 1e-6
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		nx, ny := q.Y-p.Y, p.X-q.X
		if nx == 0 && ny == 0 {
			continue
		}
		leastA, mostA := reach(a, nx, ny)
		leastB, mostB := reach(b, nx, ny)
		if slack := touch * math.Hypot(nx, ny); mostA <= leastB+slack || mostB <= leastA+slack {
			return true
		}
	}
	return false
}

// reach is how far an outline lies along a direction.
func reach(s shape, x, y float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, p := range s {
		v := p.X*x + p.Y*y
		least, most = min(least, v), max(most, v)
	}
	return least, most
}

// crowd is the outlines of what is drawn already.
type crowd struct {
	shapes []shape
	boxes  []scene.Rect
}

func (c *crowd) add(list ...shape) {
	for _, s := range list {
		c.shapes = append(c.shapes, s)
		c.boxes = append(c.boxes, s.box())
	}
}

func (c *crowd) meets(s shape) bool {
	box := s.box()
	for i, r := range c.boxes {
		if r.Overlaps(box) && !s.parts(c.shapes[i]) && !c.shapes[i].parts(s) {
			return true
		}
	}
	return false
}

// clip cuts a line to a rectangle (Liang and Barsky, 1984); ok is false when
// nothing of it is inside.
func clip(a, b scene.Point, r scene.Rect) (p, q scene.Point, ok bool) {
	from, to := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, edge := range [4][2]float64{{-dx, a.X - r.X}, {dx, r.Right() - a.X}, {-dy, a.Y - r.Y}, {dy, r.Bottom() - a.Y}} {
		d, room := edge[0], edge[1]
		switch {
		case d == 0 && room < 0:
			return a, b, false
		case d < 0:
			from = max(from, room/d)
		case d > 0:
			to = min(to, room/d)
		}
	}
	if from >= to {
		return a, b, false
	}
	at := func(t float64) scene.Point { return scene.Point{X: a.X + t*dx, Y: a.Y + t*dy} }
	return at(from), at(to), true
}
