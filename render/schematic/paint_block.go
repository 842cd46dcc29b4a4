package schematic

import (
	"fmt"

	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// block draws a distribution block: outline, bar, ways and their fuses.
func (a *painter) block(c *cell) {
	first, last := c.rows[0].y, c.rows[len(c.rows)-1].y
	for _, in := range c.inlets {
		last = max(last, in.y())
	}
	low := 1.6
	for _, o := range c.outlets {
		if o.dx == blockBar {
			last = max(last, o.y())
			low = 0
		}
	}
	top := float64(first) - 1.9
	outline := scene.Pen(symbol.LineMM).Dashed(1.8, 1)
	at := a.at(float64(c.x), top)
	bottom := a.at(0, float64(last+lastDrop(a.labels, c))+2.2).Y
	if low == 0 {
		bottom = a.at(0, float64(last)-0.6).Y
	}
	box := scene.Rect{X: at.X, Y: at.Y, W: float64(c.body) * symbol.M, H: bottom - at.Y}
	a.surround(c.part, box)
	a.sheet.Rect(box, &outline, nil)
	bar := []scene.Point{a.at(float64(c.x+blockBar), float64(first)-0.6), a.at(float64(c.x+blockBar), float64(last)+0.6*min(low, 1))}
	a.sheet.Polyline(bar, scene.Pen(symbol.BarMM))
	a.blockCaption(c, at)
	for i, w := range c.ways {
		a.way(c, c.rows[i], w)
	}
}

func (a *painter) blockCaption(c *cell, corner scene.Point) {
	text := c.caption
	if c.pieces > 1 {
		text.ref = fmt.Sprintf("%s (%d of %d)", text.ref, c.piece, c.pieces)
		text.lines = text.lines[:1]
		text.lines[0] = scene.Ellipsis(text.lines[0], smallMM, float64(c.body+a.overhang(2))*symbol.M-text.indent(), scene.Regular)
	}
	a.captionAtop(text, corner, a.signs.ofPart(c.part))
}

// way draws one way of a block from the bar to the outline.
func (a *painter) way(c *cell, r *row, w *way) {
	p := a.pen(c.x, r.y)
	right := float64(c.body)
	if w.kind == spareWay {
		right = blockFuse
	}
	a.band(w.ref, []scene.Point{a.at(float64(c.x+blockBar), float64(r.y)), a.at(float64(c.x+c.body), float64(r.y))})
	s := symbolOfWay(a.set, w)
	if s == nil {
		p.Line(blockBar, 0, right, 0)
	} else {
		p.Line(blockBar, 0, blockFuse, 0)
		if right > blockFuse {
			p.Line(blockFuse+4, 0, right, 0)
		}
		s.Draw(a.pen(c.x+blockFuse, r.y), "")
	}
	at := a.at(float64(c.x), float64(r.y))
	mid := at.X + (blockFuse+2)*symbol.M
	head := at.Y - gapMM
	if s != nil {
		head = at.Y + min(s.Body.Y, -0.5)*symbol.M - 0.45
	}
	flag := a.signs.ofRef(w.ref)
	left := at.X + (blockBar+0.4)*symbol.M
	a.text(left, at.Y-0.5*symbol.M-0.45, w.number, scene.Regular, scene.Left, scene.Ink)
	refX := max(mid, left+textW(w.number, scene.Regular)+0.8+textW(w.ref, scene.Bold)/2)
	a.text(refX, head, w.ref, scene.Bold, scene.Middle, scene.Ink)
	a.wayWords(c, w, left, mid, at.Y+captionBase(0.5, a.signs.dropFor(flag)), flag)
}

// wayWords writes what a way holds below it and, on a study sheet, the share of
// its rating that flows.
func (a *painter) wayWords(c *cell, w *way, left, mid, base float64, flag int) {
	text := a.signed(caption{lines: []string{scene.Ellipsis(w.words, smallMM, 11, scene.Regular)}}, flag)
	right := a.at(float64(c.x+c.body), 0).X - 0.3
	if share := a.study.way(c.part, w.ref); share != "" {
		wide := textW(share, scene.Italic)
		right -= wide + 1.5
		mid -= wide / 2
		a.text(centred(text, mid, left, right)+text.width()+1.5, base, share, scene.Italic, scene.Left, studyBlue)
	}
	a.caption(text, centred(text, mid, left, right), base)
}
