package dxf

import (
	"fusewright/render/scene"
)

// entity is one thing drawn. Exactly one of line, corners and text is set.
type entity struct {
	layer    string
	colour   int
	lineType string

	line    []scene.Point // open or closed line, in the file's y
	closed  bool
	corners []scene.Point // of a filled triangle
	text    *scene.Text
}

// drawing gathers entities; it is the back-end that the sheet is replayed to.
type drawing struct {
	widthMM, heightMM float64
	classes           []string // of the open groups
	used              map[string]bool
	lineTypes         []lineType
	entities          []entity
	colours           map[scene.RGB]int
}

func newDrawing(s *scene.Sheet) *drawing {
	return &drawing{widthMM: s.WidthMM, heightMM: s.HeightMM,
		used: map[string]bool{}, colours: map[scene.RGB]int{}}
}

// Begin opens a group; one without a class stays on the layer round it.
func (d *drawing) Begin(g scene.Group) {
	layer := d.layer()
	if g.Class != "" {
		layer = layerName(g.Class)
	}
	d.classes = append(d.classes, layer)
}

// End closes the group opened last.
func (d *drawing) End() { d.classes = d.classes[:len(d.classes)-1] }

func (d *drawing) layer() string {
	if len(d.classes) == 0 {
		return sheetLayer
	}
	return d.classes[len(d.classes)-1]
}

// add completes an entity with its layer and colour.
func (d *drawing) add(e entity, colour scene.RGB) {
	e.layer = d.layer()
	d.used[e.layer] = true
	number, known := d.colours[colour]
	if !known {
		number = colourNumber(colour)
		d.colours[colour] = number
	}
	e.colour = number
	if e.lineType == "" {
		e.lineType = continuous
	}
	d.entities = append(d.entities, e)
}

// Path adds the area first and the line over it.
func (d *drawing) Path(p *scene.Path) {
	parts := d.flatten(p)
	if p.Fill != nil && p.Fill.Colour != (scene.RGB{R: 255, G: 255, B: 255}) {
		d.area(parts, p)
	}
	if p.Stroke == nil {
		return
	}
	lineType := d.lineTypeOf(p.Stroke)
	for _, part := range parts {
		if len(part.points) > 1 {
			d.add(entity{line: part.points, closed: part.closed, lineType: lineType}, p.Stroke.Colour)
		}
	}
}

// area adds triangles, or the outline when there are holes or the outline
// crosses itself.
func (d *drawing) area(parts []outline, p *scene.Path) {
	var triangles [][3]scene.Point
	ok := len(parts) == 1
	if ok {
		triangles, ok = triangulate(parts[0].points)
	}
	for _, t := range triangles {
		if ok {
			d.add(entity{corners: []scene.Point{t[0], t[1], t[2]}}, p.Fill.Colour)
		}
	}
	if ok || p.Stroke != nil { // the line follows and shows the shape
		return
	}
	for _, part := range parts {
		if len(part.points) > 1 {
			d.add(entity{line: part.points, closed: true}, p.Fill.Colour)
		}
	}
}

// Text adds one line of text.
func (d *drawing) Text(t scene.Text, _ float64) {
	t.At = d.up(t.At)
	d.add(entity{text: &t}, t.Colour)
}

// up turns a place of the sheet, whose y runs down, into the file's.
func (d *drawing) up(p scene.Point) scene.Point { return scene.Point{X: p.X, Y: d.heightMM - p.Y} }

// entity prints one entity.
func (p *printer) entity(e entity) {
	switch {
	case e.text != nil:
		p.label(e)
	case e.corners != nil: // a SOLID has four corners; the last of a triangle is given twice
		p.common("SOLID", e)
		p.put(10, e.corners[0], 11, e.corners[1], 12, e.corners[2], 13, e.corners[2])
	case len(e.line) == 2:
		p.common("LINE", e)
		p.put(10, e.line[0], 11, e.line[1])
	default:
		p.polyline(e)
	}
}

func (p *printer) common(kind string, e entity) {
	p.put(0, kind, 8, e.layer)
	if e.lineType != continuous {
		p.put(6, e.lineType)
	}
	p.put(62, e.colour)
}

func (p *printer) polyline(e entity) {
	flags := 128 // dashes run on round corners
	if e.closed {
		flags |= 1
	}
	p.common("POLYLINE", e)
	p.put(66, 1, 10, scene.Point{}, 70, flags) // 66: vertices follow
	for _, at := range e.line {
		p.put(0, "VERTEX", 8, e.layer, 10, at)
	}
	p.put(0, "SEQEND", 8, e.layer)
}

// label prints a text. Its height in this format is that of capitals.
func (p *printer) label(e entity) {
	t := e.text
	p.common("TEXT", e)
	p.put(10, t.At, 40, scene.CapHeightMM(t.SizeMM, t.Face), 1, Escape(t.String))
	if t.Turn != 0 {
		p.put(50, t.Turn)
	}
	p.put(7, styles[t.Face].name)
	if t.Align != scene.Left {
		p.put(72, int(t.Align), 11, t.At) // 1 middle, 2 right, on the baseline
	}
}
