// Package frame draws what all drawing sheets share: the border with its zones,
// the title block and the caution. It knows paper and words, nothing of what is
// drawn inside.
package frame

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
)

// Measures in millimetres; text sizes are those of the em square, so that
// capitals are at least 2.0 mm high.
const (
	SmallMM  = 2.95
	NormalMM = 3.3
	TitleMM  = 4.6
	LineMM   = 3.6 // from line to line of small text

	TitleW   = 140.0 // the title block, at the lower right
	TitleH   = 34.0
	cautionH = 9.0 // the caution, at the lower left: two lines
	edgeMM   = 5.0 // paper to outer line
	borderMM = 5.0 // outer to inner line
)

// Grey is for words that only name what stands beside them.
var Grey = scene.RGB{R: 70, G: 70, B: 70}

// Paper is a sheet size lying on its side, with its zones.
type Paper struct {
	Name           string
	W, H           float64 // mm
	zonesX, zonesY int
}

// papers are the sizes: ISO 216 and ANSI/ASME Y14.1.
var papers = []Paper{
	{"A4", 297, 210, 6, 4},
	{"A3", 420, 297, 8, 6},
	{"Letter", 279.4, 215.9, 6, 4},
	{"Tabloid", 431.8, 279.4, 8, 6},
}

// PaperOf finds a size by name; "" is A4.
func PaperOf(name string) (Paper, error) {
	var names []string
	for _, p := range papers {
		if name == "" || strings.EqualFold(p.Name, name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	what := fmt.Sprintf("no sheet size %q (expected %s", name, strings.Join(names, ", "))
	if near := problem.Nearest(name, names); near != "" {
		what += fmt.Sprintf("; did you mean %q?", near)
	}
	return Paper{}, fmt.Errorf("%s)", what)
}

// Inner is the area inside the frame.
func (p Paper) Inner() scene.Rect {
	m := edgeMM + borderMM
	return scene.Rect{X: m, Y: m, W: p.W - 2*m, H: p.H - 2*m}
}

// Field is where a drawing may stand: inside the frame, above the title block.
func (p Paper) Field() scene.Rect {
	in := p.Inner()
	return scene.Rect{X: in.X + 3, Y: in.Y + 3, W: in.W - 6, H: in.H - TitleH - 5}
}

// Grid is where a drawing on a grid may stand: inside the frame, above the title
// block, its corner on a multiple of the module.
func (p Paper) Grid(moduleMM float64) scene.Rect {
	in := p.Inner()
	x := math.Ceil((in.X+2)/moduleMM) * moduleMM
	y := math.Ceil((in.Y+1)/moduleMM) * moduleMM
	return scene.Rect{X: x, Y: y, W: in.Right() - 2 - x, H: in.Bottom() - TitleH - 1 - y}
}

// Strip is the free area at the left of the title block, above the caution.
func (p Paper) Strip() scene.Rect {
	in := p.Inner()
	return scene.Rect{X: in.X + 3, Y: in.Bottom() - TitleH, W: in.W - TitleW - 6, H: TitleH - cautionH}
}

// Title is what the title block says. Fields come in rows of three; the third
// column is the narrowest.
type Title struct {
	Title, Kind string
	Fields      [3][3]Field
	Caution     string
}

// Zone names the zone of a point: letter downwards, number to the right.
func (p Paper) Zone(at scene.Point) string {
	in := p.Inner()
	col := int((at.X - in.X) / in.W * float64(p.zonesX))
	row := int((at.Y - in.Y) / in.H * float64(p.zonesY))
	col, row = min(max(col, 0), p.zonesX-1), min(max(row, 0), p.zonesY-1)
	return fmt.Sprintf("%c%d", 'A'+row, col+1)
}

// Field is one entry of the title block.
type Field struct{ Name, Value string }

// TitleOf is the title block of a design and what was found on it. The kind, the
// number of the sheet and the field between findings and size are still to fill in.
func TitleOf(d *design.Design, found []*finding.Finding, size string) Title {
	practice, accepted := "", 0
	if d.Practice != nil {
		practice = d.Practice.Name
	}
	for _, f := range found {
		if f.Accepted != "" {
			accepted++
		}
	}
	counts := fmt.Sprintf("%d danger · %d fault · %d advice · %d accepted", finding.Count(found, finding.Danger),
		finding.Count(found, finding.Fault), finding.Count(found, finding.Advice), accepted)
	return Title{Title: d.Title.Value, Caution: d.Caution(), Fields: [3][3]Field{
		{{"vehicle", d.Vehicle.Value}, {"revision", d.Revision.Value}, {"date", d.Date.Value}},
		{{"practice", practice}, {"drawn by", d.Author.Value}, {"sheet", ""}},
		{{"findings", counts}, {}, {"size", size}},
	}}
}

// Draw draws the frame with its zones, the title block and the caution.
func Draw(s *scene.Sheet, p Paper, t Title) {
	s.Begin(scene.Group{ID: s.UniqueID("frame"), Class: "frame", Title: "frame and title block"})
	in := p.Inner()
	thin, thick := scene.Pen(0.25), scene.Pen(0.7)
	s.Rect(in.Grow(borderMM), &thin, nil)
	s.Rect(in, &thick, nil)
	zones(s, p, in)
	titleBlock(s, in, t)
	lines := scene.Wrap(t.Caution, SmallMM, in.W-TitleW-6, scene.Regular)
	for i, line := range lines {
		y := in.Bottom() - 2 - float64(len(lines)-1-i)*LineMM
		s.TextAt(scene.Point{X: in.X + 3, Y: y}, line, scene.TextStyle{SizeMM: SmallMM, Colour: scene.Ink})
	}
	s.End()
}

func zones(s *scene.Sheet, p Paper, in scene.Rect) {
	thin := scene.Pen(0.25)
	small := scene.TextStyle{SizeMM: SmallMM, Align: scene.Middle, Colour: Grey}
	for i := range p.zonesX {
		w := in.W / float64(p.zonesX)
		x := in.X + w*float64(i)
		for _, y := range []float64{in.Y - borderMM, in.Bottom()} {
			if i > 0 {
				s.Line(scene.Point{X: x, Y: y}, scene.Point{X: x, Y: y + borderMM}, thin)
			}
			s.TextIn(scene.Rect{X: x, Y: y, W: w, H: borderMM}, fmt.Sprint(i+1), small)
		}
	}
	for i := range p.zonesY {
		h := in.H / float64(p.zonesY)
		y := in.Y + h*float64(i)
		for _, x := range []float64{in.X - borderMM, in.Right()} {
			if i > 0 {
				s.Line(scene.Point{X: x, Y: y}, scene.Point{X: x + borderMM, Y: y}, thin)
			}
			s.TextIn(scene.Rect{X: x, Y: y, W: borderMM, H: h}, string(rune('A'+i)), small)
		}
	}
}

func titleBlock(s *scene.Sheet, in scene.Rect, t Title) {
	box := scene.Rect{X: in.Right() - TitleW, Y: in.Bottom() - TitleH, W: TitleW, H: TitleH}
	thick, thin := scene.Pen(0.5), scene.Pen(0.25)
	s.Rect(box, &thick, nil)
	kind := scene.TextStyle{SizeMM: NormalMM, Align: scene.Right, Colour: Grey}
	kindW := kind.Width(t.Kind) + 4
	head := scene.Rect{X: box.X + 2, Y: box.Y, W: box.W - 2 - kindW, H: headH}
	title := t.Title
	if title == "" {
		title = "untitled"
	}
	drawTitle(s, head, title)
	s.TextIn(scene.Rect{X: head.Right(), Y: box.Y, W: kindW - 2, H: headH}, t.Kind, kind)
	columns := columnsOf(t.Fields)
	for r, row := range t.Fields {
		y := box.Y + headH + rowH*float64(r)
		s.Line(scene.Point{X: box.X, Y: y}, scene.Point{X: box.Right(), Y: y}, thin)
		for c, f := range row {
			cell := scene.Rect{X: box.X + columns[c] + padMM, Y: y, W: columns[c+1] - columns[c] - 2*padMM, H: rowH}
			field(s, cell, f)
		}
	}
	for _, x := range columns[1:3] {
		s.Line(scene.Point{X: box.X + x, Y: box.Y + headH}, scene.Point{X: box.X + x, Y: box.Bottom()}, thin)
	}
}
