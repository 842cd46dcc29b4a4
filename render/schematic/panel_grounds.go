package schematic

import (
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
	"slices"
)

// groundPanel lists each ground point with the wires that land on it.
func (l *lists) groundPanel() []*panel {
	list := &panel{title: "Ground points and wires", grounds: true}
	for _, p := range l.circuit.Parts {
		if p.Kind == circuit.Ground || p.Kind == circuit.Battery && len(l.wiring.landed[p]) > 0 {
			if len(list.rows) > 0 {
				list.rows = append(list.rows, blankRow(1.2))
			}
			list.rows = append(list.rows, together(l.groundRows(p))...)
		}
	}
	if len(list.rows) == 0 {
		return nil
	}
	return []*panel{list}
}

// blankRow is a gap between entries.
func blankRow(height float64) panelRow {
	return panelRow{height: height, draw: func(*scene.Sheet, float64, float64) {}}
}

// together makes one row of rows that are short enough to stay in one slot.
func together(rows []panelRow) []panelRow {
	const most = 50.0
	sum := 0.0
	for _, r := range rows {
		sum += r.height
	}
	if sum > most {
		return rows
	}
	return []panelRow{{height: sum, draw: func(sheet *scene.Sheet, x, y float64) {
		for _, r := range rows {
			r.draw(sheet, x, y)
			y += r.height
		}
	}}}
}

// groundRows are the entries of one ground point: its sign and name, the wires
// that land on it, and its own wires onwards.
func (l *lists) groundRows(p *circuit.Part) []panelRow {
	kind := groundKind(p)
	name := nameOf(p)
	if p.Kind == circuit.Battery {
		name = "battery negative post"
	}
	if p.Place != nil {
		name += ", " + p.Place.Name
	}
	if p.Kind == circuit.Ground && !isGroundBlock(p) {
		name += ": through the frame to the battery"
	}
	left, top, flag := 8.0, 0.0, l.signs.ofPart(p)
	if p.Kind != circuit.Ground {
		flag = 0 // the battery carries it
	}
	if flag > 0 {
		left, top = left+l.signs.wide, max(l.signs.half-capMM/2, 0)
	}
	head := textRow(name, left+textW(p.Ref+" ", scene.Bold), scene.Regular, scene.Ink)
	rows := []panelRow{{
		height: top + max(head.height, 4.6) + 0.6,
		draw: func(sheet *scene.Sheet, x, y float64) {
			y += top
			l.set.Symbol(kind).Draw(symbol.NewPen(sheet, scene.Point{X: x + 3, Y: y}), "")
			if flag > 0 {
				drawFlag(sheet, l.signs.list[flag-1], x+left-l.signs.wide/2-0.5, y+capMM/2)
			}
			sheet.TextAt(scene.Point{X: x + left, Y: y + capMM}, p.Ref, scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink})
			head.draw(sheet, x, y)
		},
	}}
	var numbers []string
	for _, w := range l.wiring.landed[p] {
		numbers = append(numbers, w.Number)
	}
	const perRow = 60 // keeps entries short enough to break over columns
	for i := 0; i < len(numbers); i += perRow {
		rows = append(rows, textRow(wording.Present(numbers[i:min(i+perRow, len(numbers))], "  "), 8, scene.Regular, scene.Ink))
	}
	if p.Kind == circuit.Ground {
		for _, w := range l.wiring.returns[p] {
			rows = append(rows, l.groundWireRow(w))
		}
	}
	return rows
}

// groundWireRow draws the wire from a ground point to the next.
func (l *lists) groundWireRow(w *circuit.Wire) panelRow {
	down := 4.0
	if l.signs.ofWire(w) > 0 {
		down = 1.6 + 2*l.signs.half
	}
	return panelRow{height: down + 5.5, draw: func(sheet *scene.Sheet, x, y float64) {
		label := l.wireLabel(w, false)
		name := l.groundName(w.To)
		end := x + max(9+textW(wording.Present(label, " "), scene.Regular)+4, 9+textW(name, scene.Regular))
		row := y + down
		sheet.Begin(scene.Group{ID: sheet.UniqueID("wire-" + w.Number), Class: "wire", Title: wording.Present(label, ", "),
			Desc: "return wire from " + w.From.Part.Ref + " to " + w.To.Part.Ref})
		line := []scene.Point{{X: x + 3, Y: row}, {X: end, Y: row}}
		drawBand(sheet, l.signs.kinds[w.Number], w.Number, line)
		sheet.Polyline(line, scene.Pen(symbol.WireMM))
		sheet.Polyline([]scene.Point{{X: x + 3, Y: row - 1}, {X: x + 3, Y: row + 1}}, scene.Pen(symbol.BarMM))
		style := scene.TextStyle{SizeMM: smallMM, Colour: scene.Ink}
		left := x + 8
		if f := l.signs.ofWire(w); f > 0 {
			drawFlag(sheet, l.signs.list[f-1], x+3.8+l.signs.wide/2, row-l.signs.half-1.1)
			left += l.signs.wide - 3.4
		}
		for i, words := range label {
			style.Face, style.Colour = l.labelFace(i)
			sheet.TextAt(scene.Point{X: left, Y: row - gapMM}, words, style)
			left += style.Width(words + " ")
		}
		style.Face, style.Colour = scene.Regular, scene.Ink
		sheet.End()
		sheet.Begin(scene.Group{ID: sheet.UniqueID("ground-" + name), Class: "ground", Title: "to " + name})
		l.set.Symbol(groundKind(w.To.Part)).Draw(symbol.NewPen(sheet, scene.Point{X: end, Y: row}), "")
		style.Align = scene.Right
		sheet.TextAt(scene.Point{X: end - 3.8, Y: row + 3.6}, name, style)
		sheet.End()
	}}
}

// bears tells whether a page carries a sign, in the circuit or in its list of
// grounds.
func (l *lists) bears(p *page) bool {
	grounds := slices.ContainsFunc(l.beside[p.index], func(q *panel) bool { return q.grounds })
	return slices.ContainsFunc(l.signs.list, func(m *marked) bool {
		return l.sheets.on(p, m) || grounds && len(m.refs) > 0 && !l.sheets.drawn(m)
	})
}
