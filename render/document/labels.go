package document

import (
	"io"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/scene"
)

// Stock is a sheet of self-adhesive labels.
type Stock struct {
	Name               string
	Paper              Paper
	Columns, Rows      int
	WideMM, HighMM     float64 // of one label
	LeftMM, TopMM      float64 // paper's edge to the first label
	PitchXMM, PitchYMM float64 // from one label to the next
	Source             string
}

// Stocks that are sold under many names; the grids are common practice, no
// source. Measure a sheet before printing many.
var (
	stockA4 = Stock{"65 labels of 38.1 × 21.2 mm on A4", Paper{"A4", 210, 297}, 5, 13, 38.1, 21.2,
		4.75, 10.7, 40.6, 21.2, "common practice, no source"}
	stockLetter = Stock{"80 labels of 44.5 × 12.7 mm on Letter", Paper{"Letter", 215.9, 279.4}, 4, 20, 44.45, 12.7,
		7.2, 12.7, 52.35, 12.7, "common practice, no source"}
)

// StockFor is the label stock that goes with the design's sheet size.
func StockFor(sheetSize string) Stock {
	if PaperFor(sheetSize).Name == "Letter" {
		return stockLetter
	}
	return stockA4
}

// marker is the label of one end of a wire.
type marker struct {
	row       cutting.Row
	end, far  *circuit.Terminal
	atFrom    bool
	own, goes string // "W4  left lamp +", "X2:1 to S1:in"
}

// markers lists two labels a wire, in wire order.
func markers(rows []cutting.Row) []marker {
	var out []marker
	for _, r := range rows {
		for _, atFrom := range []bool{true, false} {
			m := marker{row: r, end: r.Wire.To, far: r.Wire.From, atFrom: atFrom}
			if atFrom {
				m.end, m.far = m.far, m.end
			}
			m.own = r.Number + "  " + r.Wire.Purpose()
			m.goes = m.end.Part.Ref + ":" + m.end.Name + " to " + m.far.Part.Ref + ":" + m.far.Name
			out = append(out, m)
		}
	}
	return out
}

// Labels lays two labels a wire on the label stock of the design's paper. The
// words run along the wire and stand on the label as often as it is high enough
// for, so that one of them faces the eye; the lower edge stays empty and goes
// under when the label is wrapped.
func Labels(r *harness.Review) []*scene.Sheet {
	stock := StockFor(r.Design.Sheet.Size)
	list := markers(cutting.List(r.Circuit))
	perSheet := stock.Columns * stock.Rows
	var sheets []*scene.Sheet
	for i, m := range list {
		if i%perSheet == 0 {
			sheets = append(sheets, labelSheet(r, stock))
		}
		n := i % perSheet
		drawLabel(sheets[len(sheets)-1], stock, n/stock.Columns, n%stock.Columns, m)
	}
	if len(sheets) == 0 {
		sheets = append(sheets, labelSheet(r, stock))
	}
	return sheets
}

// labelSheet begins a sheet; its words stand in the margin, off the labels.
func labelSheet(r *harness.Review, stock Stock) *scene.Sheet {
	s := scene.NewSheet(stock.Paper.Wide, stock.Paper.High, "Wire labels")
	text := "For sheets of " + stock.Name + ": print at 100 %. Battery isolated; local codes and makers' instructions first."
	s.TextAt(scene.Point{X: stock.LeftMM + 1, Y: stock.TopMM - 2.5},
		scene.Ellipsis(text, smallSizeMM, stock.Paper.Wide-2*stock.LeftMM-2, scene.Regular), smallQuiet)
	foot := r.Design.Title.Value
	if r.Design.Revision.Given() {
		foot += ", revision " + r.Design.Revision.Value
	}
	bottom := stock.TopMM + float64(stock.Rows-1)*stock.PitchYMM + stock.HighMM
	s.TextAt(scene.Point{X: stock.LeftMM + 1, Y: bottom + 4.5},
		scene.Ellipsis(foot, smallSizeMM, stock.Paper.Wide-2*stock.LeftMM-2-stampWideMM, scene.Regular), smallQuiet)
	return s
}

// Measures inside a label in millimetres.
const (
	labelPadMM  = 2.0
	labelLineMM = 3.9
	tailMM      = 3.0  // least empty edge that goes under
	stampWideMM = 30.0 // of the margin below, for the dossier's number
)

func drawLabel(s *scene.Sheet, stock Stock, row, column int, m marker) {
	r := scene.Rect{X: stock.LeftMM + float64(column)*stock.PitchXMM, Y: stock.TopMM + float64(row)*stock.PitchYMM,
		W: stock.WideMM, H: stock.HighMM}
	pen := scene.Pen(0.1).In(faint)
	end := "second end"
	if m.atFrom {
		end = "first end"
	}
	s.Begin(scene.Group{Class: "label", Title: "label of " + m.row.Number + ", " + end})
	s.Rect(r.Grow(-0.2), &pen, nil)
	wide, line := r.W-2*labelPadMM, labelLineMM
	wrapped := func(text string) []string { return scene.Wrap(text, bold.SizeMM, wide, bold.Face) }
	own := wrapped(shortened(m.own, func(text string) bool {
		w := wrapped(text)
		return len(w) == 1 || len(w) == 2 && len(w[1]) > 1 // no sign by itself
	}))
	lines := float64(len(own) + 1)
	times := int((r.H - labelPadMM - tailMM + 0.5) / (lines * line))
	if times == 0 { // once, closer together, the tail given up
		times, line = 1, min(line, (r.H-labelPadMM)/lines)
	}
	y := r.Y + labelPadMM
	put := func(text string, style scene.TextStyle) {
		s.TextIn(scene.Rect{X: r.X + labelPadMM, Y: y, W: wide, H: 3}, text, style)
		y += line
	}
	for range times {
		for _, text := range own {
			put(text, bold)
		}
		put(m.goes, small)
	}
	if again := m.row.Number + "  " + m.goes; times == 1 && y+line+tailMM-0.5 <= r.Y+r.H { // room to say it shorter
		put(scene.Ellipsis(again, bold.SizeMM, wide, bold.Face), bold)
	}
	s.End()
}

// LabelsCSV writes one row a label, for label printers.
func LabelsCSV(w io.Writer, rows []cutting.Row) error {
	head := []string{"wire", "end", "line 1", "line 2", "part", "place", "colour", "size"}
	var cells [][]string
	for _, m := range markers(rows) {
		end := "second"
		if m.atFrom {
			end = "first"
		}
		place := ""
		if m.end.Part.Place != nil {
			place = m.end.Part.Place.Name
		}
		cells = append(cells, []string{m.row.Number, end, m.own, m.goes, m.end.Part.Name, place, m.row.Colour, m.row.Size})
	}
	return writeCSV(w, head, cells)
}
