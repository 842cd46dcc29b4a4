package schematic

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/problem"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// paper is a sheet size in landscape with its zones.
type paper struct {
	name         string
	w, h         float64 // mm
	zonesX       int     // numbered
	zonesY       int     // lettered
	edge, border float64 // mm: paper to outer line, outer to inner line
}

// papers are the sizes: ISO 216 and ANSI/ASME Y14.1.
var papers = []paper{
	{"A4", 297, 210, 6, 4, 5, 5},
	{"A3", 420, 297, 8, 6, 5, 5},
	{"Letter", 279.4, 215.9, 6, 4, 5, 5},
	{"Tabloid", 431.8, 279.4, 8, 6, 5, 5},
}

// paperOf finds a size by name; "" is A4.
func paperOf(name string) (paper, error) {
	var names []string
	for _, p := range papers {
		if name == "" || strings.EqualFold(p.name, name) {
			return p, nil
		}
		names = append(names, p.name)
	}
	what := fmt.Sprintf("schematic: no sheet size %q (expected %s", name, strings.Join(names, ", "))
	if near := problem.Nearest(name, names); near != "" {
		what += fmt.Sprintf("; did you mean %q?", near)
	}
	return paper{}, fmt.Errorf("%s)", what)
}

// inner is the area inside the frame, in mm.
func (p paper) inner() scene.Rect {
	m := p.edge + p.border
	return scene.Rect{X: m, Y: m, W: p.w - 2*m, H: p.h - 2*m}
}

// field is where a circuit may stand: inside the frame, above the title strip,
// with its corner on the grid.
func (p paper) field() scene.Rect {
	in := p.inner()
	x := math.Ceil((in.X+2)/symbol.M) * symbol.M
	y := math.Ceil((in.Y+1)/symbol.M) * symbol.M
	return scene.Rect{X: x, Y: y, W: in.Right() - 2 - x, H: in.Bottom() - titleH - cautionH - y}
}

// columnsM and rowsM are the field in grid modules.
func (p paper) columnsM() int { return int(p.field().W / symbol.M) }
func (p paper) rowsM() int    { return int(p.field().H / symbol.M) }

// zone names the zone of a point: letter downwards, number to the right.
func (p paper) zone(at scene.Point) string {
	in := p.inner()
	col := int((at.X - in.X) / in.W * float64(p.zonesX))
	row := int((at.Y - in.Y) / in.H * float64(p.zonesY))
	col, row = min(max(col, 0), p.zonesX-1), min(max(row, 0), p.zonesY-1)
	return fmt.Sprintf("%c%d", 'A'+row, col+1)
}
