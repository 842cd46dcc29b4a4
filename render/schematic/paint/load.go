package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/symbol"
)

// load draws a load, or the last part of a return, its returns and their grounds.
func (a *painter) load(c *cell.Cell) {
	s := parts.SymbolOf(a.Set, c.Part)
	body := c.PlugBody(s.Body, len(c.Returns))
	a.Marks.Box(c.Part.Ref, a.boxAt(c.X, c.Rows[0].Y, body))
	a.Spots.Box(c.Part.Ref, a.boxAt(c.X, c.Rows[0].Y, body))
	a.Spots.Way(c.Part.Ref, a.at(float64(c.X), float64(c.Rows[0].Y)), a.at(float64(c.X)+body.W, float64(c.Rows[0].Y)))
	s.Draw(a.pen(c.X+c.Inset, c.Rows[0].Y), parts.ShortSign(c.Part))
	a.links(c.Part, float64(c.X)+2, float64(c.Rows[0].Y)+symbol.BankTop)
	for _, q := range c.Inlets {
		if q.Turns() { // below the symbol to its far end
			far, off := float64(c.Inset)+s.Body.W, float64(q.Y()-c.Rows[0].Y)
			pole := float64(min(c.Inset, labels.PlugM))
			a.pen(c.X, c.Rows[0].Y).Line(pole, off, far, off, far, 0)
			a.pen(c.X, c.Rows[0].Y).Line(pole, 0, float64(c.Inset), 0)
		}
	}
	var rows []int
	for k := range c.Returns {
		rows = append(rows, c.Rows[0].Y+k*a.ReturnStep())
	}
	a.drawPlug(c, body, rows)
	a.endOf(c, body, c.Caption)
	if c.OnCase() {
		a.ground(a.Circuit.Negative().Terminals[0], c.X+int(body.W), c.Rows[0].Y, true)
	}
	if c.FromGrounds() {
		a.fromGrounds(c)
	}
	if o := c.Onward(); o != nil {
		at := a.at(float64(c.X-1), float64(c.Rows[0].Y))
		a.sheet.Polyline([]scene.Point{at, a.at(float64(c.X-1), float64(o.Y())), a.at(float64(c.X+o.Dx), float64(o.Y()))}, scene.Pen(symbol.WireMM))
		a.sheet.Dot(at, symbol.DotMM, scene.Ink)
	}
}

// fromGrounds draws the signs of the grounds that come in at a part of a return; their
// wires are drawn in the list of grounds.
func (a *painter) fromGrounds(c *cell.Cell) {
	x, y := c.X-cell.GroundLead, c.Rows[0].Y
	for k, w := range a.Wiring.Landed[c.Part] {
		if k == 0 {
			a.pen(x, y).Line(0, 0, cell.GroundLead, 0)
			a.ground(w.From, x, y, true)
		}
	}
}

// endOf draws the returns of the end of a circuit, and its caption.
func (a *painter) endOf(c *cell.Cell, body scene.Rect, text lettering.Caption) {
	at := a.at(float64(c.X), float64(c.Rows[0].Y))
	left := at.X - float64(c.Lead)*symbol.M + 0.5
	if c.FromGrounds() || c.Onward() != nil {
		left = at.X
	}
	width := int(body.W)
	right := at.X + float64(width-c.PolesRight())*symbol.M - 0.5
	if len(c.Returns) > 1 {
		right -= labels.GroundGap / 2
	}
	if len(c.Returns) > 0 {
		run := a.ReturnRun(c.Returns, a.Stacked) + c.Longer + c.RunMore
		a.returnWires(c, c.Returns, width, run)
		if len(c.Returns) == 1 {
			right = at.X + float64(width+run)*symbol.M - a.GroundLeft(c.Returns) - labels.GroundGap
		}
	}
	base := at.Y + cell.CaptionBase(body.Y+body.H, a.Signs.DropOf(c.Part))
	if n := len(c.Inlets); n > 1 {
		base += float64((n-1)*a.InletStep()) * symbol.M
	}
	mid := at.X + body.W/2*symbol.M
	a.caption(text, centred(text, mid, left, right), base)
}

// returnWires draws returns one below the other, each with its ground.
func (a *painter) returnWires(c *cell.Cell, list []*circuit.Wire, symbolW, run int) {
	y := c.Rows[0].Y
	for k, w := range list {
		row := y + k*a.ReturnStep()
		start := route.Spot{X: c.X + symbolW, Y: y}
		pts := []route.Spot{start, {X: start.X, Y: row}, {X: start.X + run, Y: row}}
		if c.Plugged() {
			pts = pts[1:]
		}
		a.returnOf(c, w, pts, k > 0 && !c.Plugged())
	}
}

// returnOf draws a return along its way, with its label above the last stretch and its
// ground at the end.
func (a *painter) returnOf(c *cell.Cell, w *circuit.Wire, pts []route.Spot, joint bool) {
	end, from := pts[len(pts)-1], pts[len(pts)-2]
	left := float64(from.X) + 0.4
	a.returnWire(w, route.Tidy(pts), joint, left)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("label-" + w.Number), Class: "label", Title: w.Number, Of: w.Number})
	a.label(w, left, end.Y, a.Stacked && !c.FlatReturns)
	a.sheet.End()
	a.ground(w.To, end.X, end.Y, true)
}

// returnWire draws the line of a return in its group; its label begins at left, in modules.
func (a *painter) returnWire(w *circuit.Wire, pts []route.Spot, joint bool, left float64) {
	a.sheet.Begin(a.wireGroup(w, w.From))
	var line []scene.Point
	for _, s := range pts {
		line = append(line, a.spot(s))
	}
	a.Marks.Line(w.Number, line...)
	a.Spots.Way(w.Number, line...)
	if len(w.Poles) > 0 {
		a.partedLine(w, line, a.at(left, float64(pts[len(pts)-1].Y)))
	} else {
		a.sheet.Polyline(line, scene.Pen(symbol.WireMM))
	}
	if joint {
		a.sheet.Dot(line[0], symbol.DotMM, scene.Ink)
	}
	a.sheet.End()
}

// ground draws the sign of a ground point hanging from a place, with its name below
// it or, where the line goes on down, beside it on the left.
func (a *painter) ground(t *circuit.Terminal, x, y int, last bool) {
	name := a.GroundName(t)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("ground-" + name), Class: "ground", Title: "to " + name, Of: t.Part.Ref})
	kind, at := parts.GroundKind(t.Part), a.at(float64(x), float64(y))
	a.Set.Symbol(kind).Draw(a.pen(x, y), "")
	if kind == symbol.Outgoing {
		name = "to " + name
	}
	if last {
		a.text(at.X+symbol.M, at.Y+labels.GroundBase, name, scene.Regular, scene.Right, scene.Ink)
	} else {
		a.text(at.X-1.4*symbol.M, at.Y+1.3*symbol.M, name, scene.Regular, scene.Right, scene.Ink)
	}
	a.sheet.End()
}
