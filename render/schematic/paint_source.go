package schematic

import (
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// source draws the battery with the generator and the vehicle's loads at its
// posts. What joins them is the factory's wiring and has no wire numbers.
func (a *painter) source(c *cell) {
	y := c.rows[0].y
	vehicle, generator, battery := a.sourceRows()
	p := a.wirePen(c.x, y)
	top := 0.0
	if len(c.outlets) == 0 {
		top = float64(battery)
		if vehicle > 0 {
			top = float64(vehicle)
		} else if generator > 0 {
			top = float64(generator)
		}
	}
	p.Line(sourceTrunk, top, sourceTrunk, float64(battery))
	g, v := a.sourceParts()
	vehicleText, generatorText := a.sourceCaptions()
	if vehicle > 0 {
		a.branch(c, y+vehicle, a.set.Symbol(symbol.VehicleLoads), vehicleText, a.flags.ofPart(v))
		if len(c.outlets) > 0 {
			p.Dot(sourceTrunk, float64(vehicle))
		}
	}
	if generator > 0 {
		a.branch(c, y+generator, a.set.Symbol(symbol.Generator), generatorText, a.flags.ofPart(g))
		p.Dot(sourceTrunk, float64(generator))
	}
	a.set.Symbol(symbol.Battery).Draw(a.pen(c.x+sourceTrunk, y+battery), "")
	a.set.Symbol(symbol.Negative).Draw(a.pen(c.x+sourceTrunk, y+battery+5), "")
	if vehicle > 0 || generator > 0 {
		top := generator
		if vehicle > 0 {
			top = vehicle
			if generator > 0 {
				p.Dot(sourceNeg, float64(generator))
			}
		}
		p.Line(sourceNeg, float64(top), sourceNeg, float64(battery+5), sourceTrunk, float64(battery+5))
		p.Dot(sourceTrunk, float64(battery+5))
	}
	at := a.at(float64(c.x+sourceTrunk), float64(y+battery))
	a.text(at.X+0.8*symbol.M, at.Y+6.5*symbol.M, batteryPostText(c.part), scene.Regular, scene.Left, scene.Ink)
	a.caption(c.caption, at.X+2.1*symbol.M, at.Y+2.2*symbol.M, a.flags.ofPart(c.part))
}

// branch draws a part between the positive and the negative trunk.
func (a *painter) branch(c *cell, row int, s *symbol.Symbol, text caption, flag int) {
	x := c.x + sourceTrunk
	s.Draw(a.pen(x, row), "")
	a.wirePen(x+sourceBranch, row).Line(0, 0, sourceNeg-sourceTrunk-sourceBranch, 0)
	at := a.at(float64(x), float64(row))
	a.caption(text, at.X+0.3*symbol.M, at.Y+captionBase(s.Body.Y+s.Body.H, flag > 0), flag)
}
