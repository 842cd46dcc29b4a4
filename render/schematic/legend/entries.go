package legend

import (
	"fmt"

	"fusewright/render/scene"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/sign"
)

// wholeRow is a sign with all that it stands for.
func (l *Lists) wholeRow(m *sign.Entry) column.Row {
	rows := []column.Row{{Height: lettering.LineMM, Draw: func(sheet *scene.Sheet, x, y float64) { l.rowHead(sheet, m, x+m.Indent(), y+lettering.CapMM) }}}
	for _, s := range m.Statements() {
		rows = append(rows, column.TextRow(s, m.Indent(), scene.Regular, scene.Ink))
	}
	rows = append(rows, l.goneRow(m))
	for left := 0; len(together(rows)) > 1 && len(rows) > 3; { // more than one row takes: the worst
		left++
		more := column.TextRow(fmt.Sprintf("and %d more", left), m.Indent(), scene.Regular, scene.Ink)
		rows = append(rows[:len(rows)-2], more)
	}
	if len(together(rows)) > 1 {
		rows = rows[:2]
	}
	return l.afterSign(m, together(rows)[0])
}

// afterSign puts an entry's sign before a row.
func (l *Lists) afterSign(m *sign.Entry, row column.Row) column.Row {
	half := m.Half()
	return column.Row{Height: max(row.Height+1.2, 2*half+1.6), Draw: func(sheet *scene.Sheet, x, y float64) {
		sign.Draw(sheet, m, x+m.Indent()/2-0.7, y+half-1)
		row.Draw(sheet, x, y)
	}}
}

// entryRow is a sign, the part, the severity and the rules in one line; of a change
// in full what differs, cut to three lines: the list of changes has the rest.
func (l *Lists) entryRow(m *sign.Entry, full bool) column.Row {
	if !full {
		return l.shortRow(m)
	}
	const most = 6 // lines; hardly a change says more
	room := column.Width - 4 - m.Indent()
	words := column.TextRow(cutText(m.Brief(), room, most), m.Indent(), scene.Regular, scene.Ink)
	gone := l.goneRow(m)
	return l.afterSign(m, column.Row{Height: lettering.LineMM + words.Height + gone.Height, Draw: func(sheet *scene.Sheet, x, y float64) {
		l.rowHead(sheet, m, x+m.Indent(), y+lettering.CapMM)
		words.Draw(sheet, x, y+lettering.LineMM)
		gone.Draw(sheet, x, y+lettering.LineMM+words.Height)
	}})
}

// rowHead writes the head of an entry and, of a change, where it is.
func (l *Lists) rowHead(sheet *scene.Sheet, m *sign.Entry, x, y float64) {
	style := scene.TextStyle{SizeMM: lettering.SmallMM, Colour: scene.Ink}
	place := ""
	if m.Change != nil {
		place = l.sheets.PlaceOf(m)
	}
	room := column.Width - 4 - m.Indent()
	if place != "" {
		style.Align = scene.Right
		sheet.TextAt(scene.Point{X: x + room, Y: y}, place, style)
		room -= style.Width(place) + 2
	}
	style.Face, style.Align = scene.Bold, scene.Left
	sheet.TextAt(scene.Point{X: x, Y: y}, scene.Ellipsis(m.Head(), lettering.SmallMM, room, scene.Bold), style)
}

// shortRow is an entry in one line, or with its words below its head where these find
// no room beside it: no word is cut.
func (l *Lists) shortRow(m *sign.Entry) column.Row {
	indent := m.Indent()
	head := m.Title() + ":"
	left := indent + lettering.TextW(head+" ", scene.Bold)
	room := column.Width - 4 - left
	words := m.Fit(room, func(s string) float64 { return lettering.TextW(s, scene.Regular) })
	if lettering.TextW(words, scene.Regular) > room {
		return l.afterSign(m, together([]column.Row{column.TextRow(head, indent, scene.Bold, scene.Ink),
			column.TextRow(words, indent, scene.Regular, scene.Ink)})[0])
	}
	middle := m.Half() - 1
	return column.Row{Height: 2*m.Half() + 0.8, Draw: func(sheet *scene.Sheet, x, y float64) {
		sign.Draw(sheet, m, x+m.Indent()/2-0.7, y+middle)
		style := scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Colour: scene.Ink}
		sheet.TextAt(scene.Point{X: x + indent, Y: y + middle + lettering.CapMM/2}, head, style)
		style.Face = scene.Regular
		sheet.TextAt(scene.Point{X: x + left, Y: y + middle + lettering.CapMM/2}, words, style)
	}}
}
