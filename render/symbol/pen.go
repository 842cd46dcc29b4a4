package symbol

import "fusewright/render/scene"

// Pen draws in modules about an origin on a sheet.
type Pen struct {
	Sheet  *scene.Sheet
	Origin scene.Point // mm
	Scale  float64     // mm per unit; 0 means M
	WidthM float64     // line width in mm; 0 means LineMM

	mirrored bool
}

// NewPen draws on the sheet about an origin in mm.
func NewPen(sheet *scene.Sheet, origin scene.Point) *Pen {
	return &Pen{Sheet: sheet, Origin: origin, Scale: M, WidthM: LineMM}
}

// Mirrored is the pen that draws from right to left.
func (p *Pen) Mirrored() *Pen {
	q := *p
	q.mirrored = true
	return &q
}

// At turns a point in modules into one on the sheet.
func (p *Pen) At(x, y float64) scene.Point {
	if p.mirrored {
		x = -x
	}
	return scene.Point{X: p.Origin.X + x*p.Scale, Y: p.Origin.Y + y*p.Scale}
}

func (p *Pen) points(xy []float64) []scene.Point {
	list := make([]scene.Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		list = append(list, p.At(xy[i], xy[i+1]))
	}
	return list
}

// Line draws through points given as x, y, x, y, ...
func (p *Pen) Line(xy ...float64) { p.Sheet.Polyline(p.points(xy), scene.Pen(p.WidthM)) }

// Thick draws a line of a given width in mm, thinner at a smaller scale.
func (p *Pen) Thick(widthMM float64, xy ...float64) {
	p.Sheet.Polyline(p.points(xy), scene.Pen(max(widthMM*p.Scale/M, ThinMM)))
}

// Link draws a mechanical link: thin and dashed.
func (p *Pen) Link(xy ...float64) {
	p.Sheet.Polyline(p.points(xy), scene.Pen(ThinMM).Dashed(1, 0.6))
}

// Area draws a filled shape.
func (p *Pen) Area(xy ...float64) {
	pen := scene.Pen(ThinMM)
	p.Sheet.Polygon(p.points(xy), &pen, scene.Paint(scene.Ink))
}

// Shape draws a closed line.
func (p *Pen) Shape(xy ...float64) {
	pen := scene.Pen(p.WidthM)
	p.Sheet.Polygon(p.points(xy), &pen, nil)
}

// Rect draws a rectangle.
func (p *Pen) Rect(x, y, w, h float64) {
	pen := scene.Pen(p.WidthM)
	at := p.At(x, y)
	p.Sheet.Rect(scene.Rect{X: at.X, Y: at.Y, W: w * p.Scale, H: h * p.Scale}, &pen, nil)
}

// Circle draws a circle.
func (p *Pen) Circle(x, y, r float64) {
	pen := scene.Pen(p.WidthM)
	p.Sheet.Circle(p.At(x, y), r*p.Scale, &pen, nil)
}

// Arc draws a part of a circle; degrees counter-clockwise from three o'clock.
func (p *Pen) Arc(x, y, r, start, sweep float64) {
	p.Sheet.Arc(p.At(x, y), r*p.Scale, start, sweep, scene.Pen(p.WidthM))
}

// Dot draws a junction dot.
func (p *Pen) Dot(x, y float64) { p.Sheet.Dot(p.At(x, y), DotMM, scene.Ink) }

// Letter writes a sign centred on a point, its size in mm at the usual scale;
// it never gets smaller than ShortSign.
func (p *Pen) Letter(x, y float64, text string, sizeMM float64) {
	at := p.At(x, y)
	sizeMM = max(sizeMM*p.Scale/M, ShortSign)
	at.Y += scene.CapHeightMM(sizeMM, scene.Regular) / 2
	p.Sheet.TextAt(at, text, scene.TextStyle{SizeMM: sizeMM, Align: scene.Middle, Colour: scene.Ink})
}

// sine draws one wave of a width about a point.
func (p *Pen) sine(x, y, w float64) {
	path := scene.Path{Stroke: &scene.Stroke{WidthMM: ThinMM, Colour: scene.Ink}}
	path.MoveTo(p.At(x-w/2, y))
	path.CubicTo(p.At(x-w/4, y-w*0.45), p.At(x-w/4, y-w*0.45), p.At(x, y))
	path.CubicTo(p.At(x+w/4, y+w*0.45), p.At(x+w/4, y+w*0.45), p.At(x+w/2, y))
	p.Sheet.Path(path)
}

// direct draws the sign of direct current about a point: a line over dashes.
func (p *Pen) direct(x, y, w float64) {
	p.Thick(ThinMM, x-w/2, y, x+w/2, y)
	for k := range 3 {
		left := x - w/2 + float64(k)*w*0.375
		p.Thick(ThinMM, left, y+0.25, left+w*0.25, y+0.25)
	}
}

// arrow draws a thin arrow with a filled head.
func (p *Pen) arrow(x, y, dx, dy float64) {
	p.Thick(ThinMM, x, y, x+dx, y+dy)
	tipX, tipY := x+dx, y+dy
	p.Area(tipX, tipY, tipX-dx*0.45-dy*0.25, tipY-dy*0.45+dx*0.25, tipX-dx*0.45+dy*0.25, tipY-dy*0.45-dx*0.25)
}
