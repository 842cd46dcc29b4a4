package schematic

import (
	"fmt"
	"sort"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/scene"
)

// findingPanel lists the findings or changes whose signs stand on a page; what
// stands nowhere is listed on the first page. full adds what each says.
func (l *lists) findingPanel(p *page, full bool) []*panel {
	list := &panel{title: l.listName(), findings: true}
	if l.signs.asWas {
		list.title = "Removed or changed here"
	} else if len(l.arr.pages) > 1 {
		list.title = fmt.Sprintf("%s, sheet %d", l.listName(), l.sheets.number(p.index))
	}
	for _, m := range l.signs.list {
		if l.sheets.on(p, m) || p.index == 0 && !l.sheets.drawn(m) && !l.signs.asWas {
			list.rows = append(list.rows, l.entryRow(m, full))
		}
	}
	if l.signs.changes != nil && len(l.signs.changes.List) == 0 && p.index == 0 {
		list.rows = append(list.rows, textRow("No change.", 0, scene.Regular, scene.Ink))
	}
	if len(list.rows) == 0 {
		return nil
	}
	return []*panel{list}
}

// allFindings lists every sign with the whole of what it stands for.
func (l *lists) allFindings() *panel {
	list := &panel{title: l.listName() + " in full", findings: true, inFull: true}
	for _, m := range l.signs.list {
		list.rows = append(list.rows, l.wholeRow(m))
	}
	return list
}

// listName is the heading of the list of findings or changes.
func (l *lists) listName() string {
	if l.signs.changes != nil {
		return "Changes"
	}
	return "Findings"
}

// colourPanel explains the colour codes of the wires on a page.
func (l *lists) colourPanel(p *page) *panel {
	found := map[string]*library.Colour{}
	note := func(w *circuit.Wire) {
		for _, c := range []*library.Colour{w.Spec.Colour.Base, w.Spec.Colour.Tracer} {
			if c != nil {
				found[c.Code] = c
			}
		}
	}
	for _, c := range p.cells {
		for _, in := range c.inlets {
			if in.wire != nil {
				note(in.wire)
			}
		}
		for _, w := range c.returns {
			note(w)
		}
	}
	var codes []string
	for code := range found {
		codes = append(codes, code)
	}
	sort.Strings(codes)
	const across = 3
	out := &panel{title: "Colours (IEC 60757)", whole: true}
	for i := 0; i < len(codes); i += across {
		some := codes[i:min(i+across, len(codes))]
		out.rows = append(out.rows, panelRow{height: lineMM, draw: func(sheet *scene.Sheet, x, y float64) {
			for k, code := range some {
				left := x + float64(k)*(panelW-4)/across
				style := scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink}
				sheet.TextAt(scene.Point{X: left, Y: y + capMM}, code, style)
				style.Face = scene.Regular
				name := scene.Ellipsis(found[code].Name, smallMM, (panelW-4)/across-style.Width(code)-2.5, scene.Regular)
				sheet.TextAt(scene.Point{X: left + style.Width(code) + 1.8, Y: y + capMM}, name, style)
			}
		}})
	}
	return out
}

// notePanel says how to read the drawing.
func (l *lists) notePanel() *panel {
	out := &panel{title: "Reading the drawing", whole: true}
	notes := []string{"On a wire: number, colour, size, length."}
	if l.study != nil {
		notes = []string{l.study.note()}
	}
	rest := "Contacts at rest, key off."
	if l.lengths == "ft" && l.study == nil {
		rest += " Inches rounded up."
	}
	notes = append(notes, rest, "Dot: joined. Crossing without dot: not joined.", "Dashed outline: one part.")
	if l.detached {
		notes = append(notes, "A relay's coil and contacts stand apart under one reference; each names sheet and zone of the other.")
	}
	for _, s := range notes {
		out.rows = append(out.rows, textRow(s, 0, scene.Regular, scene.Ink))
	}
	return out
}

// cutText shortens a text to a number of lines of a width in mm.
func cutText(text string, widthMM float64, most int) string {
	lines := scene.Wrap(text, smallMM, widthMM, scene.Regular)
	if len(lines) <= most {
		return text
	}
	lines = lines[:most]
	lines[most-1] = scene.Ellipsis(lines[most-1]+" …", smallMM, widthMM, scene.Regular)
	return wording.Present(lines, " ")
}
