package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// wire draws the way of one wire with its label and joints.
func (a *painter) wire(l line) {
	a.sheet.Begin(a.wireGroup(l.in.wire, l.net.term))
	var pts []scene.Point
	for _, s := range l.pts {
		pts = append(pts, a.spot(s))
	}
	a.sheet.Polyline(pts, scene.Pen(symbol.WireMM))
	for _, s := range l.dots {
		a.sheet.Dot(a.spot(s), symbol.DotMM, scene.Ink)
	}
	if l.in.wire != nil {
		c := l.in.cell
		left := c.x - a.labelMOf(l.in.wire, a.twoLines(l.in)) - a.flags.leadGap(c.part)
		if sharesTerminal(l.in) {
			left--
		}
		a.label(l.in.wire, float64(left), l.in.y(), a.twoLines(l.in))
	}
	a.sheet.End()
}

// twoLines tells whether the label of a wire stands in two lines.
func (a *painter) twoLines(in *inlet) bool {
	return a.stacked && !in.cell.flat && !a.page.oneLine[in]
}

// wireGroup names a wire, or the line between a terminal and a flag.
func (a *painter) wireGroup(w *circuit.Wire, t *circuit.Terminal) scene.Group {
	if w == nil {
		return scene.Group{ID: a.sheet.UniqueID("line-" + terminalName(t)), Class: "wire",
			Title: "line at " + terminalName(t)}
	}
	return scene.Group{
		ID: a.sheet.UniqueID("wire-" + w.Number), Class: "wire",
		Title: a.wireLabel(w, false)[0],
		Desc:  string(w.Role) + " wire from " + terminalName(w.From) + " to " + terminalName(w.To),
	}
}

// label writes a wire's label above a row; left is in modules.
func (a *painter) label(w *circuit.Wire, left float64, row int, stacked bool) {
	at := a.at(left, float64(row))
	x := at.X + 0.8
	lines := a.wireLabel(w, stacked)
	if f := a.flags.ofWire(w); f > 0 {
		a.flag(f, x+a.flags.wide/2-0.5, at.Y-gapMM-a.flags.half-0.1)
		x += a.flags.wide
	}
	for i, s := range lines {
		y := at.Y - gapMM - float64(len(lines)-1-i)*lineMM
		face, colour := a.labelFace(i)
		a.text(x, y, s, face, scene.Left, colour)
	}
}

// terminalName is how a terminal is called in the drawing: the reference, and
// the terminal where a part has several that feed.
func terminalName(t *circuit.Terminal) string {
	p := t.Part
	switch {
	case t.FuseRef != "":
		return t.FuseRef + " (" + p.Ref + ":" + t.Name + ")"
	case p.Kind == circuit.Relay || p.Kind == circuit.Block:
		return p.Ref + ":" + t.Name
	}
	return p.Ref
}

// sharesTerminal tells whether a wire is joined by others just before its
// terminal.
func sharesTerminal(in *inlet) bool {
	for _, q := range in.cell.inlets {
		if q != in && firstOf(q) == firstOf(in) {
			return true
		}
	}
	return false
}
