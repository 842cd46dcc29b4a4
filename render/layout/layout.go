// Package layout draws the loom as it lies on the board (trade: formboard or
// nail board): to a stated scale on framed sheets, with dimensions, nails,
// clamps, covers and the wires of every run and end; and at full size, parted
// over pages to be taped together. It takes finished geometry from package
// formboard and computes nothing electrical.
package layout

import (
	"fmt"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// drawing is the set of sheets of one board.
type drawing struct {
	review *harness.Review
	board  *formboard.Board
	paper  frame.Paper
	unit   lengths.Unit
	sheets []*scene.Sheet
	scales []string // by sheet, for the title block
}

// Draw draws the board on framed sheets: for each section its picture with the
// table of its runs; where the wires end stands in the connection table. The error
// names a sheet size that does not exist or a section that fits at no scale.
func Draw(r *harness.Review, b *formboard.Board) ([]*scene.Sheet, error) {
	paper, err := frame.PaperOf(r.Design.Sheet.Size)
	if err != nil {
		return nil, fmt.Errorf("layout: %w", err)
	}
	d := &drawing{review: r, board: b, paper: paper, unit: lengths.Of(r.Design)}
	for _, s := range b.Sections {
		if err := d.section(s); err != nil {
			return nil, err
		}
	}
	for i := range d.sheets {
		d.frame(i)
	}
	return d.sheets, nil
}

// newSheet begins a sheet.
func (d *drawing) newSheet(title, scale string) *scene.Sheet {
	s := scene.NewSheet(d.paper.W, d.paper.H, title)
	s.ID = fmt.Sprintf("layout-%d", len(d.sheets)+1)
	d.sheets = append(d.sheets, s)
	d.scales = append(d.scales, scale)
	return s
}

// section draws one section: the picture, the legend, the tables.
func (d *drawing) section(s *formboard.Section) error {
	p, err := d.fit(s)
	if err != nil {
		return err
	}
	title := "Layout"
	if len(d.board.Sections) > 1 {
		title = fmt.Sprintf("Layout, section %d", s.Number)
	}
	sheet := d.newSheet(title, p.name)
	field := d.paper.Field()
	bottom := p.place(sheet, field)
	d.legend(sheet, p)
	f := &flow{sheet: sheet, slots: []scene.Rect{below(field, bottom+1.5)}, next: func() (*scene.Sheet, []scene.Rect) {
		return d.newSheet(title+", tables", "none"), []scene.Rect{d.tableField()}
	}}
	f.put(runTable(d.unit, s))
	f.put(d.notes(p))
	return nil
}

// tableField is the area for tables on a sheet without a picture.
func (d *drawing) tableField() scene.Rect { return d.paper.Field() }

func below(r scene.Rect, y float64) scene.Rect {
	return scene.Rect{X: r.X, Y: y, W: r.W, H: max(0, r.Bottom()-y)}
}

// frame draws the frame of a sheet, now that their number is known.
func (d *drawing) frame(i int) {
	t := frame.TitleOf(d.review.Design, d.review.Findings, d.paper.Name)
	t.Kind = "Layout"
	t.Fields[1][2].Value = fmt.Sprintf("%d of %d", i+1, len(d.sheets))
	t.Fields[2][1] = frame.Field{Name: "scale", Value: d.scales[i]}
	frame.Draw(d.sheets[i], d.paper, t)
}
