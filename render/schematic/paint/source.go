package paint

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// source draws the battery with the generator and the vehicle's loads at its
// posts. What joins them is the factory's wiring and has no wire numbers.
func (a *painter) source(c *cell.Cell) {
	y := c.Rows[1].Y
	vehicle, generator, battery := cell.SourceRows(a.Labels)
	p := a.wirePen(c.X, y)
	top := float64(battery)
	for _, row := range []int{generator, vehicle} {
		if row >= 0 {
			top = float64(row)
		}
	}
	if len(c.Outlets) > 0 {
		top = float64(c.Rows[0].Y - y)
	}
	p.Line(cell.SourceTrunk, top, cell.SourceTrunk, float64(battery))
	g, v := parts.SourceParts(a.Circuit)
	vehicleText, generatorText := a.sourceCaptions()
	foot := float64(battery + 5)
	first := -1.0
	if vehicle >= 0 {
		_, watts := a.WordsOf(v)
		a.branch(c, v, y+vehicle, a.Set.Symbol(symbol.VehicleLoads), watts)
		a.branchCaption(c, y+vehicle, a.Set.Symbol(symbol.VehicleLoads), vehicleText, a.Signs.OfPart(v))
		first = float64(vehicle)
	}
	if generator >= 0 {
		a.branch(c, g, y+generator, a.Set.Symbol(symbol.Generator), "")
		a.branchCaption(c, y+generator, a.Set.Symbol(symbol.Generator), generatorText, a.Signs.OfPart(g))
		if first < 0 {
			first = float64(generator)
		} else {
			p.Dot(cell.SourceNeg, float64(generator))
		}
	}
	for _, row := range []int{vehicle, generator} {
		if row >= 0 && float64(row) > top {
			p.Dot(cell.SourceTrunk, float64(row))
		}
	}
	if first >= 0 {
		p.Line(cell.SourceNeg, first, cell.SourceNeg, foot, cell.SourceTrunk, foot)
		p.Dot(cell.SourceTrunk, foot)
	}
	a.surround(c.Part, a.boxAt(c.X+cell.SourceTrunk, y+battery, a.Set.Symbol(symbol.Battery).Body))
	a.Set.Symbol(symbol.Battery).Draw(a.pen(c.X+cell.SourceTrunk, y+battery), "")
	a.Set.Symbol(symbol.Negative).Draw(a.pen(c.X+cell.SourceTrunk, y+battery+5), "")
	at := a.at(float64(c.X+cell.SourceTrunk), float64(y+battery))
	a.text(at.X+0.8*symbol.M, at.Y+6.5*symbol.M, parts.BatteryPostText(c.Part), scene.Regular, scene.Left, scene.Ink)
	left := at.X + (2.1+float64(a.Signs.LeadGap(c.Part)))*symbol.M
	a.caption(c.Caption, left, at.Y+1.5*symbol.M)
}

// branch draws a part between the positive and the negative trunk.
func (a *painter) branch(c *cell.Cell, part *circuit.Part, row int, s *symbol.Symbol, sign string) {
	x := c.X + cell.SourceTrunk
	a.surround(part, a.boxAt(x, row, s.Body))
	s.Draw(a.pen(x, row), sign)
	a.wirePen(x+cell.SourceBranch, row).Line(0, 0, cell.SourceNeg-cell.SourceTrunk-cell.SourceBranch, 0)
}

func (a *painter) branchCaption(c *cell.Cell, row int, s *symbol.Symbol, text lettering.Caption, flag int) {
	at := a.at(float64(c.X+cell.SourceTrunk), float64(row))
	a.caption(text, at.X+0.4*symbol.M, at.Y+cell.CaptionBase(s.Body.Y+s.Body.H, a.Signs.DropFor(flag)))
}

// sourceCaptions are the texts at the vehicle's loads and the generator.
func (a *painter) sourceCaptions() (vehicle, generator lettering.Caption) {
	g, v := parts.SourceParts(a.Circuit)
	const width = (cell.SourceNeg - cell.SourceTrunk - 0.7) * symbol.M
	if v != nil {
		words, _ := a.WordsOf(v)
		vehicle = a.Head(v).Fit(words, "", width, 1).Solved(width, a.Study.Part(v)...)
	}
	if g != nil {
		words, details := a.WordsOf(g)
		if a.Study != nil { // the second line is the solved one
			details = ""
		}
		generator = a.Head(g).Fit(words, details, width, a.Plain(2, 1)).Solved(width, a.Study.Part(g)...)
	}
	return vehicle, generator
}
