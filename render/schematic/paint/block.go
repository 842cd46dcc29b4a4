package paint

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// block draws a distribution block: outline, bar, ways and their fuses.
func (a *painter) block(c *cell.Cell) {
	first, last := c.Rows[0].Y, c.Rows[len(c.Rows)-1].Y
	for _, in := range c.Inlets {
		last = max(last, in.Y())
	}
	low := 1.6
	for _, o := range c.Outlets {
		if o.Dx == c.BarX() {
			last = max(last, o.Y())
			low = 0
		}
	}
	top := float64(first) - c.Roof()
	outline := scene.Pen(symbol.LineMM).Dashed(1.8, 1)
	at := a.at(float64(c.X), top)
	bottom := a.at(0, float64(last)+2.2).Y
	if low == 0 {
		bottom = a.at(0, float64(last)-0.6).Y
	}
	box := scene.Rect{X: at.X, Y: at.Y, W: float64(c.Box) * symbol.M, H: bottom - at.Y}
	a.Marks.Box(c.Part.Ref, box)
	a.sheet.Rect(box, &outline, nil)
	a.Spots.Box(c.Part.Ref, box)
	bar := []scene.Point{a.at(float64(c.X+c.BarX()), float64(first)-0.6), a.at(float64(c.X+c.BarX()), float64(last)+0.6*min(low, 1))}
	a.sheet.Polyline(bar, scene.Pen(symbol.BarMM))
	a.captionAtop(c.Caption, at, a.Signs.OfPart(c.Part))
	for i, w := range c.Ways {
		a.way(c, c.Rows[i], w)
	}
	if c.Part.Kind == circuit.Switch {
		a.handle(c)
	}
	if c.Part.InReturn {
		a.returnEnd(c)
	}
}

// returnEnd draws the returns of a switch from its bar to their grounds, and the signs of
// grounds that come in at its ways.
func (a *painter) returnEnd(c *cell.Cell) {
	if n := len(c.Returns); n > 0 {
		a.pen(c.X, c.Rows[0].Y).Line(float64(c.BarX()), 0, float64(c.Box), 0)
		a.returnWires(c, c.Returns, c.Box, a.ReturnRun(c.Returns, a.Stacked)+c.RunMore)
	}
	for i, w := range c.Ways {
		for _, landed := range a.Wiring.Landed[c.Part] {
			if landed.To == w.Term {
				a.pen(c.X-cell.GroundLead, c.Rows[i].Y).Line(0, 0, cell.GroundLead, 0)
				a.ground(landed.From, c.X-cell.GroundLead, c.Rows[i].Y, true)
				break
			}
		}
	}
}

// contactPen is that of the symbol of a way; of a switch in a return it is mirrored, its blade at
// the bar on the right.
func (a *painter) contactPen(c *cell.Cell, y int) *symbol.Pen {
	if !c.Part.InReturn {
		return a.pen(c.X+cell.BlockFuse+c.Named, y)
	}
	p := a.pen(c.X+c.Box-cell.BlockFuse-wayBody, y)
	p.FlipM = wayBody
	return p
}

// wayBody is the width of the symbol of a way.
const wayBody = 4

// wordsClear is how far a link ends from words, in mm.
const wordsClear = 0.5

// handle draws what works all contacts of a switch with positions: one link through
// them, with the sign of a hand above the first.
func (a *painter) handle(c *cell.Cell) {
	link := a.Set.Symbol(symbol.Positions).Link
	p := a.contactPen(c, c.Rows[0].Y)
	from := -2.1
	for i, w := range c.Ways {
		y := float64(c.Rows[i].Y - c.Rows[0].Y)
		p.Link(link.X, from, link.X, y+link.Y)
		if from = y + link.Y; w.Words != "" && i+1 < len(c.Ways) { // not through its words
			foot := y + cell.CaptionBase(0.5, sign.DropFor(a.Signs.OfRef(w.Ref)))/symbol.M
			p.Link(link.X, from, link.X, foot-(lettering.CapMM+wordsClear)/symbol.M)
			from = foot + 2*wordsClear/symbol.M
		}
	}
	if s, ok := c.Part.Source.(*design.Switch); ok && s.Momentary {
		p.Line(link.X-0.6, -1.7, link.X-0.6, -2.1, link.X+0.6, -2.1, link.X+0.6, -1.7)
		return
	}
	p.Line(link.X-0.6, -2.1, link.X+0.6, -2.1)
}

// way draws one way of a block from the bar to the outline.
func (a *painter) way(c *cell.Cell, r *cell.Row, w *parts.Way) {
	p := a.pen(c.X, r.Y)
	right, fuse := float64(c.Box), float64(cell.BlockFuse+c.Named)
	if c.Part.InReturn {
		p.FlipM, fuse = right, cell.BlockFuse
	}
	if w.Kind == symbol.SpareWay {
		right = cell.BlockFuse
	}
	a.Marks.Line(w.Ref, a.at(float64(c.X+cell.BlockBar), float64(r.Y)), a.at(float64(c.X+c.Box), float64(r.Y)))
	a.waySpot(c, r, w)
	s := a.Set.Symbol(w.Kind)
	if w.Kind == "" {
		p.Line(cell.BlockBar, 0, right, 0)
	} else {
		p.Line(cell.BlockBar, 0, fuse, 0)
		if right > cell.BlockFuse {
			p.Line(fuse+wayBody, 0, right, 0)
		}
		s.Draw(a.contactPen(c, r.Y), "")
	}
	at := a.at(float64(c.X), float64(r.Y))
	mid := at.X + (cell.BlockFuse+2)*symbol.M
	head := at.Y - lettering.GapMM
	if w.Kind != "" {
		head = at.Y + min(s.Body.Y, -0.5)*symbol.M - 0.45
	}
	flag := a.Signs.OfRef(w.Ref)
	left := at.X + (cell.BlockBar+0.4)*symbol.M
	if c.Part.InReturn {
		left = at.X + 0.4*symbol.M
	}
	a.text(left, at.Y-0.5*symbol.M-0.45, w.Number, scene.Regular, scene.Left, scene.Ink)
	refX := max(mid, left+lettering.TextW(w.Number, scene.Regular)+0.8+lettering.TextW(w.Ref, scene.Bold)/2)
	if w.Ref != "" {
		a.Marks.Label(w.Ref, wordBox(refX-lettering.TextW(w.Ref, scene.Bold)/2, head, w.Ref, scene.Bold))
		a.text(refX, head, w.Ref, scene.Bold, scene.Middle, scene.Ink)
	}
	a.wayWords(c, w, left, mid, at.Y+cell.CaptionBase(0.5, sign.DropFor(flag)), flag)
}

// waySpot is where a way of a block is chosen: its fuse, with the way along the bar from where
// the first feed comes in.
func (a *painter) waySpot(c *cell.Cell, r *cell.Row, w *parts.Way) {
	ref := w.Ref
	if ref == "" {
		ref = c.Part.Ref + ":" + w.Number
	}
	bar, y := a.at(float64(c.X+c.BarX()), float64(r.Y)), float64(r.Y)
	from := []scene.Point{bar}
	if c.Part.InReturn {
		from = []scene.Point{a.at(float64(c.X), y)}
	} else if len(c.Inlets) > 0 {
		in := float64(c.Inlets[0].Y())
		from = []scene.Point{a.at(float64(c.X), in), a.at(float64(c.X+cell.BlockBar), in), bar}
	}
	a.Spots.Way(ref, append(from, a.at(float64(c.X+c.Box), y))...)
	if w.Ref != "" {
		a.Spots.Box(ref, a.boxAt(c.X, r.Y, scene.Rect{X: cell.BlockBar + 1, Y: -1.4, W: float64(c.Box-cell.BlockBar) - 1, H: 2.8}))
	}
}

// wayWords writes what a way holds below it and, on a study sheet, the share of
// its rating that flows.
func (a *painter) wayWords(c *cell.Cell, w *parts.Way, left, mid, base float64, flag int) {
	room := 11.0
	if c.Part.Kind == circuit.Switch {
		room = float64(c.Box-cell.BlockBar)*symbol.M - 1
		mid = left + room/2
	}
	text := a.Signed(lettering.Caption{Lines: []string{scene.Ellipsis(w.Words, lettering.SmallMM, room, scene.Regular)}}, flag)
	right := a.at(float64(c.X+c.Box), 0).X - 0.3
	if share := a.Study.Way(c.Part, w.Ref); share != "" {
		wide := lettering.TextW(share, scene.Italic)
		right -= wide + 1.5
		mid -= wide / 2
		a.text(centred(text, mid, left, right)+text.Width()+1.5, base, share, scene.Italic, scene.Left, lettering.StudyBlue)
	}
	a.caption(text, centred(text, mid, left, right), base)
}
