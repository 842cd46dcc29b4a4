package legend

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// groundPanel lists each ground point with the wires that land on it.
func (l *Lists) groundPanel() []*column.List {
	list := &column.List{Title: "Ground points and wires", Grounds: true}
	for _, p := range l.Circuit.Parts {
		if p.Kind == circuit.Ground || (p.Kind == circuit.Battery || p.Kind == circuit.Bank || p.Kind == circuit.Charger || p.Kind == circuit.Generator) && len(l.Wiring.Landed[p])+len(l.Wiring.Returns[p]) > 0 {
			if len(list.Rows) > 0 {
				list.Rows = append(list.Rows, column.Row{Height: 1.2, Draw: func(*scene.Sheet, float64, float64) {}})
			}
			list.Rows = append(list.Rows, together(l.groundRows(p))...)
			list.Wired = list.Wired || slices.ContainsFunc(l.Wiring.Returns[p], func(w *circuit.Wire) bool { return !l.drawnAtSource(w) })
		}
	}
	if len(list.Rows) == 0 {
		return nil
	}
	return []*column.List{list}
}

// together makes one row of rows that are short enough to stay in one slot.
func together(rows []column.Row) []column.Row {
	const most = 50.0
	if column.HeightOf(rows) > most {
		return rows
	}
	return []column.Row{{Height: column.HeightOf(rows), Draw: func(sheet *scene.Sheet, x, y float64) {
		for _, r := range rows {
			r.Draw(sheet, x, y)
			y += r.Height
		}
	}}}
}

// groundRows are the entries of one ground point: its sign and name, the wires
// that land on it, and those of its own wires that do not stand with the battery.
func (l *Lists) groundRows(p *circuit.Part) []column.Row {
	kind := parts.GroundKind(p)
	name := parts.NameOf(p)
	if p.Kind == circuit.Battery {
		name = "battery negative post"
	}
	if p.Kind == circuit.Bank {
		name += " negative post"
	}
	if p.Kind == circuit.Charger || p.Kind == circuit.Generator {
		name += " negative side"
	}
	if p.Place != nil {
		name += ", " + p.Place.Name
	}
	if p.Kind == circuit.Ground && !parts.IsGroundBlock(p) {
		name += ": through the frame to the battery"
	}
	left, top, flag := 8.0, 0.0, l.Signs.OfPart(p)
	if p.Kind != circuit.Ground {
		flag = 0 // the battery carries it
	}
	if flag > 0 {
		left, top = left+sign.Wide, max(sign.Radius-lettering.CapMM/2, 0)
	}
	head := column.TextRow(name, left+lettering.TextW(p.Ref+" ", scene.Bold), scene.Regular, scene.Ink)
	rows := []column.Row{{
		Height: top + max(head.Height, 4.6) + 0.6,
		Draw: func(sheet *scene.Sheet, x, y float64) {
			y += top
			at := scene.Point{X: x + 3, Y: y}
			if kind == symbol.Outgoing {
				at = scene.Point{X: x, Y: y + lettering.CapMM/2}
			}
			l.Set.Symbol(kind).Draw(symbol.NewPen(sheet, at), "")
			if p.Kind == circuit.Ground {
				l.Marks.Box(p.Ref, scene.Rect{X: x + 2, Y: y, W: 2, H: lettering.CapMM})
				l.Spots.Box(p.Ref, scene.Rect{X: x + 1, Y: y - 1, W: left + lettering.TextW(p.Ref, scene.Bold), H: lettering.CapMM + 2})
			}
			if flag > 0 {
				l.Signs.Draw(sheet, flag, x+left-sign.Wide/2-0.5, y+lettering.CapMM/2)
			}
			sheet.TextAt(scene.Point{X: x + left, Y: y + lettering.CapMM}, p.Ref, scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Colour: scene.Ink})
			head.Draw(sheet, x, y)
		},
	}}
	var numbers []string
	for _, w := range l.Wiring.Landed[p] {
		numbers = append(numbers, w.Number)
	}
	const perRow = 60 // keeps entries short enough to break over columns
	for some := range slices.Chunk(numbers, perRow) {
		rows = append(rows, column.TextRow(wording.Present(some, "  "), 8, scene.Regular, scene.Ink))
	}
	for _, w := range l.Wiring.Returns[p] {
		if !l.drawnAtSource(w) {
			rows = append(rows, l.groundWireRow(w))
		}
	}
	return rows
}

// drawnAtSource tells of the wires of ground points that stand with the battery.
func (l *Lists) drawnAtSource(w *circuit.Wire) bool {
	return slices.ContainsFunc(l.arr.Cells.List, func(c *cell.Cell) bool {
		return c.Part.Kind == circuit.Battery && slices.Contains(c.Returns, w)
	})
}

// groundWireRow draws the wire from a ground point to the next.
func (l *Lists) groundWireRow(w *circuit.Wire) column.Row {
	down := 4.0
	if l.Signs.OfWire(w) > 0 {
		down = 1.6 + 2*sign.Radius
	}
	return column.Row{Height: down + labels.GroundDrop + 0.4, Draw: func(sheet *scene.Sheet, x, y float64) {
		label := l.WireLabel(w, false)
		name := l.GroundName(w.To)
		end := x + max(9+lettering.TextW(wording.Present(label, " "), scene.Regular)+4, 9+lettering.TextW(name, scene.Regular))
		row := y + down
		sheet.Begin(scene.Group{ID: sheet.UniqueID("wire-" + w.Number), Class: "wire", Title: wording.Present(label, ", "), Of: w.Number,
			Desc: "return wire from " + w.From.Part.Ref + " to " + w.To.Part.Ref})
		line := []scene.Point{{X: x + 3, Y: row}, {X: end, Y: row}}
		l.Marks.Line(w.Number, line...)
		l.Spots.Way(w.Number, line...)
		sheet.Polyline(line, scene.Pen(symbol.WireMM))
		sheet.Polyline([]scene.Point{{X: x + 3, Y: row - 1}, {X: x + 3, Y: row + 1}}, scene.Pen(symbol.BarMM))
		style := scene.TextStyle{SizeMM: lettering.SmallMM, Colour: scene.Ink}
		left := x + 8
		if f := l.Signs.OfWire(w); f > 0 {
			l.Signs.Draw(sheet, f, x+3.8+sign.Wide/2, row-sign.Radius-1.1)
			left += sign.Wide - 3.4
		}
		for i, words := range label {
			style.Face, style.Colour = l.LabelFace(i)
			if i == 0 {
				l.Marks.Label(w.Number, scene.Rect{X: left, Y: row - lettering.GapMM - lettering.CapMM, W: style.Width(w.Number), H: lettering.CapMM})
			}
			sheet.TextAt(scene.Point{X: left, Y: row - lettering.GapMM}, words, style)
			left += style.Width(words + " ")
		}
		style.Face, style.Colour = scene.Regular, scene.Ink
		sheet.End()
		sheet.Begin(scene.Group{ID: sheet.UniqueID("ground-" + name), Class: "ground", Title: "to " + name, Of: w.To.Part.Ref})
		l.Set.Symbol(parts.GroundKind(w.To.Part)).Draw(symbol.NewPen(sheet, scene.Point{X: end, Y: row}), "")
		style.Align = scene.Right
		sheet.TextAt(scene.Point{X: end + symbol.M, Y: row + labels.GroundBase}, name, style)
		sheet.End()
	}}
}
