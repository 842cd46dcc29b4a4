package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// load draws a load, its returns and their grounds.
func (a *painter) load(c *cell) {
	s := symbolOf(a.set, c.part)
	body := c.plugBody(s.Body, len(c.returns))
	a.surround(c.part, a.boxAt(c.x, c.rows[0].y, body))
	s.Draw(a.pen(c.x+c.inset, c.rows[0].y), shortSign(nameOf(c.part)))
	var rows []int
	for k := range c.returns {
		rows = append(rows, c.rows[0].y+k*a.returnStep())
	}
	a.drawPlug(c, body, rows)
	a.endOf(c, body, c.caption)
}

// endOf draws the returns of the end of a circuit, and its caption.
func (a *painter) endOf(c *cell, body scene.Rect, text caption) {
	flag := a.signs.ofPart(c.part)
	at := a.at(float64(c.x), float64(c.rows[0].y))
	left := at.X - float64(c.lead)*symbol.M + 0.5
	width := int(body.W)
	right := at.X + float64(width-c.polesRight())*symbol.M - 0.5
	if len(c.returns) > 0 {
		run := a.returnRun(c.returns) + c.runMore + a.signs.leadGap(c.part)
		a.returnWires(c, width, run)
		if len(c.returns) == 1 {
			right = at.X + float64(width+run)*symbol.M - a.groundLeft(c.returns) - groundGap
		}
	}
	base := at.Y + captionBase(body.Y+body.H, a.signs.dropFor(flag))
	if n := len(c.inlets); n > 1 {
		base += float64((n-1)*a.inletStep()) * symbol.M
	}
	mid := at.X + body.W/2*symbol.M
	a.caption(text, centred(text, mid, left, right), base)
}

// returnWires draws the returns one below the other, each with its ground.
func (a *painter) returnWires(c *cell, symbolW, run int) {
	y := c.rows[0].y
	for k, w := range c.returns {
		row := y + k*a.returnStep()
		start := spot{c.x + symbolW, y}
		pts := []spot{start, {c.x + symbolW, row}, {c.x + symbolW + run, row}}
		if c.plugged() {
			pts = pts[1:]
		}
		a.returnWire(w, tidy(pts), k > 0 && !c.plugged())
		a.wireLabelOnly(w, float64(c.x+symbolW+a.signs.leadGap(c.part))+0.4, row, a.stacked && !c.flatReturns)
		a.ground(w.To, c.x+symbolW+run, row, scene.Middle)
	}
}

// returnWire draws the line of a return in its group.
func (a *painter) returnWire(w *circuit.Wire, pts []spot, joint bool) {
	a.sheet.Begin(a.wireGroup(w, w.From))
	var line []scene.Point
	for _, s := range pts {
		line = append(line, a.spot(s))
	}
	a.band(w.Number, line)
	a.sheet.Polyline(line, scene.Pen(symbol.WireMM))
	if joint {
		a.sheet.Dot(line[0], symbol.DotMM, scene.Ink)
	}
	a.sheet.End()
}

// wireLabelOnly writes a wire's label in a group of its own.
func (a *painter) wireLabelOnly(w *circuit.Wire, left float64, row int, stacked bool) {
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("label-" + w.Number), Class: "label", Title: w.Number})
	a.label(w, left, row, stacked)
	a.sheet.End()
}

// ground draws the sign of a ground point hanging from a place, with its name
// below it or, when align is Right, beside it on the left.
func (a *painter) ground(t *circuit.Terminal, x, y int, align scene.Align) {
	name := a.groundName(t)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("ground-" + name), Class: "ground", Title: "to " + name})
	kind := groundKind(t.Part)
	if kind == symbol.Outgoing {
		kind = symbol.Negative
	}
	a.set.Symbol(kind).Draw(a.pen(x, y), "")
	at := a.at(float64(x), float64(y))
	if align == scene.Right {
		a.text(at.X-1.4*symbol.M, at.Y+1.4*symbol.M, name, scene.Regular, scene.Right, scene.Ink)
	} else {
		a.text(at.X+symbol.M, at.Y+1.75*symbol.M+0.5+capMM, name, scene.Regular, scene.Right, scene.Ink)
	}
	a.sheet.End()
}
