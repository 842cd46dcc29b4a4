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
	p.text(0, "EOF")
	return p.w.Flush()
}

// printer writes groups: a code on one line, its value on the next. Write
// errors stick in the buffered writer and come out at Flush.
type printer struct{ w *bufio.Writer }

func (p *printer) text(code int, value string) {
	p.w.WriteString(strconv.Itoa(code))
	p.w.WriteByte('\n')
	p.w.WriteString(value)
	p.w.WriteByte('\n')
}

func (p *printer) whole(code, value int) { p.text(code, strconv.Itoa(value)) }

func (p *printer) real(code int, value float64) { p.text(code, number(value)) }

// point writes x and y under code and code+10.
func (p *printer) point(code int, at scene.Point) {
	p.real(code, at.X)
	p.real(code+10, at.Y)
}

func (p *printer) begin(section string) {
	p.text(0, "SECTION")
	p.text(2, section)
}

func (p *printer) end() { p.text(0, "ENDSEC") }

// header says the release and how large the drawing is.
func (p *printer) header(d *drawing) {
	p.begin("HEADER")
	p.text(9, "$ACADVER")
	p.text(1, "AC1009")
	for _, corner := range []struct {
		name string
		at   scene.Point
	}{
		{"$INSBASE", scene.Point{}},
		{"$EXTMIN", scene.Point{}},
		{"$EXTMAX", scene.Point{X: d.widthMM, Y: d.heightMM}},
	} {
		p.text(9, corner.name)
		p.point(10, corner.at)
		p.real(30, 0)
	}
	p.text(9, "$LIMMIN")
	p.point(10, scene.Point{})
	p.text(9, "$LIMMAX")
	p.point(10, scene.Point{X: d.widthMM, Y: d.heightMM})
	p.text(9, "$LTSCALE")
	p.real(40, 1)
	p.text(9, "$PLINEGEN") // dashes run on round corners
	p.whole(70, 1)
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
