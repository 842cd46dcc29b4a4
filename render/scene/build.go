package scene

import (
	"math"
	"slices"
	"strconv"
)

// NewSheet returns an empty sheet.
func NewSheet(widthMM, heightMM float64, title string) *Sheet {
	return &Sheet{WidthMM: widthMM, HeightMM: heightMM, Title: title}
}

// Pen returns a solid line in the usual drawing colour.
func Pen(widthMM float64) Stroke { return Stroke{WidthMM: widthMM, Colour: Ink} }

// Dashed returns the stroke with a dash pattern: lengths in mm, on and off.
func (s Stroke) Dashed(pattern ...float64) Stroke {
	s.Dash = pattern
	return s
}

// In returns the stroke in another colour.
func (s Stroke) In(colour RGB) Stroke {
	s.Colour = colour
	return s
}

// Paint returns a fill.
func Paint(colour RGB) *Fill { return &Fill{colour} }

// TextStyle is how a text looks; the zero colour is black.
type TextStyle struct {
	SizeMM float64
	Face   Face
	Colour RGB
	Align  Align
	Turn   float64 // degrees counter-clockwise
}

// Width is the width of a text in this style, in mm.
func (t TextStyle) Width(s string) float64 { return TextWidthMM(s, t.SizeMM, t.Face) }

// Line draws a straight line.
func (s *Sheet) Line(from, to Point, stroke Stroke) { s.Polyline([]Point{from, to}, stroke) }

// Polyline draws an open line through the points.
func (s *Sheet) Polyline(points []Point, stroke Stroke) {
	if len(points) > 1 {
		s.Path(polygon(points, false, &stroke, nil))
	}
}

// Polygon draws a closed line through the points; nil means no line or no area.
func (s *Sheet) Polygon(points []Point, stroke *Stroke, fill *Fill) {
	if len(points) > 1 {
		s.Path(polygon(points, true, stroke, fill))
	}
}

func polygon(points []Point, closed bool, stroke *Stroke, fill *Fill) Path {
	p := Path{Stroke: stroke, Fill: fill}
	p.MoveTo(points[0])
	for _, point := range points[1:] {
		p.LineTo(point)
	}
	if closed {
		p.Close()
	}
	return p
}

// Rect draws a rectangle; nil means no line or no area.
func (s *Sheet) Rect(r Rect, stroke *Stroke, fill *Fill) {
	s.Polygon([]Point{{r.X, r.Y}, {r.Right(), r.Y}, {r.Right(), r.Bottom()}, {r.X, r.Bottom()}}, stroke, fill)
}

// RoundRect draws a rectangle with round corners.
func (s *Sheet) RoundRect(r Rect, radiusMM float64, stroke *Stroke, fill *Fill) {
	radius := min(radiusMM, r.W/2, r.H/2)
	p := Path{Stroke: stroke, Fill: fill}
	p.MoveTo(Point{r.X + radius, r.Y})
	p.LineTo(Point{r.Right() - radius, r.Y})
	p.ArcTo(Point{r.Right() - radius, r.Y + radius}, radius, 90, -90)
	p.LineTo(Point{r.Right(), r.Bottom() - radius})
	p.ArcTo(Point{r.Right() - radius, r.Bottom() - radius}, radius, 0, -90)
	p.LineTo(Point{r.X + radius, r.Bottom()})
	p.ArcTo(Point{r.X + radius, r.Bottom() - radius}, radius, -90, -90)
	p.LineTo(Point{r.X, r.Y + radius})
	p.ArcTo(Point{r.X + radius, r.Y + radius}, radius, 180, -90)
	p.Close()
	s.Path(p)
}

// Circle draws a circle; nil means no line or no area.
func (s *Sheet) Circle(centre Point, radiusMM float64, stroke *Stroke, fill *Fill) {
	p := Path{Stroke: stroke, Fill: fill}
	p.MoveTo(Point{centre.X + radiusMM, centre.Y})
	p.ArcTo(centre, radiusMM, 0, 360)
	p.Close()
	s.Path(p)
}

// Arc draws a part of a circle. Angles are in degrees, counter-clockwise as
// seen on the sheet, 0 at three o'clock.
func (s *Sheet) Arc(centre Point, radiusMM, startDeg, sweepDeg float64, stroke Stroke) {
	p := Path{Stroke: &stroke}
	p.MoveTo(onCircle(centre, radiusMM, startDeg))
	p.ArcTo(centre, radiusMM, startDeg, sweepDeg)
	s.Path(p)
}

// Dot draws a filled circle without a line: a junction, a marker.
func (s *Sheet) Dot(centre Point, radiusMM float64, colour RGB) {
	s.Circle(centre, radiusMM, nil, Paint(colour))
}

// Path adds a path as it is.
func (s *Sheet) Path(p Path) { s.Items = append(s.Items, Item{Path: &p}) }

// Text adds a text, cleaned.
func (s *Sheet) Text(t Text) {
	t.String = Clean(t.String)
	s.Items = append(s.Items, Item{Text: &t})
}

// TextAt adds a text with its baseline at the point.
func (s *Sheet) TextAt(at Point, text string, style TextStyle) {
	s.Text(style.at(at, text))
}

func (t TextStyle) at(at Point, text string) Text {
	return Text{
		At: at, String: text, SizeMM: t.SizeMM, Face: t.Face, Align: t.Align,
		Colour: t.Colour, Turn: t.Turn,
	}
}

// TextIn adds an unturned text in a rectangle, shortened to its width, its
// capitals centred between top and bottom. Table cells use it.
func (s *Sheet) TextIn(r Rect, text string, style TextStyle) {
	style.Turn = 0
	at := Point{r.X, r.Y + (r.H+CapHeightMM(style.SizeMM, style.Face))/2}
	switch style.Align {
	case Middle:
		at.X += r.W / 2
	case Right:
		at.X += r.W
	}
	s.TextAt(at, Ellipsis(text, style.SizeMM, r.W, style.Face), style)
}

// Paragraph adds a wrapped text, the capitals of its first line touching the
// top of the rectangle, and returns the y below its last line. It may run over
// the bottom: ask Wrap first how many lines there will be.
func (s *Sheet) Paragraph(r Rect, text string, style TextStyle) (bottom float64) {
	step := LineHeightMM(style.SizeMM)
	y := r.Y + CapHeightMM(style.SizeMM, style.Face)
	for _, line := range Wrap(text, style.SizeMM, r.W, style.Face) {
		s.TextAt(Point{r.X, y}, line, TextStyle{SizeMM: style.SizeMM, Face: style.Face, Colour: style.Colour})
		y += step
	}
	return y - step + DescentMM(style.SizeMM, style.Face)
}

// Begin opens a group; close it with End.
func (s *Sheet) Begin(g Group) { s.Items = append(s.Items, Item{Begin: &g}) }

// End closes the group opened last.
func (s *Sheet) End() { s.Items = append(s.Items, Item{End: true}) }

// Under puts what is drawn on another sheet below the items from a place on.
func (s *Sheet) Under(from int, other *Sheet) {
	s.Items = slices.Insert(s.Items, from, other.Items...)
	s.taken = nil
}

// Trimmed moves everything so that it fills the sheet, with a margin, and cuts the sheet to it.
func (s *Sheet) Trimmed(marginMM float64) *Sheet {
	all := s.Bounds().Grow(marginMM)
	cut := NewSheet(all.W, all.H, s.Title)
	cut.ID, cut.Desc = s.ID, s.Desc
	move := Point{-all.X, -all.Y}
	for _, item := range s.Items {
		switch {
		case item.Path != nil:
			p := *item.Path
			p.Points = slices.Clone(p.Points)
			for i := range p.Points {
				p.Points[i] = p.Points[i].Add(move)
			}
			item.Path = &p
		case item.Text != nil:
			t := *item.Text
			t.At = t.At.Add(move)
			item.Text = &t
		}
		cut.Items = append(cut.Items, item)
	}
	return cut
}

// UniqueID returns ID(name), with a number behind it when the sheet already has
// a group of that ID.
func (s *Sheet) UniqueID(name string) string {
	if s.taken == nil || s.looked > len(s.Items) {
		s.taken, s.looked = map[string]bool{}, 0
	}
	for _, item := range s.Items[s.looked:] {
		if item.Begin != nil {
			s.taken[item.Begin.ID] = true
		}
	}
	s.looked = len(s.Items)
	id := ID(name)
	for n := 2; s.taken[id] || id == s.ID; n++ {
		id = ID(name) + "-" + strconv.Itoa(n)
	}
	return id
}

// MoveTo starts a new line in the path.
func (p *Path) MoveTo(to Point) { p.step(Move, to) }

// LineTo draws on to a point.
func (p *Path) LineTo(to Point) { p.step(Line, to) }

// CubicTo draws on along a cubic Bézier curve with two control points.
func (p *Path) CubicTo(first, second, to Point) { p.step(Cubic, first, second, to) }

// Close draws back to where the line started.
func (p *Path) Close() { p.step(Close) }

func (p *Path) step(verb Verb, points ...Point) {
	p.Verbs = append(p.Verbs, verb)
	p.Points = append(p.Points, points...)
}

// ArcTo draws on along a circle, from startDeg, where the path must already
// be. Angles as in Sheet.Arc. Each piece spans at most 90°, where the cubic is
// within 0.03 % of the radius.
func (p *Path) ArcTo(centre Point, radiusMM, startDeg, sweepDeg float64) {
	pieces := int(math.Ceil(math.Abs(sweepDeg)/90 - 1e-9))
	if pieces < 1 || pieces > 1000 {
		return
	}
	step := sweepDeg / float64(pieces)
	reach := radiusMM * 4 / 3 * math.Tan(step*math.Pi/720)
	for i := range pieces {
		from, to := startDeg+float64(i)*step, startDeg+float64(i+1)*step
		a, b := onCircle(centre, radiusMM, from), onCircle(centre, radiusMM, to)
		sinA, cosA := SinCos(from)
		sinB, cosB := SinCos(to)
		p.CubicTo(
			Point{a.X - reach*sinA, a.Y - reach*cosA},
			Point{b.X + reach*sinB, b.Y + reach*cosB}, b)
	}
}

// onCircle is the point of a circle at an angle, counter-clockwise.
func onCircle(centre Point, radiusMM, degrees float64) Point {
	sin, cos := SinCos(degrees)
	return Point{centre.X + radiusMM*cos, centre.Y - radiusMM*sin}
}
