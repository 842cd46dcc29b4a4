package legend

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/compare"
	"fusewright/render/scene"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// goneFoot is from such a wire down to the foot of the words below it, in mm.
const goneFoot = lettering.GapMM + lettering.CapMM + 0.4

// goneRow draws a part that is gone and has no slot in the circuit: its symbol between the
// wires that went with it, crossed out. It is empty for all else.
func (l *Lists) goneRow(m *sign.Entry) column.Row {
	none := column.Row{Draw: func(*scene.Sheet, float64, float64) {}}
	if m.Change.What != compare.Removed || len(m.Refs) > 0 || len(m.Change.Old) == 0 {
		return none
	}
	old := l.Marks.Earlier
	at := slices.IndexFunc(old.Parts, func(p *circuit.Part) bool { return p.Ref == m.Change.Old[0] })
	if at < 0 || old.Parts[at].Kind == circuit.Block || old.Parts[at].Kind == circuit.Ground {
		return none
	}
	p := old.Parts[at]
	s := parts.SymbolOf(l.Set, p)
	if p.Kind == circuit.Relay {
		s = l.Set.Symbol(parts.ContactKind(p))
	}
	above := max(-s.Body.Y*legendScale, lettering.GapMM+lettering.CapMM) + 0.6
	below := max((s.Body.Y+s.Body.H)*legendScale, goneFoot+lettering.DescMM) + 0.6
	return column.Row{Height: above + below, Draw: func(sheet *scene.Sheet, x, y float64) {
		sheet.Begin(scene.Group{ID: sheet.UniqueID("gone-" + p.Ref), Class: "list", Title: "as it was: " + p.Ref + " " + parts.NameOf(p)})
		left, right, row := x+m.Indent(), x+column.Width-4, y+above
		mid := (left + right - s.Body.W*legendScale) / 2
		pen := symbol.NewPen(sheet, scene.Point{X: mid, Y: row})
		pen.Scale = legendScale
		s.Draw(pen, "")
		box := scene.Rect{X: mid, Y: row + s.Body.Y*legendScale, W: s.Body.W * legendScale, H: s.Body.H * legendScale}
		sign.CrossOut(sheet, "gone "+p.Ref, box)
		for _, w := range old.Wires {
			switch {
			case !slices.Contains(m.Change.Old, w.Number):
			case w.To.Part == p && left > 0:
				l.goneWire(sheet, w, w.From, left, mid, row, scene.Left)
				left = 0
			case w.From.Part == p && right > 0:
				l.goneWire(sheet, w, w.To, box.Right(), right, row, scene.Right)
				right = 0
			}
		}
		sheet.End()
	}}
}

// homeOf is the page of what fed a part that is gone, through whatever went with it; 0 where
// none is there.
func (l *Lists) homeOf(m *sign.Entry) int {
	if m.Change == nil || m.Change.What != compare.Removed || len(m.Change.Old) == 0 {
		return 0
	}
	old, ref := l.Marks.Earlier, m.Change.Old[0]
	for range old.Parts {
		at := slices.IndexFunc(old.Wires, func(w *circuit.Wire) bool { return w.To.Part.Ref == ref && !parts.IsReturn(w) })
		if at < 0 {
			return 0
		}
		from := old.Wires[at].From.Part
		for _, c := range l.arr.List {
			if c.Part.Name == from.Name && !c.Empty && c.Sheet > 0 {
				return c.Sheet - 1
			}
		}
		ref = from.Ref
	}
	return 0
}

// goneWire draws a wire that went with a part, its label above and what it led to below.
func (l *Lists) goneWire(sheet *scene.Sheet, w *circuit.Wire, end *circuit.Terminal, from, to, row float64, align scene.Align) {
	line := []scene.Point{{X: from, Y: row}, {X: to, Y: row}}
	sheet.Polyline(line, scene.Pen(symbol.LineMM))
	sign.Band(sheet, compare.Removed, "gone "+w.Number, line)
	size := ""
	if w.Spec.Size != nil {
		size = w.Spec.Size.Label
	}
	style := scene.TextStyle{SizeMM: lettering.SmallMM, Align: align, Colour: scene.Ink}
	x := map[scene.Align]float64{scene.Left: from, scene.Right: to}[align]
	write := func(words string, y float64) {
		sheet.TextAt(scene.Point{X: x, Y: y}, scene.Ellipsis(words, style.SizeMM, to-from-1, scene.Regular), style)
	}
	write(wording.Present([]string{w.Number, size}, " "), row-lettering.GapMM)
	write(parts.TerminalName(end), row+goneFoot)
}
