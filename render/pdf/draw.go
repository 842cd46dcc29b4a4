package pdf

import (
	"strconv"

	"fusewright/render/scene"
)

const pointsPerMM = 72 / 25.4

// Path draws a line or an area. The numbers are written here and not through
// gofpdf's path calls, which round to a hundredth of a point and format through
// reflection: both show on a sheet of some thousand lines.
func (p *printer) Path(path *scene.Path) {
	if len(path.Verbs) == 0 || path.Stroke == nil && path.Fill == nil {
		return
	}
	if len(p.groups) > 0 {
		p.cover(path.Bounds())
	}
	if path.Fill != nil {
		c := path.Fill.Colour
		p.file.SetFillColor(int(c.R), int(c.G), int(c.B))
	}
	if path.Stroke != nil {
		p.pen(path.Stroke)
	}
	buffer := make([]byte, 0, 24*len(path.Points)+16)
	for verb, points := range path.Steps() {
		for _, point := range points {
			buffer = p.point(buffer, point)
		}
		buffer = append(buffer, operators[verb], '\n')
	}
	buffer = append(buffer, paintOperator(path)...)
	p.file.RawWriteStr(string(buffer))
}

// operators of the path steps (ISO 32000-1, 8.5.2).
var operators = [...]byte{scene.Move: 'm', scene.Line: 'l', scene.Cubic: 'c', scene.Close: 'h'}

// paintOperator fills by the nonzero winding rule (ISO 32000-1, 8.5.3), as the
// other back-ends do.
func paintOperator(path *scene.Path) string {
	switch {
	case path.Stroke == nil:
		return "f"
	case path.Fill == nil:
		return "S"
	}
	return "B"
}

// point appends a place in PDF's units, y upwards, to a thousandth of a point.
func (p *printer) point(buffer []byte, at scene.Point) []byte {
	buffer = strconv.AppendFloat(buffer, at.X*pointsPerMM, 'f', 3, 64)
	buffer = append(buffer, ' ')
	buffer = strconv.AppendFloat(buffer, (p.height-at.Y)*pointsPerMM, 'f', 3, 64)
	return append(buffer, ' ')
}

// pen sets the line style where it differs from what the page already has.
func (p *printer) pen(s *scene.Stroke) {
	state := strokeState{s.WidthMM, s.Colour, s.Round, len(s.Dash) > 0}
	if state == p.stroke && !state.dashed {
		return
	}
	p.stroke = state
	p.file.SetLineWidth(s.WidthMM)
	p.file.SetDrawColor(int(s.Colour.R), int(s.Colour.G), int(s.Colour.B))
	end, join := "butt", "miter"
	if s.Round {
		end, join = "round", "round"
	}
	p.file.SetLineCapStyle(end)
	p.file.SetLineJoinStyle(join)
	p.file.SetDashPattern(s.Dash, 0)
}

// Text draws one line of text, its anchor by the scene's own measure.
func (p *printer) Text(t scene.Text, _ float64) {
	if len(p.groups) > 0 {
		p.cover(scene.TextBox(t))
	}
	p.file.SetFont(familyOf(t.Face), "", 10)
	p.file.SetFontUnitSize(t.SizeMM)
	if t.Colour != p.colour {
		p.file.SetTextColor(int(t.Colour.R), int(t.Colour.G), int(t.Colour.B))
		p.colour = t.Colour
	}
	start := t.Start()
	if t.Turn == 0 {
		p.file.Text(start.X, start.Y, t.String)
		return
	}
	p.file.TransformBegin()
	p.file.TransformRotate(t.Turn, start.X, start.Y)
	p.file.Text(start.X, start.Y, t.String)
	p.file.TransformEnd()
}
