package schematic

import (
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// drawPlug draws the poles of a cell's plug about its body, the joints behind
// them and the line that links them. out are the rows of the poles on the right.
func (a *painter) drawPlug(c *cell, body scene.Rect, out []int) {
	if !c.plugged() {
		return
	}
	y := c.rows[0].y
	var in []int
	for _, q := range c.inlets {
		in = append(in, q.y())
	}
	right := c.x + int(body.W)
	a.poles(symbol.Plug, c.x, c.x+plugM, c.x+c.inset, y, in)
	a.poles(symbol.PlugBack, right-plugM, right-plugM, right-plugM-1, y, out)
	head := plugHead(c.part, body.W)
	top := body.Y + head
	var link []float64
	if len(in) > 0 {
		link = append(link, plugM/2.0, float64(in[len(in)-1]-y), plugM/2.0, top)
	}
	if len(out) > 0 {
		link = append(link, body.W-plugM/2.0, top, body.W-plugM/2.0, float64(out[len(out)-1]-y))
	}
	a.pen(c.x, y).Link(link...)
	if head > 0 {
		at := a.at(float64(c.x)+body.W/2, float64(y)+top)
		a.text(at.X, at.Y-plugGap, c.part.Plug.Family.Name, scene.Regular, scene.Middle, grey)
	}
}

// poles draws the poles of one side at x on their rows and, when there are
// several, the bar at which their wires join on the part's side.
func (a *painter) poles(k symbol.Kind, x, bar, inner, y int, rows []int) {
	for _, row := range rows {
		a.set.Symbol(k).Draw(a.pen(x, row), "")
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
