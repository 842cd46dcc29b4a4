package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// minCaption is the least width a caption gets, in modules.
const minCaption = 10

// tapBody is the width of a tap with its caption.
const tapBody = 9

// symbolOf chooses the symbol of a part that has one.
func (d *drawing) symbolOf(p *circuit.Part) *symbol.Symbol {
	switch p.Kind {
	case circuit.Fuse:
		if f, ok := p.Source.(*design.Fuse); ok && f.Type != nil {
			return d.set.Symbol(fuseKinds[f.Type.Kind])
		}
		return d.set.Symbol(symbol.Fuse)
	case circuit.Tap:
		return d.set.Symbol(symbol.Tap)
	case circuit.Splice:
		return d.set.Symbol(symbol.Splice)
	case circuit.Switch:
		if s, ok := p.Source.(*design.Switch); ok && s.Momentary {
			return d.set.Symbol(symbol.PushSwitch)
		}
		return d.set.Symbol(symbol.Switch)
	case circuit.Load:
		if l, ok := p.Source.(*design.Load); ok {
			return d.set.Symbol(loadKind(l))
		}
	}
	return d.set.Symbol(symbol.Electronics)
}

// fuseKinds is the symbol of each kind of overcurrent device; a kind that is
// not here gets the fuse.
var fuseKinds = map[string]symbol.Kind{
	"": symbol.Fuse, "fuse": symbol.Fuse, "breaker": symbol.Breaker, "ptc": symbol.PTC,
}

// loadKinds are the symbols of the signs of loads.
var loadKinds = map[design.Sign]symbol.Kind{
	design.SignLamp: symbol.Lamp, design.SignLED: symbol.LED, design.SignHeater: symbol.Heater,
	design.SignMotor: symbol.Motor, design.SignPump: symbol.Pump, design.SignHorn: symbol.Horn,
	design.SignSocket: symbol.Socket, design.SignElectronics: symbol.Electronics,
	design.SignSensor: symbol.Sensor,
}

// loadKind is the symbol of a load, by its sign.
func loadKind(l *design.Load) symbol.Kind {
	if k, ok := loadKinds[l.Sign]; ok {
		return k
	}
	return symbol.Electronics
}

// shapeInline measures fuses, switches, splices and taps: a symbol in the
// conductor with its caption below.
func (d *drawing) shapeInline(c *cell) {
	s := d.symbolOf(c.part)
	body := c.plugBody(s.Body, d.outOf(c.part))
	c.body = int(body.W)
	c.lead = d.leadOf(c)
	if c.part.Kind == circuit.Tap {
		c.body = tapBody
		if d.flags.ofPart(c.part) > 0 {
			c.body += inM(d.flags.wide - 0.5)
		}
	}
	if c.lead+c.body < minCaption && c.part.Kind != circuit.Tap {
		c.lead = minCaption - c.body
	}
	low := float64(d.spreadInlets(c.inlets, 0))
	r := c.rows[0]
	r.top = max(d.labelTop(), -body.Y+0.15+d.flags.haloOf(c.part))
	width := float64(c.lead+c.body)*symbol.M - 1
	if len(c.inlets) > 1 && !c.plugged() { // the bar that joins them stands where the caption would
		c.lead++
		width = max(float64(c.body), minCaption)*symbol.M - 1
		c.body = max(c.body, minCaption)
	}
	most := 3
	if c.part.Kind == circuit.Tap {
		most = 5
	}
	c.caption = d.captionOf(c.part, width, most)
	r.bottom = max(low+0.8, captionBottom(s.Body.Y+s.Body.H, len(c.caption.lines), d.flags.dropOf(c.part))+c.polesBelow())
	d.addOutlets(c, int(body.W))
}

// polesBelow is how far the poles of a plug push the caption down, in modules.
func (c *cell) polesBelow() float64 {
	if n := len(c.inlets); n > 1 && c.plugged() {
		return float64(c.inlets[n-1].off)
	}
	return 0
}

// outOf is 1 when a terminal of a part feeds anything, as addOutlets shows it.
func (d *drawing) outOf(p *circuit.Part) int {
	for _, t := range p.Terminals {
		if len(d.feeds[t]) > 0 {
			return 1
		}
	}
	return 0
}

// addOutlets shows the first terminal that feeds anything.
func (d *drawing) addOutlets(c *cell, dx int) {
	for _, t := range c.part.Terminals {
		if len(d.feeds[t]) > 0 && len(c.outlets) == 0 {
			c.outlets = append(c.outlets, &outlet{cell: c, term: t, row: c.rows[0], dx: dx})
		}
	}
}

// captionBottom is how far captions below a symbol reach, in modules below the
// row.
func captionBottom(symbolBottom float64, lines int, dropMM float64) float64 {
	return (captionBase(symbolBottom, dropMM)+float64(lines-1)*lineMM+descMM)/symbol.M + 0.12
}

// captionBase is the baseline of the first caption line, in mm below the row,
// lowered for a sign.
func captionBase(symbolBottom, dropMM float64) float64 {
	return max(symbolBottom, 0.25)*symbol.M + gapMM + 0.1 + capMM + dropMM
}
