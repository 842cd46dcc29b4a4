package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// isGroundBlock tells a wired bar from a stud on the frame.
func isGroundBlock(p *circuit.Part) bool {
	g, ok := p.Source.(*design.Ground)
	return ok && g.Kind == design.GroundBlock
}

// groundPanel lists each ground point with the wires that land on it.
func (d *drawing) groundPanel() []*panel {
	list := &panel{title: "Ground points and wires", grounds: true}
	for _, p := range d.circuit.Parts {
		if p.Kind == circuit.Ground || p.Kind == circuit.Battery && len(d.landed[p]) > 0 {
			if len(list.rows) > 0 {
				list.rows = append(list.rows, blankRow(1.2))
			}
			list.rows = append(list.rows, together(d.groundRows(p))...)
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
func (d *drawing) groundRows(p *circuit.Part) []panelRow {
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
	left, top, flag := 8.0, 0.0, d.flags.ofPart(p)
	if p.Kind != circuit.Ground {
		flag = 0 // the battery carries it
	}
	if flag > 0 {
		left, top = left+d.flags.wide, max(d.flags.half-capMM/2, 0)
	}
	head := textRow(name, left+textW(p.Ref+" ", scene.Bold), scene.Regular, scene.Ink)
	rows := []panelRow{{
		height: top + max(head.height, 4.6) + 0.6,
		draw: func(sheet *scene.Sheet, x, y float64) {
			y += top
			d.set.Symbol(kind).Draw(symbol.NewPen(sheet, scene.Point{X: x + 3, Y: y}), "")
			if flag > 0 {
				drawFlag(sheet, d.flags.list[flag-1], x+left-d.flags.wide/2-0.5, y+capMM/2)
			}
			sheet.TextAt(scene.Point{X: x + left, Y: y + capMM}, p.Ref, scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink})
			head.draw(sheet, x, y)
		},
	}}
	var numbers []string
	for _, w := range d.landed[p] {
		numbers = append(numbers, w.Number)
	}
	const perRow = 60 // keeps entries short enough to break over columns
	for i := 0; i < len(numbers); i += perRow {
		rows = append(rows, textRow(wording.Present(numbers[i:min(i+perRow, len(numbers))], "  "), 8, scene.Regular, scene.Ink))
	}
	if p.Kind == circuit.Ground {
		for _, w := range d.returns[p] {
			rows = append(rows, d.groundWireRow(w))
		}
	}
	return rows
}

// groundWireRow draws the wire from a ground point to the next.
func (d *drawing) groundWireRow(w *circuit.Wire) panelRow {
	down := 4.0
	if d.flags.ofWire(w) > 0 {
		down = 1.6 + 2*d.flags.half
	}
	return panelRow{height: down + 5.5, draw: func(sheet *scene.Sheet, x, y float64) {
		label := d.wireLabel(w, false)
		name := d.groundName(w.To)
		end := x + max(9+textW(wording.Present(label, " "), scene.Regular)+4, 9+textW(name, scene.Regular))
		row := y + down
		sheet.Begin(scene.Group{ID: sheet.UniqueID("wire-" + w.Number), Class: "wire", Title: wording.Present(label, ", "),
			Desc: "return wire from " + w.From.Part.Ref + " to " + w.To.Part.Ref})
		line := []scene.Point{{X: x + 3, Y: row}, {X: end, Y: row}}
		drawBand(sheet, d.flags.kinds[w.Number], w.Number, line)
		sheet.Polyline(line, scene.Pen(symbol.WireMM))
		sheet.Polyline([]scene.Point{{X: x + 3, Y: row - 1}, {X: x + 3, Y: row + 1}}, scene.Pen(symbol.BarMM))
		style := scene.TextStyle{SizeMM: smallMM, Colour: scene.Ink}
		left := x + 8
		if f := d.flags.ofWire(w); f > 0 {
			drawFlag(sheet, d.flags.list[f-1], x+3.8+d.flags.wide/2, row-d.flags.half-1.1)
			left += d.flags.wide - 3.4
		}
		for i, words := range label {
			style.Face, style.Colour = d.labelFace(i)
			sheet.TextAt(scene.Point{X: left, Y: row - gapMM}, words, style)
			left += style.Width(words + " ")
		}
		style.Face, style.Colour = scene.Regular, scene.Ink
		sheet.End()
		sheet.Begin(scene.Group{ID: sheet.UniqueID("ground-" + name), Class: "ground", Title: "to " + name})
		d.set.Symbol(groundKind(w.To.Part)).Draw(symbol.NewPen(sheet, scene.Point{X: end, Y: row}), "")
		style.Align = scene.Right
		sheet.TextAt(scene.Point{X: end - 3.8, Y: row + 3.6}, name, style)
		sheet.End()
	}}
}
