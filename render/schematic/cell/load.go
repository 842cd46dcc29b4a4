package cell

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// Ends tells whether a cell is the end of a circuit, with its grounds: a load, and the
// last of what stands in a return.
func (c *Cell) Ends() bool {
	return c.Part.Kind == circuit.Load || c.Part.Kind == circuit.Generator && !c.Part.Studded() || len(c.Returns) > 0 && c.Part.Kind != circuit.Battery && c.Part.Kind != circuit.Relay
}

// shapeLoad measures the end of a circuit: a load, or the last part of a return.
func (b *builder) shapeLoad(c *Cell) {
	body := c.PlugBody(parts.SymbolOf(b.Set, c.Part).Body, len(c.Returns))
	b.shapeEnd(c, body)
	b.addOutlets(c, c.Body)
	if c.OnCase() {
		c.Body++ // half the ground's sign reaches beyond
	}
	if len(c.Returns) == 0 && len(c.Outlets) > 0 {
		c.Outlets[0].Dx = int(body.W)
	}
	if b.feedsOn(c.Part) {
		r := c.Rows[0]
		o := &Outlet{Cell: c, Term: c.Part.Terminal("+"), Row: r, Dx: c.Body, Off: int(math.Ceil(r.Bottom)) + 1}
		c.Outlets = append(c.Outlets, o)
		r.Bottom = float64(o.Off) + 0.8
	}
	if c.FromGrounds() {
		c.Lead += GroundLead + 1
	}
}

// Onward is where a load on which another one hangs feeds it: the line leaves just before the
// load and passes below it and its caption. Nil = nothing hangs on it.
func (c *Cell) Onward() *Outlet {
	for _, o := range c.Outlets {
		if c.Kind == Part && c.Part.Kind == circuit.Load && o.Off > 0 {
			return o
		}
	}
	return nil
}

func (b *builder) feedsOn(p *circuit.Part) bool {
	return p.Kind == circuit.Load && len(b.Feeds[p.Terminal("+")]) > 0
}

// OnCase tells of a charging system that returns by its case: the sign stands at its end.
func (c *Cell) OnCase() bool { return parts.Cabled(c.Part) && !c.Part.Studded() && len(c.Returns) == 0 }

// GroundLead is the line from a ground's sign to what stands in its return.
const GroundLead = 3

// FromGrounds tells whether nothing but grounds comes in at the last part of a return:
// their wires are listed with the grounds.
func (c *Cell) FromGrounds() bool { return c.Part.InReturn && len(c.Inlets) == 0 }

// shapeEnd measures the end of a circuit with its returns: the body, then the
// return wire with its label, then the ground's sign with its name below.
func (b *builder) shapeEnd(c *Cell, body scene.Rect) {
	c.Lead = b.leadOf(c)
	onward := b.feedsOn(c.Part)
	if (len(c.Inlets) > 1 || onward) && !c.Plugged() {
		c.Lead++
	}
	c.Body = int(body.W)
	low := float64(b.spreadInlets(c.Inlets, 0)) + 0.8
	right := float64(c.Lead+c.Body-c.PolesRight()) * symbol.M
	if n := len(c.Returns); n > 0 {
		run := b.ReturnRun(c.Returns, b.Stacked)
		c.Body += run + 1 // half the ground's sign reaches beyond
		low = max(low, float64((n-1)*b.ReturnStep())+labels.GroundRoom/symbol.M)
		if n == 1 { // the words may reach under the return wire
			right += float64(run)*symbol.M - b.GroundLeft(c.Returns) - labels.GroundGap
		}
	}
	if len(c.Inlets) > 1 || len(c.Returns) > 1 {
		low = max(low, float64(len(c.Inlets)*b.InletStep()))
	}
	if len(c.Returns) > 1 {
		right -= labels.GroundGap / 2 // clear of the line down to the further ones
	}
	if onward { // the line down stands where the caption's left would be
		right -= float64(c.Lead) * symbol.M
	}
	if more := labels.MinCaption - int(right/symbol.M); right < labels.MinCaption*symbol.M {
		if right = labels.MinCaption * symbol.M; onward {
			c.Body, c.Longer = c.Body+more, more
		} else {
			c.Lead += more
		}
	}
	c.Caption = b.CaptionOf(c.Part, right-1)
	if c.Mate != nil {
		c.Caption = b.CoilCaption(c.Part, right-1)
	}
	r := c.Rows[0]
	r.Top = max(b.LabelTop(), -body.Y+0.15)
	base := captionBottom(body.Y+body.H, len(c.Caption.Lines), b.Signs.DropOf(c.Part))
	if len(c.Inlets) > 1 {
		base += low
	}
	r.Bottom = max(low, base)
}
