package paint

import (
	"cmp"
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// incoming draws the flag of a terminal that stands elsewhere.
func (a *painter) incoming(c *cell.Cell) {
	x := a.sheets.Refs[c.Term]
	from := a.sheets.Where(cmp.Or(x.From, x.Home))
	name := parts.TerminalName(c.Term)
	a.sheet.Begin(scene.Group{ID: a.sheets.FlagID(c), Class: "reference", Link: a.sheets.LinkFrom(x),
		Title: "from " + name, Desc: wording.Present([]string{"continued from sheet and zone", from}, " ")})
	y := c.Rows[0].Y
	a.Set.Symbol(symbol.Incoming).Draw(a.pen(c.X+arrange.FlagBody-2, y), "")
	at := a.at(float64(c.X+arrange.FlagBody-2), float64(y))
	tail := ""
	if from != "" {
		tail = " from " + from
	}
	right := at.X - 0.6
	a.text(right, at.Y+lettering.CapMM/2, tail, scene.Regular, scene.Right, scene.Ink)
	room := float64(arrange.FlagBody-2)*symbol.M - lettering.TextW(tail, scene.Regular) - 1
	bold := scene.Ellipsis(parts.ShortName(c.Term), lettering.SmallMM, room, scene.Bold)
	a.text(right-lettering.TextW(tail, scene.Regular), at.Y+lettering.CapMM/2, bold, scene.Bold, scene.Right, scene.Ink)
	for i, words := range c.Caption.Lines {
		words = scene.Ellipsis(words, lettering.SmallMM, (arrange.FlagBody-2)*symbol.M-1, scene.Regular)
		a.text(right, at.Y+lettering.CapMM/2+float64(i+1)*lettering.LineMM, words, scene.Regular, scene.Right, lettering.Grey)
	}
	a.sheet.End()
}

// wireAndPart names what a flag leads to: the wire, by the number it carries at both
// ends, and the part it feeds.
func wireAndPart(in *cell.Inlet) string {
	if in.Wire == nil {
		return in.Cell.Part.Ref
	}
	return in.Wire.Number + " " + in.Cell.Part.Ref
}

// outgoing draws the flag of a terminal that goes on elsewhere.
func (a *painter) outgoing(c *cell.Cell) {
	var places, fed, wires []string
	for _, away := range a.sheets.Refs[c.Term].Aways {
		places = append(places, a.sheets.Where(away))
	}
	for _, in := range a.sheets.Feeds[c.Term] {
		if !in.Cell.Empty && !a.on.Wires(a.sheets.Outs[in.Source], in) {
			if in.Wire != nil {
				wires = append(wires, in.Wire.Number)
			}
			fed = append(fed, wireAndPart(in))
		}
	}
	to := wording.Present(places, ", ")
	name := parts.TerminalName(c.Term)
	a.sheet.Begin(scene.Group{ID: a.sheets.FlagID(c), Class: "reference", Link: a.sheets.LinkTo(c),
		Title: name + " goes on", Desc: "continued at sheet and zone " + to})
	y := c.Rows[0].Y
	a.Set.Symbol(symbol.Outgoing).Draw(a.pen(c.X, y), "")
	at := a.at(float64(c.X), float64(y))
	room := float64(arrange.FlagBody-3) * symbol.M
	a.text(at.X+2.8*symbol.M, at.Y+lettering.CapMM/2, lettering.Some("to ", places, room, scene.Bold), scene.Bold, scene.Left, scene.Ink)
	if len(wires) > 0 && lettering.TextW(wording.Present(fed, ", "), scene.Regular) > room { // the numbers find the parts
		fed = wires
	}
	words := lettering.Some("", fed, room, scene.Regular)
	a.text(at.X+2.8*symbol.M, at.Y+lettering.CapMM/2+lettering.LineMM, words, scene.Regular, scene.Left, lettering.Grey)
	a.sheet.End()
}
