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
	if l.In.Wire != nil {
		a.Marks.Line(l.In.Wire.Number, pts...)
		var whole []scene.Point
		for _, s := range l.Whole {
			whole = append(whole, a.spot(s))
		}
		a.spots.way(l.In.Wire.Number, whole...)
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
	left := in.Cell.X - a.InletM(in.Wire, in.Cell.Part, a.twoLines(in))
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
		ID: a.sheet.UniqueID("wire-" + w.Number), Class: "wire", Of: w.Number,
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
		a.flag(f, x+sign.Wide/2-0.5, at.Y-lettering.GapMM-sign.Radius-0.1)
		x += sign.Wide
	}
	a.spots.box(w.Number, scene.Rect{X: x, Y: at.Y - lettering.GapMM - float64(len(lines)-1)*lettering.LineMM - lettering.CapMM,
		W: a.LabelW(w, stacked), H: float64(len(lines)-1)*lettering.LineMM + lettering.CapMM})
	for i, s := range lines {
		y := at.Y - lettering.GapMM - float64(len(lines)-1-i)*lettering.LineMM
		face, colour := a.LabelFace(i)
		if i == 0 {
			a.Marks.Label(w.Number, wordBox(x, y, w.Number, face))
		}
		a.text(x, y, s, face, scene.Left, colour)
	}
}

// flag draws a numbered flag: danger filled, fault a thick ring, advice a thin
// ring, accepted a dashed ring.
func (a *painter) flag(number int, x, y float64) { a.Signs.Draw(a.sheet, number, x, y) }

// boxAt is a box in modules about a place of the page, on the sheet.
func (a *painter) boxAt(x, y int, r scene.Rect) scene.Rect {
	at := a.at(float64(x)+r.X, float64(y)+r.Y)
	return scene.Rect{X: at.X, Y: at.Y, W: r.W * symbol.M, H: r.H * symbol.M}
}

// wordBox is the box of a word with its baseline at a place in mm.
func wordBox(x, y float64, word string, face scene.Face) scene.Rect {
	return scene.Rect{X: x, Y: y - lettering.CapMM, W: lettering.TextW(word, face), H: lettering.CapMM}
}
