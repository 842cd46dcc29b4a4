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
		left := c.x - a.labelMOf(l.in.wire, a.twoLines(l.in)) - a.signs.leadGap(c.part)
		if sharesTerminal(l.in) {
			left--
		}
		a.label(l.in.wire, float64(left), l.in.y(), a.twoLines(l.in))
	}
	a.sheet.End()
}

// twoLines tells whether the label of a wire stands in two lines.
func (a *painter) twoLines(in *inlet) bool {
	return a.stacked && !in.cell.flat && !a.on.oneLine[in]
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
	if f := a.signs.ofWire(w); f > 0 {
		a.flag(f, x+a.signs.wide/2-0.5, at.Y-gapMM-a.signs.half-0.1)
		x += a.signs.wide
	}
	for i, s := range lines {
		y := at.Y - gapMM - float64(len(lines)-1-i)*lineMM
		face, colour := a.labelFace(i)
		a.text(x, y, s, face, scene.Left, colour)
	}
}
