package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// relay draws an assembled relay: outline, contact, coil, link, suppressor and
// terminal numbers.
func (a *painter) relay(c *cell.Cell) {
	g := c.Geometry
	y := c.Rows[0].Y
	p := a.pen(c.X, y)
	outline := scene.Pen(symbol.LineMM).Dashed(1.8, 1)
	box := a.at(float64(c.X), float64(y)+g.Roof)
	around := a.boxAt(c.X, y, scene.Rect{Y: g.Roof, W: cell.RelayBody, H: float64(g.Floor) - g.Roof})
	a.Marks.Box(c.Part.Ref, around)
	a.spots.box(c.Part.Ref, around)
	a.spots.way(c.Part.Ref, a.at(float64(c.X), float64(y)), a.at(float64(c.X)+cell.RelayBody, float64(y)))
	a.spots.way(c.Part.Ref+":coil", a.at(float64(c.X), float64(y+g.Coil)), a.at(float64(c.X)+cell.RelayDrop, float64(y+g.Coil)), a.at(float64(c.X)+cell.RelayDrop, float64(y+g.Floor)))
	a.sheet.Rect(around, &outline, nil)
	a.relayContact(c, p)
	a.relayCoil(c)
	a.captionAtop(c.Caption, box, a.Signs.OfPart(c.Part))
	for k, w := range c.CoilReturns() {
		a.coilReturn(c, w, k)
	}
	a.contactReturns(c)
	for _, o := range c.Outlets {
		if o.Term.Name == "85" { // on to what stands in its return
			a.pen(c.X, y).Line(cell.RelayDrop, float64(g.Floor), cell.RelayDrop, float64(o.Off))
		}
	}
}

// contactReturns draws the grounds of a contact that stands in a return.
func (a *painter) contactReturns(c *cell.Cell) {
	if list := c.ContactReturns(); c.Part.InReturn && len(list) > 0 {
		a.returnWires(c, list, cell.RelayBody, a.ReturnRun(list, a.Stacked))
	}
}

func (a *painter) relayContact(c *cell.Cell, p *symbol.Pen) {
	y := c.Rows[0].Y
	if c.Geometry.Rests {
		a.restingContact(c, p)
		return
	}
	kind := parts.ContactKind(c.Part)
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, cell.RelayBody, 0)
	contact := a.pen(c.X+2, y)
	if c.Part.InReturn { // the load is on the left
		contact.FlipM = cell.RelayBody - 4
		a.Set.Symbol(kind).Draw(contact, "")
		a.terminal(c.X, y, 0.35, "87", scene.Left)
		a.terminal(c.X+cell.RelayBody, y, -0.35, "30", scene.Right)
		if c.Geometry.Changeover {
			p.Line(0, -2, 2, -2)
			a.terminal(c.X, y-2, 0.35, "87a", scene.Left)
		}
		return
	}
	a.Set.Symbol(kind).Draw(contact, "")
	a.terminal(c.X, y, 0.35, "30", scene.Left)
	a.terminal(c.X+cell.RelayBody, y, -0.35, "87", scene.Right)
	if c.Geometry.Changeover {
		p.Line(6, -2, cell.RelayBody, -2)
		a.terminal(c.X+cell.RelayBody, y-2, -0.35, "87a", scene.Right)
	}
}

// restingContact draws the contact of a half of a reversing contactor: the blade on
// 30 at the right, the feed at 87 on the left, and the return from 87a above.
func (a *painter) restingContact(c *cell.Cell, p *symbol.Pen) {
	y, g := c.Rows[0].Y, c.Geometry
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, cell.RelayBody, 0)
	contact := a.pen(c.X+2, y)
	contact.FlipM = cell.RelayBody - 4
	a.Set.Symbol(parts.ContactKind(c.Part)).Draw(contact, "")
	a.terminal(c.X, y, 0.35, "87", scene.Left)
	a.terminal(c.X+cell.RelayBody, y, -0.35, "30", scene.Right)
	if g.CaseOf != nil { // no terminals of its own: bars inside the case
		p.Line(0, -2, 2, -2)
		a.terminal(c.X, y-2, 0.35, "87a", scene.Left)
		ref := a.Circuit.PartOf(g.CaseOf).Ref
		for k, name := range []string{":87", ":87a"} {
			at := a.at(float64(c.X)-0.4, float64(y-2*k))
			a.text(at.X, at.Y+lettering.CapMM/2, ref+name, scene.Regular, scene.Right, scene.Ink)
		}
		return
	}
	p.Line(2, -2, 1, -2, 1, float64(g.Return), cell.RelayBody, float64(g.Return))
	a.terminal(c.X+cell.RelayBody, y+g.Return, -0.35, "87a", scene.Right)
	for k, w := range c.ContactReturns() {
		row, run := y+g.Return-k*a.ReturnStep(), a.ReturnRun(c.ContactReturns(), a.Stacked)
		start := route.Spot{X: c.X + cell.RelayBody, Y: y + g.Return}
		a.returnOf(c, w, []route.Spot{start, {X: start.X, Y: row}, {X: start.X + run, Y: row}}, k > 0)
	}
}

// terminal writes a terminal's number above its line; dx in modules.
func (a *painter) terminal(x, y int, dx float64, number string, align scene.Align) {
	at := a.at(float64(x)+dx, float64(y))
	a.text(at.X, at.Y-lettering.GapMM, number, scene.Regular, align, scene.Ink)
}

func (a *painter) relayCoil(c *cell.Cell) {
	g := c.Geometry
	y := c.Rows[0].Y
	row := y + g.Coil
	coil := a.Set.Symbol(g.Sign)
	coil.Draw(a.pen(c.X+2, row), "")
	p := a.pen(c.X, row)
	senses := c.Part.Coil().Senses()
	if senses { // the voltage of its feed, inside
		p.Line(1, float64(-g.Coil), 1, 0, 2, 0)
		p.Dot(1, float64(-g.Coil))
	} else {
		p.Line(0, 0, 2, 0)
	}
	p.Line(cell.RelayDrop, 0, cell.RelayDrop, float64(g.Floor-g.Coil))
	if !senses {
		a.terminal(c.X, row, 0.3, "86", scene.Left)
	}
	at := a.at(float64(c.X)+cell.RelayDrop+0.3, float64(y+g.Floor))
	a.text(at.X, at.Y-0.6, "85", scene.Regular, scene.Left, scene.Ink)
	contact := a.Set.Symbol(symbol.Make)
	a.pen(c.X+2, y).Link(contact.Link.X, contact.Link.Y, coil.Link.X, float64(g.Coil)+coil.Link.Y)
	if g.Suppressor != "" {
		p.Line(1, 0, 1, 2.5, 2, 2.5)
		s := symbol.NewPen(a.sheet, a.at(float64(c.X+2), float64(row)+2.5))
		a.Set.Symbol(g.Suppressor).Draw(s, "")
		p.Dot(1, 0)
		p.Dot(cell.RelayDrop, 2.5)
	}
}

// coilReturn draws a return of terminal 85 down to its ground, the label on the
// left of it. Further returns branch off below the first.
func (a *painter) coilReturn(c *cell.Cell, w *circuit.Wire, k int) {
	g := c.Geometry
	top := c.Rows[0].Y + g.Floor
	from := top + k*(g.Drop)
	to := top + (k+1)*g.Drop
	x := c.X + cell.RelayDrop
	a.sheet.Begin(a.wireGroup(w, w.From))
	pts := []scene.Point{a.spot(route.Spot{X: x, Y: from}), a.spot(route.Spot{X: x, Y: to})}
	a.Marks.Line(w.Number, pts...)
	a.spots.way(w.Number, pts...)
	a.sheet.Polyline(pts, scene.Pen(symbol.WireMM))
	lines := a.WireLabel(w, a.Stacked)
	at := a.at(float64(x), float64(to)-0.35)
	for i, s := range lines {
		face, colour := a.LabelFace(i)
		if i == 0 {
			a.Marks.Label(w.Number, wordBox(at.X-0.9-lettering.TextW(s, face), at.Y-float64(len(lines)-1)*lettering.LineMM, w.Number, face))
		}
		a.text(at.X-0.9, at.Y-float64(len(lines)-1-i)*lettering.LineMM, s, face, scene.Right, colour)
	}
	if f := a.Signs.OfWire(w); f > 0 {
		a.flag(f, at.X-1.2-a.LabelW(w, a.Stacked)-sign.Wide/2, at.Y-sign.Rise)
	}
	a.sheet.End()
	a.ground(w.To, x, to, k == len(c.CoilReturns())-1)
}

// contactApart draws a relay's contact in its conductor.
func (a *painter) contactApart(c *cell.Cell) {
	y := c.Rows[0].Y
	roof := -1.4
	if c.Geometry.Changeover {
		roof = -3.4
	}
	a.Marks.Box(c.Part.Ref, a.boxAt(c.X, y, scene.Rect{Y: roof, W: cell.RelayBody, H: 0.3 - roof}))
	a.spots.box(c.Part.Ref, a.boxAt(c.X, y, scene.Rect{Y: roof, W: cell.RelayBody, H: 0.3 - roof}))
	a.spots.way(c.Part.Ref, a.at(float64(c.X), float64(y)), a.at(float64(c.X)+cell.RelayBody, float64(y)))
	a.relayContact(c, a.pen(c.X, y))
	a.contactReturns(c)
	at := a.at(float64(c.X), float64(y))
	left := at.X - float64(c.Lead)*symbol.M + 0.5
	if len(c.Inlets) > 1 {
		left = at.X + 0.4
	}
	text := a.mated(c, "coil ")
	right := at.X + cell.RelayBody*symbol.M - 0.5
	a.caption(text, centred(text, at.X+cell.RelayBody/2*symbol.M, left, right), at.Y+cell.CaptionBase(0.25, a.Signs.DropOf(c.Part)))
}

// coilApart draws a relay's coil with its suppressor and returns.
func (a *painter) coilApart(c *cell.Cell) {
	y := c.Rows[0].Y
	a.Marks.Box(c.Part.Ref, a.boxAt(c.X, y, cell.CoilBody(c.Geometry)))
	a.spots.box(c.Part.Ref, a.boxAt(c.X, y, cell.CoilBody(c.Geometry)))
	a.spots.way(c.Part.Ref+":coil", a.at(float64(c.X), float64(y)), a.at(float64(c.X)+cell.RelayBody, float64(y)))
	a.Set.Symbol(c.Geometry.Sign).Draw(a.pen(c.X+2, y), "")
	p := a.pen(c.X, y)
	p.Line(0, 0, 2, 0)
	p.Line(6, 0, cell.RelayBody, 0)
	from := "86"
	if c.Part.Coil().Senses() {
		from = "30"
	}
	a.terminal(c.X, y, 0.35, from, scene.Left)
	a.terminal(c.X+cell.RelayBody, y, -0.35, "85", scene.Right)
	if k := c.Geometry.Suppressor; k != "" {
		p.Line(1, 0, 1, 2.5, 2, 2.5)
		p.Line(6, 2.5, 7, 2.5, 7, 0)
		p.Dot(1, 0)
		p.Dot(7, 0)
		a.Set.Symbol(k).Draw(symbol.NewPen(a.sheet, a.at(float64(c.X+2), float64(y)+2.5)), "")
	}
	a.endOf(c, cell.CoilBody(c.Geometry), a.mated(c, "contact "))
}

// mated is a caption with the place of the other half filled in.
func (a *painter) mated(c *cell.Cell, word string) lettering.Caption {
	text := c.Caption
	text.Lines = append([]string{}, text.Lines...)
	text.Lines[text.Mate] = word + a.sheets.Where(c.Mate)
	return text
}
