// Package dxf writes a scene sheet as an ASCII DXF drawing of release 12, the
// oldest form that drawing programs and cutters of today all read. One unit is
// one millimetre, x runs to the right and y upwards from the lower left corner
// of the sheet.
//
// Curves become straight pieces that stay within ToleranceMM of the curve.
// Lines are centre lines: this release has no line widths. Filled areas become
// SOLID triangles; areas in paper white, which only hide what lies below, are
// left out, and areas with holes keep their outline alone. Each class of group
// (see scene.Group) is a layer, so that a cutter can take "board" without
// "label". Text stays text.
//
// Source of the format: the published DXF reference of release 12; what was
// written from memory of it is checked by a reader in the tests.
package dxf

import (
	"bufio"
	"io"
	"math"
	"strconv"

	"fusewright/render/scene"
)

// ToleranceMM is how far a straight piece may lie from the curve it stands for:
// a hundredth of a millimetre, a tenth of a laser's cut.
const ToleranceMM = 0.01

// Write writes one sheet. The sheet is checked first (scene.Sheet.Validate), so
// on an error about the drawing nothing has been written.
func Write(w io.Writer, sheet *scene.Sheet) error {
	if err := sheet.Validate(); err != nil {
		return err
	}
	d := newDrawing(sheet)
	if err := sheet.Replay(d); err != nil {
		return err
	}
	p := &printer{w: bufio.NewWriter(w)}
	p.header(d)
	p.tables(d)
	p.begin("ENTITIES")
	for _, e := range d.entities {
		p.entity(e)
	}
	p.end()
	p.put(0, "EOF")
	return p.w.Flush()
}

// printer writes groups: a code on one line, its value on the next. Write
// errors stick in the buffered writer and come out at Flush.
type printer struct{ w *bufio.Writer }

// put writes codes with their values: texts, whole numbers, lengths or angles,
// and places, whose y and z follow under code + 10 and code + 20.
func (p *printer) put(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		code, text := pairs[i].(int), ""
		switch v := pairs[i+1].(type) {
		case string:
			text = v
		case int:
			text = strconv.Itoa(v)
		case float64:
			text = number(v)
		case scene.Point:
			p.put(code, v.X, code+10, v.Y, code+20, 0.0)
			continue
		}
		p.w.WriteString(strconv.Itoa(code) + "\n" + text + "\n")
	}
}

func (p *printer) begin(section string) { p.put(0, "SECTION", 2, section) }

func (p *printer) end() { p.put(0, "ENDSEC") }

// header says the release and how large the drawing is.
func (p *printer) header(d *drawing) {
	corner := scene.Point{X: d.widthMM, Y: d.heightMM}
	p.begin("HEADER")
	p.put(9, "$ACADVER", 1, "AC1009", 9, "$INSBASE", 10, scene.Point{}, 9, "$EXTMIN", 10, scene.Point{}, 9, "$EXTMAX", 10, corner,
		9, "$LIMMIN", 10, 0.0, 20, 0.0, 9, "$LIMMAX", 10, corner.X, 20, corner.Y, 9, "$LTSCALE", 40, 1.0,
		9, "$PLINEGEN", 70, 1) // dashes run on round corners
	p.end()
}

// number prints a length or angle to a tenth of a micrometre, always with a
// point: some readers tell reals from integers by it.
func number(v float64) string {
	rounded := math.Round(v*1e4) / 1e4
	if rounded == 0 {
		rounded = 0 // and never "-0"
	}
	text := strconv.FormatFloat(rounded, 'f', -1, 64)
	if rounded == math.Trunc(rounded) {
		text += ".0"
	}
	return text
}
