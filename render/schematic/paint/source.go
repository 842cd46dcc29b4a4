package paint

import (
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// branch is a part between the positive and the negative trunk of the source.
type branch struct {
	part *circuit.Part
	kind symbol.Kind
	row  int
	sign string
	text lettering.Caption
}

// branches are the vehicle's loads, in one line with their watts inside, and the
// generator.
func (a *painter) branches(y int) (list []branch) {
	g, v := parts.SourceParts(a.Circuit)
	vehicle, generator, _ := cell.SourceRows(a.Labels)
	const width = (cell.SourceNeg - cell.SourceTrunk - 0.7) * symbol.M
	if v != nil {
		words, watts := a.WordsOf(v)
		list = append(list, branch{v, symbol.VehicleLoads, y + vehicle, watts,
			a.Head(v).Fit(words, "", width, 1).Solved(width, a.Study.Part(v)...)})
	}
	if g != nil {
		list = append(list, branch{g, symbol.Generator, y + generator, "", a.GeneratorCaption(width, g)})
	}
	return list
}

// source draws the battery with the generator and the vehicle's loads at its
// posts. What joins them is the factory's wiring and has no wire numbers.
func (a *painter) source(c *cell.Cell) {
	y, x := c.Rows[1].Y, c.X+cell.SourceTrunk
	_, _, battery := cell.SourceRows(a.Labels)
	plus, foot := y+battery, float64(y+battery+5)
	list := a.branches(y)
	p := a.wirePen(0, 0)
	trunk, neg := float64(x), float64(c.X+cell.SourceNeg)
	top := plus
	if len(list) > 0 {
		top = list[0].row
	}
	if len(c.Outlets)+len(c.Inlets) > 0 {
		top = c.Rows[0].Y
	}
	p.Line(trunk, float64(top), trunk, float64(plus))
	for i, b := range list {
		a.branch(b, x)
		if i > 0 {
			p.Dot(neg, float64(b.row))
		}
	}
	for _, b := range list {
		if b.row > top {
			p.Dot(trunk, float64(b.row))
		}
	}
	if len(list) > 0 {
		p.Line(neg, float64(list[0].row), neg, foot, trunk, foot)
		p.Dot(trunk, foot)
	}
	own := parts.SymbolOf(a.Set, c.Part)
	a.Marks.Box(c.Part.Ref, a.boxAt(x, plus, own.Body))
	a.Spots.Box(c.Part.Ref, a.boxAt(x, plus, own.Body))
	a.Spots.Way(c.Part.Ref+":+", a.at(trunk+1, float64(top)), a.at(trunk, float64(top)), a.at(trunk, float64(plus)))
	a.Spots.Way(c.Part.Ref+":-", a.at(trunk, float64(plus)+3), a.at(trunk, foot))
	own.Draw(a.pen(x, plus), "")
	a.links(c.Part, float64(x), float64(plus)+symbol.StringTop)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("ground-post"), Class: "ground", Title: "to " + parts.BatteryPostText(c.Part), Of: c.Part.Ref})
	a.Set.Symbol(symbol.Negative).Draw(a.pen(x, plus+5), "")
	a.sheet.End()
	a.mains(c, plus+5, len(list) > 0)
	at := a.at(trunk, float64(plus))
	a.text(at.X+0.8*symbol.M, at.Y+6.5*symbol.M, parts.BatteryPostText(c.Part), scene.Regular, scene.Left, scene.Ink)
	left := at.X + 2.1*symbol.M
	a.caption(c.Caption, left, at.Y+1.5*symbol.M)
}

// links draws the cables between batteries in series, one below the other from a place of the page down.
func (a *painter) links(p *circuit.Part, x, y float64) {
	list := p.LinkWires()
	long := symbol.LinkLong / float64(len(list))
	for i, w := range list {
		from := y + long*float64(i)
		line := []scene.Point{a.at(x, from), a.at(x, from+long)}
		if i < len(list)-1 { // a gap, where the batteries between stand
			line[1].Y -= long * symbol.M / 3
		}
		a.sheet.Begin(a.wireGroup(w, w.From))
		a.Marks.Line(w.Number, line...)
		a.Spots.Way(w.Number, line...)
		a.sheet.Polyline(line, scene.Pen(symbol.WireMM))
		a.sheet.End()
	}
}

// mains draws the ground bars beside or below the battery, each with its wire back to
// the battery's post or to the next bar. The trunk reaches to the foot when it has
// branches.
func (a *painter) mains(c *cell.Cell, foot int, branches bool) {
	bar, turn := c.X+c.Bar, c.X+c.Turn
	lowest := 0
	for k, w := range c.Returns {
		if w.To.Part.Kind == circuit.Battery {
			lowest = max(lowest, c.MainRows[k])
			a.wirePen(c.X+cell.SourceTrunk, foot).Dot(0, 0)
			if branches {
				a.wirePen(c.X+cell.SourceNeg, foot).Dot(0, 0)
			}
		}
	}
	for k, w := range c.Returns {
		row := foot + c.MainRows[k]
		pts := []route.Spot{{X: bar, Y: row}, {X: turn, Y: row}}
		toBattery := w.To.Part.Kind == circuit.Battery
		if toBattery {
			pts = append(pts, route.Spot{X: turn, Y: foot}, route.Spot{X: c.X + cell.SourceTrunk, Y: foot})
			if c.MainRows[k] < lowest || row < foot {
				a.wirePen(turn, row).Dot(0, 0)
			}
		}
		left := float64(min(bar, turn)) + 0.4
		a.returnWire(w, route.Tidy(pts), false, left)
		a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("label-" + w.Number), Class: "label", Title: w.Number, Of: w.Number})
		a.label(w, left, row, true)
		a.sheet.End()
		room := float64(route.Distance(bar, turn))*symbol.M - 1
		if !toBattery { // clear of the ground's sign
			room -= 1.5 * symbol.M
			a.ground(w.To, turn, row, true)
		}
		a.mainBar(w.From.Part, bar, row, room, bar > turn)
	}
}

// mainBar draws a ground point as the bar at the end of its wire, its name below.
func (a *painter) mainBar(p *circuit.Part, x, row int, widthMM float64, leftwards bool) {
	at := a.at(float64(x), float64(row))
	words := parts.NameOf(p)
	text := a.Head(p).Fit(words, "", widthMM, 1)
	a.sheet.Begin(scene.Group{ID: a.sheet.UniqueID("part-" + p.Ref), Class: "part", Title: wording.Present([]string{p.Ref, words}, " "), Desc: string(p.Kind), Of: p.Ref})
	a.Marks.Box(p.Ref, scene.Rect{X: at.X, Y: at.Y - 1, H: 2})
	a.Spots.Box(p.Ref, scene.Rect{X: at.X - 1, Y: at.Y - 2, W: 2, H: 4})
	a.sheet.Line(at, scene.Point{X: at.X, Y: at.Y - 1}, scene.Pen(symbol.BarMM))
	a.sheet.Line(at, scene.Point{X: at.X, Y: at.Y + 1}, scene.Pen(symbol.BarMM))
	left := at.X + 1
	if leftwards {
		left = at.X - 1 - text.Width()
	}
	a.caption(text, left, at.Y+lettering.GapMM+lettering.CapMM+sign.DropFor(text.Sign))
	a.sheet.End()
}

// branch draws a part between the trunks with its caption.
func (a *painter) branch(b branch, x int) {
	s := a.Set.Symbol(b.kind)
	a.Marks.Box(b.part.Ref, a.boxAt(x, b.row, s.Body))
	a.Spots.Box(b.part.Ref, a.boxAt(x, b.row, s.Body))
	s.Draw(a.pen(x, b.row), b.sign)
	a.wirePen(x+cell.SourceBranch, b.row).Line(0, 0, cell.SourceNeg-cell.SourceTrunk-cell.SourceBranch, 0)
	at := a.at(float64(x), float64(b.row))
	a.caption(b.text, at.X+0.4*symbol.M, at.Y+cell.CaptionBase(s.Body.Y+s.Body.H, a.Signs.DropOf(b.part)))
}
