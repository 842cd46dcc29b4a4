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
func (d *drawing) findingPanel(p *page, full bool) []*panel {
	here := d.refsOn(p)
	list := &panel{title: d.listName(), findings: true}
	if d.asWas {
		list.title = "Removed or changed here"
	} else if len(d.pages) > 1 {
		list.title = fmt.Sprintf("%s, sheet %d", d.listName(), d.number(p.index))
	}
	for _, m := range d.flags.list {
		if m.anyOf(here) || p.index == 0 && !d.drawn(m) && !d.asWas {
			list.rows = append(list.rows, d.entryRow(m, full))
		}
	}
	if d.changes != nil && len(d.changes.List) == 0 && p.index == 0 {
		list.rows = append(list.rows, textRow("No change.", 0, scene.Regular, scene.Ink))
	}
	if len(list.rows) == 0 {
		return nil
	}
	return []*panel{list}
}

// allFindings lists every sign with the whole of what it stands for.
func (d *drawing) allFindings() *panel {
	list := &panel{title: d.listName() + " in full", findings: true, inFull: true}
	for _, m := range d.flags.list {
		list.rows = append(list.rows, d.wholeRow(m))
	}
	return list
}

// listName is the heading of the list of findings or changes.
func (d *drawing) listName() string {
	if d.changes != nil {
		return "Changes"
	}
	return "Findings"
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

// drawn tells whether something of an entry is drawn on any page.
func (d *drawing) drawn(m *marked) bool {
	if d.drawnRefs == nil {
		d.drawnRefs = map[string]bool{}
		for _, p := range d.pages {
			for r := range d.refsOn(p) {
				d.drawnRefs[r] = true
			}
		}
	}
	return m.anyOf(d.drawnRefs)
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
	return wording.Present(lines, " ")
}
