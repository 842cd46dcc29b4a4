package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// source draws the battery with the generator and the vehicle's loads at its
// posts. What joins them is the factory's wiring and has no wire numbers.
func (a *painter) source(c *cell) {
	y := c.rows[1].y
	vehicle, generator, battery := sourceRows(a.labels)
	p := a.wirePen(c.x, y)
	top := float64(battery)
	for _, row := range []int{generator, vehicle} {
		if row >= 0 {
			top = float64(row)
		}
	}
	if len(c.outlets) > 0 {
		top = float64(c.rows[0].y - y)
	}
	p.Line(sourceTrunk, top, sourceTrunk, float64(battery))
	g, v := sourceParts(a.circuit)
	vehicleText, generatorText := a.sourceCaptions()
	foot := float64(battery + 5)
	first := -1.0
	if vehicle >= 0 {
		_, watts := a.wordsOf(v)
		a.branch(c, v, y+vehicle, a.set.Symbol(symbol.VehicleLoads), watts)
		a.branchCaption(c, y+vehicle, a.set.Symbol(symbol.VehicleLoads), vehicleText, a.signs.ofPart(v))
		first = float64(vehicle)
	}
	if generator >= 0 {
		a.branch(c, g, y+generator, a.set.Symbol(symbol.Generator), "")
		a.branchCaption(c, y+generator, a.set.Symbol(symbol.Generator), generatorText, a.signs.ofPart(g))
		if first < 0 {
			first = float64(generator)
		} else {
			p.Dot(sourceNeg, float64(generator))
		}
	}
	for _, row := range []int{vehicle, generator} {
		if row >= 0 && float64(row) > top {
			p.Dot(sourceTrunk, float64(row))
		}
	}
	if first >= 0 {
		p.Line(sourceNeg, first, sourceNeg, foot, sourceTrunk, foot)
		p.Dot(sourceTrunk, foot)
	}
	a.surround(c.part, a.boxAt(c.x+sourceTrunk, y+battery, a.set.Symbol(symbol.Battery).Body))
	a.set.Symbol(symbol.Battery).Draw(a.pen(c.x+sourceTrunk, y+battery), "")
	a.set.Symbol(symbol.Negative).Draw(a.pen(c.x+sourceTrunk, y+battery+5), "")
	at := a.at(float64(c.x+sourceTrunk), float64(y+battery))
	a.text(at.X+0.8*symbol.M, at.Y+6.5*symbol.M, batteryPostText(c.part), scene.Regular, scene.Left, scene.Ink)
	left := at.X + (2.1+float64(a.signs.leadGap(c.part)))*symbol.M
	a.caption(c.caption, left, at.Y+1.5*symbol.M)
}

// branch draws a part between the positive and the negative trunk.
func (a *painter) branch(c *cell, part *circuit.Part, row int, s *symbol.Symbol, sign string) {
	x := c.x + sourceTrunk
	a.surround(part, a.boxAt(x, row, s.Body))
	s.Draw(a.pen(x, row), sign)
	a.wirePen(x+sourceBranch, row).Line(0, 0, sourceNeg-sourceTrunk-sourceBranch, 0)
}

func (a *painter) branchCaption(c *cell, row int, s *symbol.Symbol, text caption, flag int) {
	at := a.at(float64(c.x+sourceTrunk), float64(row))
	a.caption(text, at.X+0.4*symbol.M, at.Y+captionBase(s.Body.Y+s.Body.H, a.signs.dropFor(flag)))
}

// sourceCaptions are the texts at the vehicle's loads and the generator.
func (a *painter) sourceCaptions() (vehicle, generator caption) {
	g, v := sourceParts(a.circuit)
	const width = (sourceNeg - sourceTrunk - 0.7) * symbol.M
	if v != nil {
		words, _ := a.wordsOf(v)
		vehicle = a.head(v).fit(words, "", width, 1).solved(width, a.study.part(v)...)
	}
	if g != nil {
		words, details := a.wordsOf(g)
		if a.study != nil { // the second line is the solved one
			details = ""
		}
		generator = a.head(g).fit(words, details, width, a.plain(2, 1)).solved(width, a.study.part(g)...)
	}
	return vehicle, generator
}
