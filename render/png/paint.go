package png

import (
	"image"
	"image/color"
	"math"

	"github.com/golang/freetype/raster"
	"github.com/srwiley/rasterx"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"fusewright/render/scene"
)

// miterLimit is the longest spike of a sharp corner in line widths; the SVG and
// the PDF have the same.
const miterLimit = 10

// maxDashes is how many dashes one path may have; beyond it they could not be
// seen and the line is drawn solid.
const maxDashes = 20_000

// painter is the back-end. Places are rounded to the 64th of a pixel.
type painter struct {
	scale   float64 // pixels per mm
	raster  *raster.Rasterizer
	paint   *raster.RGBAPainter
	stroker *rasterx.Dasher
	buffer  sfnt.Buffer
	glyphs  map[glyphKey]sfnt.Segments
}

type glyphKey struct {
	face scene.Face
	r    rune
}

func newPainter(picture *image.RGBA, scale float64) *painter {
	wide, high := picture.Rect.Dx(), picture.Rect.Dy()
	p := &painter{scale: scale, raster: raster.NewRasterizer(wide, high), paint: raster.NewRGBAPainter(picture),
		glyphs: map[glyphKey]sfnt.Segments{}}
	p.raster.UseNonZeroWinding = true
	p.stroker = rasterx.NewDasher(wide, high, edges{p.raster})
	return p
}

// edges lets a stroker hand its outlines to the rasteriser.
type edges struct{ *raster.Rasterizer }

func (e edges) Line(to fixed.Point26_6)              { e.Add1(to) }
func (edges) Draw()                                  {}
func (edges) GetPathExtent() (r fixed.Rectangle26_6) { return r }
func (edges) SetColor(any)                           {}
func (edges) SetWinding(bool)                        {}
func (edges) SetClip(image.Rectangle)                {}

// Begin and End: groups are not seen in a picture.
func (p *painter) Begin(scene.Group) {}

// End does nothing.
func (p *painter) End() {}

// ink colours what the rasteriser holds, and empties it.
func (p *painter) ink(c scene.RGB) {
	p.paint.SetColor(color.RGBA{c.R, c.G, c.B, 255})
	p.raster.Rasterize(p.paint)
	p.raster.Clear()
}

// Path draws a line or an area.
func (p *painter) Path(path *scene.Path) {
	if path.Fill != nil {
		p.trace(&rasterx.Filler{Scanner: edges{p.raster}}, path)
		p.ink(path.Fill.Colour)
	}
	if s := path.Stroke; s != nil {
		width, end, corner := fixed.Int26_6(math.Round(s.WidthMM*p.scale*64)), rasterx.ButtCap, rasterx.GapFunc(mitre)
		if s.Round {
			end, corner = rasterx.RoundCap, rasterx.RoundGap
		}
		p.stroker.SetStroke(max(width, 2), miterLimit*64, end, end, corner, rasterx.Round, p.dashes(path), 0)
		p.trace(p.stroker, path)
		p.ink(s.Colour)
	}
}

// mitre fills the outer side of a corner between the edges of its two lines. The
// stroker has a mitre of its own, whose whole numbers overflow on long lines.
func mitre(to rasterx.Adder, at, from, edge fixed.Point26_6) {
	fx, fy, ex, ey := float64(from.X), float64(from.Y), float64(edge.X), float64(edge.Y)
	cos := (fx*ex + fy*ey) / math.Sqrt((fx*fx+fy*fy)*(ex*ex+ey*ey))
	if half := math.Sqrt((1 + cos) / 2); half*miterLimit >= 1 { // of the angle between the edges
		to.Line(at.Add(fixed.Point26_6{X: fixed.Int26_6(math.Round((fx + ex) / (1 + cos))),
			Y: fixed.Int26_6(math.Round((fy + ey) / (1 + cos)))}))
	}
	to.Line(at.Add(edge))
}

// dashes are the dashes of a path in pixels; nil = it is drawn solid.
func (p *painter) dashes(path *scene.Path) []float64 {
	sum, length := 0.0, 0.0
	var dashes []float64
	for _, mm := range path.Stroke.Dash {
		sum += mm
		dashes = append(dashes, max(math.Round(mm*p.scale*64), 1)/64)
	}
	for i := 1; i < len(path.Points); i++ {
		length += math.Hypot(path.Points[i].X-path.Points[i-1].X, path.Points[i].Y-path.Points[i-1].Y)
	}
	if len(dashes)%2 == 1 { // PDF and SVG go on with the gaps for dashes
		dashes = append(dashes, dashes...)
	}
	if length/sum*float64(len(path.Stroke.Dash)) > maxDashes {
		return nil
	}
	return dashes
}

// trace hands a path on in pixels. A line without length is a dot where its ends
// are round.
func (p *painter) trace(to rasterx.Adder, path *scene.Path) {
	var first fixed.Point26_6
	open, dot := false, false
	end := func(closed bool) {
		if open && dot {
			to.Line(first.Add(fixed.Point26_6{X: 1}))
		}
		if open {
			to.Stop(closed)
		}
		open = false
	}
	for verb, points := range path.Steps() {
		var at [3]fixed.Point26_6
		for i, point := range points {
			at[i] = p.at(point.X*p.scale, point.Y*p.scale)
			dot = dot && at[i] == first
		}
		switch verb {
		case scene.Move:
			end(false)
			first, open, dot = at[0], true, path.Stroke != nil && path.Stroke.Round
			to.Start(first)
		case scene.Line:
			to.Line(at[0])
		case scene.Cubic:
			to.CubeBezier(at[0], at[1], at[2])
		case scene.Close:
			end(true)
		}
	}
	end(false)
}

// at rounds a place in pixels.
func (p *painter) at(x, y float64) fixed.Point26_6 {
	return fixed.Point26_6{X: fixed.Int26_6(math.Round(x * 64)), Y: fixed.Int26_6(math.Round(y * 64))}
}

// Text draws one line of text as the outlines of its glyphs.
func (p *painter) Text(t scene.Text, _ float64) {
	start := t.Start()
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	em := t.SizeMM * p.scale
	x := 0.0 // in em
	place := func(q fixed.Point26_6) fixed.Point26_6 {
		gx, gy := (x+float64(q.X)/(64*glyphEm))*em, float64(q.Y)/(64*glyphEm)*em
		return p.at(start.X*p.scale+gx*cos+gy*sin, start.Y*p.scale-gx*sin+gy*cos)
	}
	for _, r := range t.String {
		for _, s := range p.glyph(t.Face, r) {
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				p.raster.Start(place(s.Args[0]))
			case sfnt.SegmentOpLineTo:
				p.raster.Add1(place(s.Args[0]))
			case sfnt.SegmentOpQuadTo:
				p.raster.Add2(place(s.Args[0]), place(s.Args[1]))
			case sfnt.SegmentOpCubeTo:
				p.raster.Add3(place(s.Args[0]), place(s.Args[1]), place(s.Args[2]))
			}
		}
		x += scene.TextWidthMM(string(r), 1, t.Face)
	}
	p.ink(t.Colour)
}

// glyphEm is the size in pixels that outlines are read at.
const glyphEm = 2048

// glyph is the outline of a glyph. Clean lets only runes with a glyph through;
// were one missing all the same, nothing is drawn for it.
func (p *painter) glyph(face scene.Face, r rune) sfnt.Segments {
	key := glyphKey{face, r}
	if outline, known := p.glyphs[key]; known {
		return outline
	}
	var outline sfnt.Segments
	font := scene.Font(face)
	if index, err := font.GlyphIndex(&p.buffer, r); err == nil {
		if segments, err := font.LoadGlyph(&p.buffer, index, fixed.I(glyphEm), nil); err == nil {
			outline = append(outline, segments...)
		}
	}
	p.glyphs[key] = outline
	return outline
}
