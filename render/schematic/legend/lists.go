package legend

import (
	"fmt"
	"maps"
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/library"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/sign"
)

// findingPanel lists the findings or changes whose signs stand on a page; what
// stands nowhere is listed where what fed it stands, else on the first page. full adds what
// each says.
func (l *Lists) findingPanel(p *arrange.Page, full bool) []*column.List {
	list := &column.List{Title: l.listName(), Findings: true}
	if len(l.arr.Pages) > 1 {
		list.Title = fmt.Sprintf("%s, sheet %d", l.listName(), p.Index+1)
	}
	list.Rows = append(list.Rows, l.worstElsewhere(p)...)
	for _, m := range l.entries() {
		if l.sheets.On(p, m) || p.Index == l.homeOf(m) && !l.sheets.Drawn(m) {
			list.Rows = append(list.Rows, l.entryRow(m, full && m.Change != nil))
		}
	}
	if l.Marks != nil && len(l.Marks.List) == 0 && p.Index == 0 {
		list.Rows = append(list.Rows, column.TextRow("No change.", 0, scene.Regular, scene.Ink))
	}
	if len(list.Rows) == 0 {
		return nil
	}
	return []*column.List{list}
}

// worstElsewhere names on the first page the worst finding, where it stands on
// another.
func (l *Lists) worstElsewhere(p *arrange.Page) []column.Row {
	if p.Index != 0 || l.Marks != nil || len(l.entries()) == 0 {
		return nil
	}
	m := l.Signs.List[0]
	if l.sheets.On(p, m) || !l.sheets.Drawn(m) {
		return nil
	}
	text := fmt.Sprintf("Worst: %s, at %s", m.Head(), l.sheets.PlaceOf(m))
	return []column.Row{l.afterSign(m, column.TextRow(cutText(text, column.Width-4-m.Indent(), 1), m.Indent(), scene.Bold, scene.Ink))}
}

// allChanges lists every sign with the whole of what it stands for. What findings
// say in full stands in their own paper.
func (l *Lists) allChanges() *column.List {
	list := &column.List{Title: l.listName() + " in full", Findings: true, InFull: true}
	for _, m := range l.Marks.List {
		list.Rows = append(list.Rows, l.wholeRow(m))
	}
	return list
}

// entries are what the sheets have signs of: findings, or changes.
func (l *Lists) entries() []*sign.Entry {
	switch {
	case l.Marks != nil:
		return l.Marks.List
	case l.Signs.Hidden:
		return nil
	}
	return l.Signs.List
}

// listName is the heading of the list of findings or changes.
func (l *Lists) listName() string {
	if l.Marks != nil {
		return "Changes"
	}
	return "Findings"
}

// colourPanel explains the colour codes of all wires, once for all sheets.
func (l *Lists) colourPanel() []*column.List {
	found := map[string]*library.Colour{}
	for _, w := range l.Circuit.Wires {
		for _, colour := range []*library.Colour{w.Spec.Colour.Base, w.Spec.Colour.Tracer} {
			if colour != nil {
				found[colour.Code] = colour
			}
		}
	}
	codes := slices.Sorted(maps.Keys(found))
	const across = 3
	out := &column.List{Title: "Colours (IEC 60757)", Whole: true}
	for some := range slices.Chunk(codes, across) {
		out.Rows = append(out.Rows, column.Row{Height: lettering.LineMM, Draw: func(sheet *scene.Sheet, x, y float64) {
			for k, code := range some {
				left := x + float64(k)*(column.Width-4)/across
				style := scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Colour: scene.Ink}
				sheet.TextAt(scene.Point{X: left, Y: y + lettering.CapMM}, code, style)
				style.Face = scene.Regular
				name := scene.Ellipsis(found[code].Name, lettering.SmallMM, (column.Width-4)/across-style.Width(code)-2.5, scene.Regular)
				sheet.TextAt(scene.Point{X: left + style.Width(code) + 1.8, Y: y + lettering.CapMM}, name, style)
			}
		}})
	}
	if len(out.Rows) == 0 {
		return nil
	}
	return []*column.List{out}
}

// notePanel says how to read the drawing.
func (l *Lists) notePanel() *column.List {
	out := &column.List{Title: "Reading the drawing", Whole: true}
	notes := []string{"On a wire: number, size, colour, length to cut."}
	if l.Study != nil {
		notes = []string{l.Study.Note()}
	}
	if len(l.Circuit.Inlines()) > 0 && l.Study == nil {
		notes = append(notes, "X and number with a colon on a wire: its cavity in that connector, which parts it; the length is of all its pieces. Upright wires have no sign of it.")
	}
	rest := "Contacts at rest, key off."
	if l.Lengths == "ft" && l.Study == nil {
		rest += " Inches rounded up."
	}
	notes = append(notes, rest, "Dot: joined. Crossing without dot: not joined.", "Dashed outline: one part.")
	if l.Detached {
		notes = append(notes, "A relay's coil and contacts are drawn apart under one reference; each names sheet and zone of the other.")
	}
	if shared := l.sharedColours(); len(shared) > 0 {
		notes = append(notes, "More circuits than colours: "+wording.Few(shared, 6)+" cannot be told by colour where they run; go by the numbers.")
	}
	for _, s := range notes {
		out.Rows = append(out.Rows, column.TextRow(s, 0, scene.Regular, scene.Ink))
	}
	return out
}

// sharedColours are the wires that have the colour of another circuit where they go.
func (l *Lists) sharedColours() (numbers []string) {
	for _, w := range l.Circuit.Wires {
		if w.ColourShared {
			numbers = append(numbers, w.Number)
		}
	}
	return numbers
}

// cutText shortens a text to a number of lines of a width in mm.
func cutText(text string, widthMM float64, most int) string {
	lines := scene.Wrap(text, lettering.SmallMM, widthMM, scene.Regular)
	if len(lines) <= most {
		return text
	}
	lines = lines[:most]
	lines[most-1] = scene.Ellipsis(lines[most-1]+" …", lettering.SmallMM, widthMM, scene.Regular)
	return wording.Present(lines, " ")
}
