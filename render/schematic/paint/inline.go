package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// inline draws a symbol in the conductor with its caption below.
func (a *painter) inline(c *cell.Cell) {
	s := parts.SymbolOf(a.Set, c.Part)
	y := c.Rows[0].Y
	x := c.X
	body := c.PlugBody(s.Body, len(c.Outlets))
	a.Marks.Box(c.Part.Ref, a.boxAt(x, y, body))
	a.Spots.Box(c.Part.Ref, a.boxAt(x, y, body))
	a.Spots.Way(c.Part.Ref, a.at(float64(x), float64(y)), a.at(float64(x)+body.W, float64(y)))
	s.Draw(a.pen(x+c.Inset, y), "")
	a.links(c.Part, float64(x)+2, float64(y)+symbol.BankTop)
	a.drawPlug(c, body, []int{y}[:len(c.Outlets)])
	at := a.at(float64(x), float64(y))
	left := at.X - float64(c.Lead)*symbol.M + 0.5
	if len(c.Inlets) > 1 && !c.Plugged() || c.Part.Kind == circuit.Tap {
		left = at.X + 0.4
	}
	right := at.X + float64(c.Body)*symbol.M - 0.5
	mid := at.X + body.W/2*symbol.M
	base := at.Y + cell.CaptionBase(s.Body.Y+s.Body.H, a.Signs.DropOf(c.Part)) + c.PolesBelow()*symbol.M
	a.caption(c.Caption, centred(c.Caption, mid, left, right), base)
}

// drawPlug draws the poles of a cell's plug about its body, the joints behind
// them and the line that links them. out are the rows of the poles on the right.
func (a *painter) drawPlug(c *cell.Cell, body scene.Rect, out []int) {
	if !c.Plugged() {
		return
	}
	y := c.Rows[0].Y
	var in []int
	for _, q := range c.Inlets {
		if !q.Turns() {
			in = append(in, q.Y())
		}
	}
	right := c.X + int(body.W)
	a.poles(symbol.Plug, c.X, c.X+labels.PlugM, c.X+c.Inset, y, in)
	a.poles(symbol.PlugBack, right-labels.PlugM, right-labels.PlugM, right-labels.PlugM-1, y, out)
	for _, q := range c.Inlets {
		if q.Turns() {
			a.poles(symbol.Plug, c.X, c.X, c.X, y, []int{q.Y()})
			in = append(in, q.Y()) // the link reaches so far
		}
	}
	head := labels.PlugHead(c.Part, body.W)
	top := body.Y + head
	var link []float64
	if len(in) > 0 {
		link = append(link, labels.PlugM/2.0, float64(in[len(in)-1]-y), labels.PlugM/2.0, top)
	}
	if len(out) > 0 {
		link = append(link, body.W-labels.PlugM/2.0, top, body.W-labels.PlugM/2.0, float64(out[len(out)-1]-y))
	}
	a.pen(c.X, y).Link(link...)
	if head > 0 {
		at := a.at(float64(c.X)+body.W/2, float64(y)+top)
		a.text(at.X, at.Y-labels.PlugGap, c.Part.Plug.Family.Name, scene.Regular, scene.Middle, lettering.Grey)
	}
}

// poles draws the poles of one side at x on their rows and, when there are
// several, the bar at which their wires join on the part's side.
func (a *painter) poles(k symbol.Kind, x, bar, inner, y int, rows []int) {
	for _, row := range rows {
		a.Set.Symbol(k).Draw(a.pen(x, row), "")
	}
	if len(rows) > 1 {
		p := a.pen(0, 0)
		p.Line(float64(bar), float64(y), float64(bar), float64(rows[len(rows)-1]))
		p.Line(float64(min(bar, inner)), float64(y), float64(max(bar, inner)), float64(y))
		for _, row := range rows[:len(rows)-1] {
			p.Dot(float64(bar), float64(row))
		}
	}
}
