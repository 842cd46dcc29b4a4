package layout

import "fusewright/render/scene"

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
