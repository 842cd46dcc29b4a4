package png

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	"fusewright/render/scene"
)

// vec is a place or a direction in pixels.
type vec struct{ x, y float64 }

func (a vec) plus(b vec) vec               { return vec{a.x + b.x, a.y + b.y} }
func (a vec) minus(b vec) vec              { return vec{a.x - b.x, a.y - b.y} }
func (a vec) times(k float64) vec          { return vec{a.x * k, a.y * k} }
func (a vec) cross(b vec) float64          { return a.x*b.y - a.y*b.x }
func (a vec) dot(b vec) float64            { return a.x*b.x + a.y*b.y }
func (a vec) towards(b vec, k float64) vec { return vec{a.x + (b.x-a.x)*k, a.y + (b.y-a.y)*k} }

// line is a flattened part of a path.
type line struct {
	points []vec
	closed bool
}

// painter is the back-end.
type painter struct {
	picture *image.RGBA
	scale   float64 // pixels per mm
	raster  *vector.Rasterizer
	buffer  sfnt.Buffer
	glyphs  map[glyphKey][]line
}

type glyphKey struct {
	face scene.Face
	r    rune
}

func newPainter(picture *image.RGBA, scale float64) *painter {
	return &painter{
		picture: picture,
		scale:   scale,
		raster:  vector.NewRasterizer(0, 0),
		glyphs:  map[glyphKey][]line{},
	}
}

// Begin and End: groups are not seen in a picture.
func (p *painter) Begin(scene.Group) {}

// End does nothing.
func (p *painter) End() {}

// Path draws a line or an area.
func (p *painter) Path(path *scene.Path) {
	lines := p.flatten(path)
	if path.Fill != nil {
		pieces := make([][]vec, len(lines))
		for i, l := range lines {
			pieces[i] = l.points
		}
		p.fillWhole(pieces, path.Fill.Colour)
	}
	if path.Stroke != nil {
		p.fillPieces(strokePieces(lines, path.Stroke, p.scale), path.Stroke.Colour)
	}
}

// flatten turns a path into straight pieces in pixels.
func (p *painter) flatten(path *scene.Path) []line {
	var lines []line
	points := path.Points
	next := func() vec {
		at := vec{points[0].X * p.scale, points[0].Y * p.scale}
		points = points[1:]
		return at
	}
	for _, verb := range path.Verbs {
		last := len(lines) - 1
		switch verb {
		case scene.Move:
			lines = append(lines, line{points: []vec{next()}})
		case scene.Line:
			lines[last].points = append(lines[last].points, next())
		case scene.Cubic:
			from := lines[last].points[len(lines[last].points)-1]
			lines[last].points = flattenCubic(lines[last].points, from, next(), next(), next())
		case scene.Close:
			lines[last].closed = true
		}
	}
	return lines
}

// flattenCubic adds the points of a cubic Bézier curve so close together that
// no chord is further than a twentieth of a pixel from it: with n pieces the
// error is at most √3/18 · 6 · d / (8 n²) ≤ d·0.75/n², d being the larger second
// difference of the control points.
func flattenCubic(to []vec, a, b, c, d vec) []vec {
	const tolerance, most = 0.05, 400
	bend := math.Max(
		math.Hypot(a.x-2*b.x+c.x, a.y-2*b.y+c.y),
		math.Hypot(b.x-2*c.x+d.x, b.y-2*c.y+d.y))
	pieces := int(math.Min(most, math.Ceil(math.Sqrt(0.75*bend/tolerance))))
	for i := 1; i < pieces; i++ {
		t := float64(i) / float64(pieces)
		ab, bc, cd := a.towards(b, t), b.towards(c, t), c.towards(d, t)
		to = append(to, ab.towards(bc, t).towards(bc.towards(cd, t), t))
	}
	return append(to, d)
}

// Text draws one line of text as the outlines of its glyphs.
func (p *painter) Text(t scene.Text, _ float64) {
	start := t.Start()
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	em := t.SizeMM * p.scale
	x := 0.0 // in em
	var pieces [][]vec
	for _, r := range t.String {
		for _, contour := range p.glyph(t.Face, r) {
			piece := make([]vec, len(contour.points))
			for i, at := range contour.points {
				gx, gy := (x+at.x)*em, at.y*em
				piece[i] = vec{start.X*p.scale + gx*cos + gy*sin, start.Y*p.scale - gx*sin + gy*cos}
			}
			pieces = append(pieces, piece)
		}
		x += scene.TextWidthMM(string(r), 1, t.Face)
	}
	p.fillWhole(pieces, t.Colour)
}

// glyph returns the flattened outline of a glyph in em, y downwards.
func (p *painter) glyph(face scene.Face, r rune) []line {
	key := glyphKey{face, r}
	if outline, known := p.glyphs[key]; known {
		return outline
	}
	outline := p.loadGlyph(scene.Font(face), r)
	p.glyphs[key] = outline
	return outline
}

// loadGlyph reads an outline from the font. Clean lets only runes with a glyph
// through; were one missing all the same, nothing is drawn for it.
func (p *painter) loadGlyph(face *sfnt.Font, r rune) []line {
	index, err := face.GlyphIndex(&p.buffer, r)
	if err != nil {
		return nil
	}
	// A size that makes the flattening fine enough for large text.
	const em = 2048
	segments, err := face.LoadGlyph(&p.buffer, index, fixed.I(em), nil)
	if err != nil {
		return nil
	}
	at := func(q fixed.Point26_6) vec { return vec{float64(q.X) / 64, float64(q.Y) / 64} }
	var outline []line
	for _, segment := range segments {
		last := len(outline) - 1
		args := segment.Args
		switch segment.Op {
		case sfnt.SegmentOpMoveTo:
			outline = append(outline, line{points: []vec{at(args[0])}, closed: true})
		case sfnt.SegmentOpLineTo:
			outline[last].points = append(outline[last].points, at(args[0]))
		case sfnt.SegmentOpQuadTo:
			outline[last].points = flattenQuad(outline[last].points, at(args[0]), at(args[1]))
		case sfnt.SegmentOpCubeTo:
			from := outline[last].points[len(outline[last].points)-1]
			outline[last].points = flattenCubic(outline[last].points, from, at(args[0]), at(args[1]), at(args[2]))
		}
	}
	for _, contour := range outline {
		for i := range contour.points {
			contour.points[i] = contour.points[i].times(1.0 / em)
		}
	}
	return outline
}

// flattenQuad adds a quadratic curve of an outline in six pieces: glyph curves
// span at most a quarter turn, so the chords stay within 0.3 % of the letter.
func flattenQuad(to []vec, control, end vec) []vec {
	const pieces = 6
	from := to[len(to)-1]
	for i := 1; i < pieces; i++ {
		t := float64(i) / pieces
		to = append(to, from.towards(control, t).towards(control.towards(end, t), t))
	}
	return append(to, end)
}

func rgba(c scene.RGB) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }
