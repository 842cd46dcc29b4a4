package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// wire draws the way of one wire with its label and joints.
func (a *painter) wire(l route.Line) {
	a.sheet.Begin(a.wireGroup(l.In.Wire, l.Net.Term))
	var pts []scene.Point
	for _, s := range l.Pts {
		pts = append(pts, a.spot(s))
	}
	if w := l.In.Wire; w != nil && len(w.Poles) > 0 {
		a.partedLine(w, pts, a.at(a.labelLeft(l.In), float64(l.In.Y())))
	} else {
		a.sheet.Polyline(pts, scene.Pen(symbol.WireMM))
	}
	for _, s := range l.Dots {
		a.sheet.Dot(a.spot(s), symbol.DotMM, scene.Ink)
	}
	if l.In.Wire != nil {
		a.label(l.In.Wire, a.labelLeft(l.In), l.In.Y(), a.twoLines(l.In))
	}
	a.sheet.End()
}

// labelLeft is where the label of an incoming wire begins, in modules.
func (a *painter) labelLeft(in *cell.Inlet) float64 {
	left := in.Cell.X - a.InletM(in.Wire, in.Cell.Part, a.twoLines(in)) - a.Signs.LeadGap(in.Cell.Part)
	if cell.SharesTerminal(in) {
		left--
	}
	return float64(left)
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
	x := at.X + 0.8 + labels.PolesMM(w)
	lines := a.WireLabel(w, stacked)
	if f := a.Signs.OfWire(w); f > 0 {
		a.flag(f, x+a.Signs.Wide/2-0.5, at.Y-a.WireGap()-a.Signs.Half-0.1)
		x += a.Signs.Wide
	}
	for i, s := range lines {
		y := at.Y - a.WireGap() - float64(len(lines)-1-i)*lettering.LineMM
		face, colour := a.LabelFace(i)
		a.text(x, y, s, face, scene.Left, colour)
	}
}

// flag draws a numbered flag: danger filled, fault a thick ring, advice a thin
// ring, accepted a dashed ring.
func (a *painter) flag(number int, x, y float64) { a.Signs.Draw(a.sheet, number, x, y) }

// bands marks the changed wires of the page, under everything else.
func (a *painter) bands() {
	if a.Signs.Changes == nil {
		return
	}
	for _, l := range a.on.Lines {
		if w := l.In.Wire; w != nil {
			var pts []scene.Point
			for _, s := range l.Pts {
				pts = append(pts, a.spot(s))
			}
			a.band(w.Number, pts)
		}
	}
}

// band marks an upright and level line: added with a plain band under it,
// changed with a broken one, removed with crosses.
func (a *painter) band(ref string, pts []scene.Point) {
	sign.Band(a.sheet, a.Signs.Kinds[ref], ref, pts)
}

// boxAt is a box in modules about a place of the page, on the sheet.
func (a *painter) boxAt(x, y int, r scene.Rect) scene.Rect {
	at := a.at(float64(x)+r.X, float64(y)+r.Y)
	return scene.Rect{X: at.X, Y: at.Y, W: r.W * symbol.M, H: r.H * symbol.M}
}

// surround marks a changed part round a box on the sheet.
func (a *painter) surround(p *circuit.Part, box scene.Rect) {
	if a.Signs.Surrounded(p) {
		sign.Surround(a.sheet, a.Signs.Kinds[p.Ref], p.Ref, box)
	}
}
