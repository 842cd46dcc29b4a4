package schematic

import (
	"math"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// groundDrop is how far a ground's sign and name reach below the wire, in mm.
const groundDrop = 1.75*symbol.M + 0.5 + capMM + descMM

// groundGap is the least room between a load's words and its ground's name, in
// mm.
const groundGap = 3.2

// returnStep is the distance between two returns of one part.
func (d *drawing) returnStep() int {
	return int(math.Ceil(groundDrop/symbol.M + d.labelTop()))
}

// shapeLoad measures a load.
func (d *drawing) shapeLoad(c *cell) {
	d.shapeEnd(c, c.plugBody(d.symbolOf(c.part).Body, len(c.returns)))
	d.addOutlets(c, c.body)
}

// shapeEnd measures the end of a circuit with its returns: the body, then the
// return wire with its label, then the ground's sign with its name below.
func (d *drawing) shapeEnd(c *cell, body scene.Rect) {
	c.lead = d.leadOf(c)
	if len(c.inlets) > 1 && !c.plugged() {
		c.lead++
	}
	c.body = int(body.W)
	low := float64(d.spreadInlets(c.inlets, 0)) + 0.8
	right := float64(c.lead+c.body-c.polesRight()) * symbol.M
	if n := len(c.returns); n > 0 {
		run := d.returnRun(c.returns)
		run += d.flags.leadGap(c.part)
		c.body += run + 1 // half the ground's sign reaches beyond
		low = max(low, float64((n-1)*d.returnStep())+groundDrop/symbol.M+0.15)
		if n == 1 { // the words may reach under the return wire
			right += float64(run)*symbol.M - d.groundLeft(c.returns) - groundGap
		}
	}
	if len(c.inlets) > 1 || len(c.returns) > 1 {
		low = max(low, float64(len(c.inlets)*d.inletStep()))
	}
	if right < minCaption*symbol.M {
		c.lead += minCaption - int(right/symbol.M)
		right = minCaption * symbol.M
	}
	c.caption = d.captionOf(c.part, right-1, 3)
	if c.mate != nil {
		c.caption = d.coilCaption(c, right-1)
	}
	r := c.rows[0]
	r.top = max(d.labelTop(), -body.Y+0.15+d.flags.haloOf(c.part))
	base := captionBottom(body.Y+body.H, len(c.caption.lines), d.flags.dropOf(c.part))
	if len(c.inlets) > 1 {
		base += low
	}
	r.bottom = max(low, base)
}

// returnRun is the length of the return wires, up to the ground's sign.
func (d *drawing) returnRun(wires []*circuit.Wire) int { return d.returnRunOf(wires, d.stacked) }

// returnRunOf is returnRun for labels in two lines or in one.
func (d *drawing) returnRunOf(wires []*circuit.Wire, stacked bool) (run int) {
	for _, w := range wires {
		run = max(run, d.labelMOf(w, stacked))
	}
	return run
}

// groundLeft is how far ground names and signs reach to the left of the sign's
// middle, in mm: names end flush with the sign's right edge.
func (d *drawing) groundLeft(wires []*circuit.Wire) float64 {
	left := 1.3 * symbol.M
	for _, w := range wires {
		left = max(left, textW(d.groundName(w.To), scene.Regular)-symbol.M)
	}
	return left
}

// groundName is what stands at a return's sign: reference and name of the
// ground point.
func (d *drawing) groundName(t *circuit.Terminal) string {
	p := t.Part
	switch p.Kind {
	case circuit.Ground:
		return scene.Ellipsis(wording.Present([]string{p.Ref, nameOf(p)}, " "), smallMM, 26, scene.Regular)
	case circuit.Battery:
		return p.Ref + " −"
	}
	return p.Ref + ":" + t.Name
}

// groundKind is the sign of a ground point.
func groundKind(p *circuit.Part) symbol.Kind {
	switch {
	case p.Kind == circuit.Battery:
		return symbol.Negative
	case p.Kind != circuit.Ground:
		return symbol.Outgoing
	case isGroundBlock(p):
		return symbol.GroundBar
	}
	return symbol.Frame
}
