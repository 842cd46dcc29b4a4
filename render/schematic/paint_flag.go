package schematic

import (
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// incoming draws the flag of a terminal that stands elsewhere.
func (a *painter) incoming(c *cell) {
	x := a.sheets.refs[c.term]
	from := ""
	if x != nil && x.from != nil {
		from = a.sheets.where(x.from)
	} else if x != nil && x.home != nil {
		from = a.sheets.where(x.home)
	}
	name := terminalName(c.term)
	a.sheet.Begin(scene.Group{ID: a.sheets.flagID(c), Class: "reference", Link: a.sheets.linkFrom(x),
		Title: "from " + name, Desc: wording.Present([]string{"continued from sheet and zone", from}, " ")})
	y := c.rows[0].y
	a.set.Symbol(symbol.Incoming).Draw(a.pen(c.x+flagBody-2, y), "")
	at := a.at(float64(c.x+flagBody-2), float64(y))
	tail := ""
	if from != "" {
		tail = " from " + from
	}
	right := at.X - 0.6
	a.text(right, at.Y+capMM/2, tail, scene.Regular, scene.Right, scene.Ink)
	room := float64(flagBody-2)*symbol.M - textW(tail, scene.Regular) - 1
	bold := scene.Ellipsis(shortName(c.term), smallMM, room, scene.Bold)
	a.text(right-textW(tail, scene.Regular), at.Y+capMM/2, bold, scene.Bold, scene.Right, scene.Ink)
	words := scene.Ellipsis(nameOf(c.term.Part), smallMM, (flagBody-2)*symbol.M-1, scene.Regular)
	a.text(right, at.Y+capMM/2+lineMM, words, scene.Regular, scene.Right, grey)
	a.sheet.End()
}

// outgoing draws the flag of a terminal that goes on elsewhere.
func (a *painter) outgoing(c *cell) {
	var places, fed []string
	for _, away := range a.sheets.refs[c.term].aways {
		places = append(places, a.sheets.where(away))
	}
	for _, in := range a.sheets.feeds[c.term] {
		if !a.on.holds(in.cell) || a.on.severed[in] {
			fed = append(fed, in.cell.part.Ref)
		}
	}
	to := wording.Present(places, ", ")
	name := terminalName(c.term)
	a.sheet.Begin(scene.Group{ID: a.sheets.flagID(c), Class: "reference", Link: a.sheets.linkTo(c),
		Title: name + " goes on", Desc: "continued at sheet and zone " + to})
	y := c.rows[0].y
	a.set.Symbol(symbol.Outgoing).Draw(a.pen(c.x, y), "")
	at := a.at(float64(c.x), float64(y))
	room := float64(flagBody-3) * symbol.M
	a.text(at.X+2.8*symbol.M, at.Y+capMM/2, scene.Ellipsis("to "+to, smallMM, room, scene.Bold), scene.Bold, scene.Left, scene.Ink)
	words := scene.Ellipsis(wording.Present(fed, ", "), smallMM, room, scene.Regular)
	a.text(at.X+2.8*symbol.M, at.Y+capMM/2+lineMM, words, scene.Regular, scene.Left, grey)
	a.sheet.End()
}
