package schematic

import (
	"fmt"
	"sort"

	"fusewright/harness/circuit"
	"fusewright/library"
	"fusewright/render/scene"
)

// findingPanel lists the findings whose flags stand on a page; what belongs to
// no part stands on the first page. full adds what each finding says.
func (d *drawing) findingPanel(p *page, full bool) []*panel {
	here := d.refsOn(p)
	list := &panel{title: "Findings", findings: true}
	if len(d.pages) > 1 {
		list.title = fmt.Sprintf("Findings, sheet %d", p.index+1)
	}
	for _, m := range d.flags.list {
		if here[m.ref] || p.index == 0 && !d.drawn(m.ref) {
			list.rows = append(list.rows, findingRow(m, full))
		}
	}
	if len(list.rows) == 0 {
		return nil
	}
	return []*panel{list}
}

// allFindings lists every flag with the whole of what each finding says.
func (d *drawing) allFindings() *panel {
	list := &panel{title: "Findings in full", findings: true}
	for _, m := range d.flags.list {
		list.rows = append(list.rows, wholeFindingRow(m))
	}
	return list
}

// wholeFindingRow is a flag with all its findings.
func wholeFindingRow(m *marked) panelRow {
	rows := []panelRow{textRow(join([]string{m.ref, m.severityWord()}, ", "), findingIndent, scene.Bold, scene.Ink)}
	for _, f := range m.findings {
		rows = append(rows, textRow(f.Rule+": "+f.What, findingIndent, scene.Regular, scene.Ink))
	}
	row := together(rows)[0]
	if len(together(rows)) > 1 { // more than one row takes: the worst alone
		row = together(rows[:2])[0]
	}
	draw := row.draw
	return panelRow{height: max(row.height+1.2, 6), draw: func(sheet *scene.Sheet, x, y float64) {
		drawFlag(sheet, m, x+2.5, y+1.2)
		draw(sheet, x, y)
	}}
}

// findingIndent is the room of a flag in a list, in mm.
const findingIndent = 6.5

// findingRow is a flag, the part, the severity and the rules, and in full what
// the worst finding says, cut to three lines: the whole text is in the list of
// findings.
func findingRow(m *marked, full bool) panelRow {
	var rules []string
	seen := map[string]int{}
	for _, f := range m.findings {
		if seen[f.Rule] == 0 {
			rules = append(rules, f.Rule)
		}
		seen[f.Rule]++
	}
	const indent = findingIndent
	head := join([]string{m.ref, m.severityWord()}, ", ")
	if !full {
		return shortFindingRow(m, head+":", join(rules, ", "), indent)
	}
	text := join(rules, ", ") + ": " + m.findings[0].What
	words := textRow(cutText(text, panelW-4-indent, 3), indent, scene.Regular, scene.Ink)
	return panelRow{
		height: max(lineMM+words.height+1.2, 6),
		draw: func(sheet *scene.Sheet, x, y float64) {
			drawFlag(sheet, m, x+2.5, y+1.2)
			style := scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink}
			sheet.TextAt(scene.Point{X: x + indent, Y: y + capMM}, head, style)
			words.draw(sheet, x, y+lineMM)
		},
	}
}

// shortFindingRow is a finding in one line.
func shortFindingRow(m *marked, head, words string, indent float64) panelRow {
	left := indent + textW(head+" ", scene.Bold)
	words = scene.Ellipsis(words, smallMM, panelW-4-left, scene.Regular)
	return panelRow{height: 5, draw: func(sheet *scene.Sheet, x, y float64) {
		drawFlag(sheet, m, x+2.5, y+1.2)
		style := scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Colour: scene.Ink}
		bold := scene.Ellipsis(head, smallMM, panelW-4-indent, scene.Bold)
		sheet.TextAt(scene.Point{X: x + indent, Y: y + 1.2 + capMM/2}, bold, style)
		style.Face = scene.Regular
		sheet.TextAt(scene.Point{X: x + left, Y: y + 1.2 + capMM/2}, words, style)
	}}
}

// refsOn is every reference and wire number drawn on a page.
func (d *drawing) refsOn(p *page) map[string]bool {
	here := map[string]bool{}
	for _, c := range p.cells {
		if c.kind != partCell {
			continue
		}
		here[c.part.Ref] = true
		for _, w := range c.ways {
			if w.ref != "" {
				here[w.ref] = true
			}
		}
		for _, in := range c.inlets {
			if in.wire != nil {
				here[in.wire.Number] = true
			}
		}
		for _, w := range c.returns {
			here[w.Number] = true
		}
		if c.part.Kind == circuit.Battery {
			g, v := d.sourceParts()
			for _, q := range []*circuit.Part{g, v} {
				if q != nil {
					here[q.Ref] = true
				}
			}
		}
	}
	return here
}

// drawn tells whether a reference is drawn on any page.
func (d *drawing) drawn(ref string) bool {
	if d.drawnRefs == nil {
		d.drawnRefs = map[string]bool{}
		for _, p := range d.pages {
			for r := range d.refsOn(p) {
				d.drawnRefs[r] = true
			}
		}
	}
	return d.drawnRefs[ref]
}

// colourPanel explains the colour codes of the wires on a page.
func (d *drawing) colourPanel(p *page) *panel {
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
func (d *drawing) notePanel() *panel {
	out := &panel{title: "Reading the drawing", whole: true}
	notes := []string{"On a wire: number, colour, size, length."}
	if d.study != nil {
		notes = []string{d.study.note()}
	}
	rest := "Contacts at rest, key off."
	if d.lengths == "ft" && d.study == nil {
		rest += " Inches rounded up."
	}
	notes = append(notes, rest, "Dot: joined. Crossing without dot: not joined.", "Dashed outline: one part.")
	if d.detached {
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
	return join(lines, " ")
}
