package scene

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Right is the x of the right edge.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the y of the lower edge.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Centre is the middle of the rectangle.
func (r Rect) Centre() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Grow moves every edge outwards; a negative distance moves it inwards.
func (r Rect) Grow(byMM float64) Rect {
	return Rect{r.X - byMM, r.Y - byMM, r.W + 2*byMM, r.H + 2*byMM}
}

// Overlaps tells whether the insides of two rectangles meet; edges that only
// touch do not count.
func (r Rect) Overlaps(q Rect) bool {
	const touch = 1e-9
	return r.X < q.Right()-touch && q.X < r.Right()-touch &&
		r.Y < q.Bottom()-touch && q.Y < r.Bottom()-touch
}

// Contains tells whether q lies inside r, edges included.
func (r Rect) Contains(q Rect) bool {
	const touch = 1e-9
	return q.X >= r.X-touch && q.Y >= r.Y-touch &&
		q.Right() <= r.Right()+touch && q.Bottom() <= r.Bottom()+touch
}

// Union is the smallest rectangle round both; an empty one counts for nothing.
func (r Rect) Union(q Rect) Rect {
	if r == (Rect{}) {
		return q
	}
	if q == (Rect{}) {
		return r
	}
	x, y := min(r.X, q.X), min(r.Y, q.Y)
	return Rect{x, y, max(r.Right(), q.Right()) - x, max(r.Bottom(), q.Bottom()) - y}
}

// Around is the smallest upright rectangle round points; empty without any.
func Around(points ...Point) Rect {
	if len(points) == 0 {
		return Rect{}
	}
	low, high := points[0], points[0]
	for _, p := range points {
		low.X, high.X = min(low.X, p.X), max(high.X, p.X)
		low.Y, high.Y = min(low.Y, p.Y), max(high.Y, p.Y)
	}
	return Rect{low.X, low.Y, high.X - low.X, high.Y - low.Y}
}

// Bounds returns the rectangle round a path: its points, with the control
// points of curves, and half the line width. The real curve lies inside.
func (p *Path) Bounds() Rect {
	r := Around(p.Points...)
	if p.Stroke != nil && len(p.Points) > 0 {
		r = r.Grow(p.Stroke.WidthMM / 2)
	}
	return r
}

// Bounds returns the rectangle round an item; the marks of groups have none.
func (i Item) Bounds() Rect {
	switch {
	case i.Path != nil:
		return i.Path.Bounds()
	case i.Text != nil:
		return TextBox(*i.Text)
	}
	return Rect{}
}

// Bounds returns the rectangle round everything on the sheet.
func (s *Sheet) Bounds() Rect {
	var all Rect
	for _, item := range s.Items {
		all = all.Union(item.Bounds())
	}
	return all
}

// Frame is the sheet itself as a rectangle.
func (s *Sheet) Frame() Rect { return Rect{0, 0, s.WidthMM, s.HeightMM} }
