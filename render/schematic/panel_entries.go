package schematic

import (
	"fusewright/render/scene"
)

// wholeRow is a sign with all that it stands for.
func (l *lists) wholeRow(m *marked) panelRow {
	rows := []panelRow{{height: lineMM, draw: func(sheet *scene.Sheet, x, y float64) { l.rowHead(sheet, m, x+m.indent(), y+capMM) }}}
	for _, s := range m.statements() {
		rows = append(rows, textRow(s, m.indent(), scene.Regular, scene.Ink))
	}
	row := together(rows)[0]
	if len(together(rows)) > 1 { // more than one row takes: the worst alone
		row = together(rows[:2])[0]
	}
	return l.afterSign(m, row)
}

// afterSign puts an entry's sign before a row.
func (l *lists) afterSign(m *marked, row panelRow) panelRow {
	half := l.signs.half
	return panelRow{height: max(row.height+1.2, 2*half+1.6), draw: func(sheet *scene.Sheet, x, y float64) {
		drawFlag(sheet, m, x+l.signs.wide/2-0.2, y+half-1)
		row.draw(sheet, x, y)
	}}
}

// entryRow is a sign, the part, the severity and the rules, and in full what the
// worst finding says, cut to three lines: the whole text is in the list of
// findings. Of a change it is what differs.
func (l *lists) entryRow(m *marked, full bool) panelRow {
	if !full {
		return l.shortRow(m)
	}
	text := m.brief()
	if m.change == nil {
		text += ": " + m.findings[0].What
	}
	words := textRow(cutText(text, panelW-4-m.indent(), 3), m.indent(), scene.Regular, scene.Ink)
	return l.afterSign(m, panelRow{height: lineMM + words.height, draw: func(sheet *scene.Sheet, x, y float64) {
		l.rowHead(sheet, m, x+m.indent(), y+capMM)
		words.draw(sheet, x, y+lineMM)
	}})
}

// rowHead writes the head of an entry and, of a change, where it is.
func (l *lists) rowHead(sheet *scene.Sheet, m *marked, x, y float64) {
	style := scene.TextStyle{SizeMM: smallMM, Colour: scene.Ink}
	place := ""
	if m.change != nil {
		place = l.sheets.placeOf(m)
	}
	room := panelW - 4 - m.indent()
	if place != "" {
		style.Align = scene.Right
		sheet.TextAt(scene.Point{X: x + room, Y: y}, place, style)
		room -= style.Width(place) + 2
	}
	style.Face, style.Align = scene.Bold, scene.Left
	sheet.TextAt(scene.Point{X: x, Y: y}, scene.Ellipsis(m.head(), smallMM, room, scene.Bold), style)
}

// shortRow is an entry in one line.
func (l *lists) shortRow(m *marked) panelRow {
	indent := m.indent()
	head, brief := m.head()+":", m.brief()
	if m.change != nil {
		head, brief = m.change.names(m.refs, m.asWas)[0]+":", m.change.short()
	}
	left := indent + textW(head+" ", scene.Bold)
	words := scene.Ellipsis(brief, smallMM, panelW-4-left, scene.Regular)
	middle := l.signs.half - 1
	return panelRow{height: 2*l.signs.half + 0.8, draw: func(sheet *scene.Sheet, x, y float64) {
		drawFlag(sheet, m, x+l.signs.wide/2-0.2, y+middle)
		style := scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink}
		bold := scene.Ellipsis(head, smallMM, panelW-4-indent, scene.Bold)
		sheet.TextAt(scene.Point{X: x + indent, Y: y + middle + capMM/2}, bold, style)
		style.Face = scene.Regular
		sheet.TextAt(scene.Point{X: x + left, Y: y + middle + capMM/2}, words, style)
	}}
}
