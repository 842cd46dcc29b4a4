package dxf

import (
	"math"
	"slices"

	"fusewright/render/scene"
)

// outline is a run of points, closed when the path says so.
type outline struct {
	points []scene.Point
	closed bool
}

// flatten gives the pieces of a path as straight lines in the file's y.
func (d *drawing) flatten(p *scene.Path) []outline {
	var parts []outline
	var now outline
	finish := func() {
		if len(now.points) > 0 {
			parts = append(parts, now)
		}
		now = outline{}
	}
	for verb, points := range p.Steps() {
		switch verb {
		case scene.Move:
			finish()
			now.add(d.up(points[0]))
		case scene.Line:
			now.add(d.up(points[0]))
		case scene.Cubic:
			now.cubic(d.up(points[0]), d.up(points[1]), d.up(points[2]))
		case scene.Close:
			now.close()
			finish()
		}
	}
	finish()
	return parts
}

// add adds a point unless it is where the line already is.
func (o *outline) add(p scene.Point) {
	if n := len(o.points); n > 0 && distance(o.points[n-1], p) < 1e-6 {
		return
	}
	o.points = append(o.points, p)
}

// close marks the outline closed; a last point on the first is left out.
func (o *outline) close() {
	o.closed = true
	if n := len(o.points); n > 2 && distance(o.points[0], o.points[n-1]) < 1e-6 {
		o.points = o.points[:n-1]
	}
}

// cubic adds a Bézier curve in equal steps of its parameter. A chord over a
// step of 1/n lies within |B″|/(8n²) of the curve, and |B″| is at most six
// times the larger second difference of the control points.
func (o *outline) cubic(first, second, to scene.Point) {
	const most = 4096 // steps, for curves of absurd size
	from := o.points[len(o.points)-1]
	bend := max(secondDifference(from, first, second), secondDifference(first, second, to))
	steps := int(math.Ceil(math.Sqrt(6 * bend / (8 * ToleranceMM))))
	steps = min(max(steps, 1), most)
	for i := 1; i <= steps; i++ {
		o.add(onCubic(from, first, second, to, float64(i)/float64(steps)))
	}
}

func secondDifference(a, b, c scene.Point) float64 {
	return math.Hypot(a.X-2*b.X+c.X, a.Y-2*b.Y+c.Y)
}

func onCubic(a, b, c, d scene.Point, t float64) scene.Point {
	u := 1 - t
	wa, wb, wc, wd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return scene.Point{X: wa*a.X + wb*b.X + wc*c.X + wd*d.X, Y: wa*a.Y + wb*b.Y + wc*c.Y + wd*d.Y}
}

func distance(a, b scene.Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

// triangulate cuts a simple polygon into triangles, ear by ear. It says false
// when it finds no ear, as with outlines that cross themselves, and for
// outlines of so many points that the search would take long.
func triangulate(points []scene.Point) ([][3]scene.Point, bool) {
	const most = 2000
	if len(points) < 3 || len(points) > most {
		return nil, false
	}
	ring := slices.Clone(points)
	if area(ring) < 0 {
		slices.Reverse(ring)
	}
	var triangles [][3]scene.Point
	for len(ring) > 3 {
		ear := findEar(ring)
		if ear < 0 {
			return nil, false
		}
		n := len(ring)
		a, b, c := ring[(ear+n-1)%n], ring[ear], ring[(ear+1)%n]
		if cross(a, b, c) > 0 { // points in line leave no triangle
			triangles = append(triangles, [3]scene.Point{a, b, c})
		}
		ring = slices.Delete(ring, ear, ear+1)
	}
	if cross(ring[0], ring[1], ring[2]) > 0 {
		triangles = append(triangles, [3]scene.Point{ring[0], ring[1], ring[2]})
	}
	return triangles, true
}

// findEar gives a corner that can be cut off: it does not turn inwards and no
// other point lies in its triangle.
func findEar(ring []scene.Point) int {
	n := len(ring)
	for i := range n {
		a, b, c := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
		if cross(a, b, c) < 0 {
			continue
		}
		if !slices.ContainsFunc(ring, func(p scene.Point) bool { return p != a && p != b && p != c && inTriangle(p, a, b, c) }) {
			return i
		}
	}
	return -1
}

func inTriangle(p, a, b, c scene.Point) bool {
	return cross(a, b, p) >= 0 && cross(b, c, p) >= 0 && cross(c, a, p) >= 0
}

// cross is positive where the way a, b, c turns left.
func cross(a, b, c scene.Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

// area is positive when the ring runs counter-clockwise.
func area(ring []scene.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}
