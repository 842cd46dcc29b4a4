package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/symbol"
)

// wire draws the way of one wire with its label and joints.
func (a *painter) wire(l route.Line) {
	a.sheet.Begin(a.wireGroup(l.In.Wire, l.Net.Term))
	var pts []scene.Point
	for _, s := range l.Pts {
		pts = append(pts, a.spot(s))
	}
	a.sheet.Polyline(pts, scene.Pen(symbol.WireMM))
	for _, s := range l.Dots {
		a.sheet.Dot(a.spot(s), symbol.DotMM, scene.Ink)
	}
	if l.In.Wire != nil {
		c := l.In.Cell
		left := c.X - a.LabelMOf(l.In.Wire, a.twoLines(l.In)) - a.Signs.LeadGap(c.Part)
		if cell.SharesTerminal(l.In) {
			left--
		}
		a.label(l.In.Wire, float64(left), l.In.Y(), a.twoLines(l.In))
	}
	a.sheet.End()
}

// twoLines tells whether the label of a wire stands in two lines.
func (a *painter) twoLines(in *cell.Inlet) bool {
	return a.Stacked && !in.Cell.Flat && !a.on.OneLine[in]
}

// wireGroup names a wire, or the line between a terminal and a flag.
func (a *painter) wireGroup(w *circuit.Wire, t *circuit.Terminal) scene.Group {
	if w == nil {
		return scene.Group{ID: a.sheet.UniqueID("line-" + parts.TerminalName(t)), Class: "wire",
			Title: "line at " + parts.TerminalName(t)}
	}
	return scene.Group{
		ID: a.sheet.UniqueID("wire-" + w.Number), Class: "wire",
		Title: a.WireLabel(w, false)[0],
		Desc:  string(w.Role) + " wire from " + parts.TerminalName(w.From) + " to " + parts.TerminalName(w.To),
	}
}

// label writes a wire's label above a row; left is in modules.
func (a *painter) label(w *circuit.Wire, left float64, row int, stacked bool) {
	at := a.at(left, float64(row))
	x := at.X + 0.8
	lines := a.WireLabel(w, stacked)
	if f := a.Signs.OfWire(w); f > 0 {
		a.flag(f, x+a.Signs.Wide/2-0.5, at.Y-lettering.GapMM-a.Signs.Half-0.1)
		x += a.Signs.Wide
	}
	for i, s := range lines {
		y := at.Y - lettering.GapMM - float64(len(lines)-1-i)*lettering.LineMM
		face, colour := a.LabelFace(i)
		a.text(x, y, s, face, scene.Left, colour)
	}
}
