package layout

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// Measures of pages at full size in millimetres.
const (
	edgeMM    = 10.0 // paper to window at three sides
	footMM    = 28.0 // paper to window below, for the ruler and the words
	overlapMM = 10.0 // of neighbouring windows
	roundMM   = 20.0 // round the loom, for words
	rulerMM   = 100.0

	// mostPages at full size are more than anybody tapes together; what needs more
	// has a length written by mistake.
	mostPages = 1000
)

// tooLong tells whether a board would need more pages at full size than are
// drawn, each with the loom along its longer side.
func tooLong(r *harness.Review, b *formboard.Board) bool {
	loomMM := 0.0
	for _, run := range b.Runs {
		if r.Design.Sheet.LongRuns == "whole" {
			loomMM += run.Length
		} else {
			loomMM += run.BrokenMm()
		}
	}
	return loomMM > mostPages*(297-2*edgeMM-overlapMM)
}

// tiling is one section parted over pages.
type tiling struct {
	review        *harness.Review
	section       *formboard.Section
	sections      int
	name          string // of the paper
	paperW        float64
	paperH        float64
	rows, columns int
	used          map[[2]int]bool // by row and column
	order         [][2]int
	ends          map[*design.Place][]formboard.End
}

// FullSize draws every section of the board at full size, parted over pages
// that overlap, after pages that show how they go together. Long runs are broken
// unless the design wants them whole. Pages without any part of the loom are left
// out. The paper is the design's own, lying or upright, whichever takes fewer
// pages. A loom that would take more than mostPages has none, which the notes of
// the layout say. The error names a sheet size that does not exist.
func FullSize(r *harness.Review, b *formboard.Board) ([]*scene.Sheet, error) {
	paper, err := frame.PaperOf(r.Design.Sheet.Size)
	if err != nil {
		return nil, fmt.Errorf("layout: %w", err)
	}
	if tooLong(r, b) {
		return nil, nil
	}
	if r.Design.Sheet.LongRuns != "whole" {
		b = formboard.LayBroken(r.Circuit)
	}
	var tilings []*tiling
	for _, s := range b.Sections {
		tilings = append(tilings, newTiling(r, b, s, paper))
	}
	sheets := indexes(tilings)
	for _, t := range tilings {
		for _, at := range t.order {
			sheets = append(sheets, t.page(at[0], at[1]))
		}
	}
	return sheets, nil
}

func newTiling(r *harness.Review, b *formboard.Board, s *formboard.Section, paper frame.Paper) *tiling {
	lying := &tiling{review: r, section: s, sections: len(b.Sections), name: paper.Name, paperW: paper.W, paperH: paper.H}
	upright := &tiling{review: r, section: s, sections: len(b.Sections), name: paper.Name, paperW: paper.H, paperH: paper.W}
	lying.part()
	upright.part()
	best := lying
	if len(upright.order) < len(lying.order) {
		best = upright
	}
	best.ends = endsOf(b)
	return best
}

// window is where the loom shows on a page.
func (t *tiling) window() scene.Rect {
	return scene.Rect{X: edgeMM, Y: edgeMM, W: t.paperW - 2*edgeMM, H: t.paperH - edgeMM - footMM}
}

// step is from one window to the next.
func (t *tiling) step() (x, y float64) {
	w := t.window()
	return w.W - overlapMM, w.H - overlapMM
}

// origin is the board's place, its margin included, at a window's corner.
func (t *tiling) origin(row, column int) scene.Point {
	x, y := t.step()
	return scene.Point{X: float64(column)*x - roundMM, Y: float64(row)*y - roundMM}
}

// part counts the rows and columns and finds the pages with some of the loom.
func (t *tiling) part() {
	wide, high := t.section.Size()
	x, y := t.step()
	t.columns = max(1, int(math.Ceil((wide+2*roundMM-overlapMM)/x)))
	t.rows = max(1, int(math.Ceil((high+2*roundMM-overlapMM)/y)))
	t.used = map[[2]int]bool{}
	for _, leastMM := range []float64{leastShownMM, 0} {
		for row := range t.rows {
			for column := range t.columns {
				t.used[[2]int{row, column}] = t.used[[2]int{row, column}] || t.holds(row, column, leastMM)
			}
		}
	}
	for row := range t.rows {
		for column := range t.columns {
			if t.used[[2]int{row, column}] {
				t.order = append(t.order, [2]int{row, column})
			}
		}
	}
}

// leastShownMM is the least of a run for which a page is made that its neighbours show
// as well.
const leastShownMM = overlapMM

// own is what of the board no page shows but one, its overlaps left out; shown is its
// whole window.
func (t *tiling) own(row, column int) scene.Rect {
	o := t.origin(row, column)
	x, y := t.step()
	return scene.Rect{X: o.X, Y: o.Y, W: x, H: y}
}

func (t *tiling) shown(row, column int) scene.Rect {
	r := t.own(row, column)
	return scene.Rect{X: r.X, Y: r.Y, W: r.W + overlapMM, H: r.H + overlapMM}
}

// holds tells whether a place or more than the least of a run lies on a page, and on no
// page that is used already.
func (t *tiling) holds(row, column int, leastMM float64) bool {
	own := t.own(row, column)
	for _, s := range t.section.Spots {
		if own.Contains(scene.Rect{X: s.At.X, Y: s.At.Y}) {
			return true
		}
	}
	for _, l := range t.section.Limbs {
		a, b, ok := clip(scene.Point(l.From.At), scene.Point(l.To.At), own)
		if ok && math.Hypot(b.X-a.X, b.Y-a.Y) > leastMM && !t.elsewhere(row, column, a, b) {
			return true
		}
	}
	return false
}

// elsewhere tells whether a neighbour that is used shows a piece of a run whole.
func (t *tiling) elsewhere(row, column int, a, b scene.Point) bool {
	for r := row - 1; r <= row; r++ {
		for c := column - 1; c <= column; c++ {
			w := t.shown(r, c)
			if t.used[[2]int{r, c}] && w.Contains(scene.Rect{X: a.X, Y: a.Y}) && w.Contains(scene.Rect{X: b.X, Y: b.Y}) {
				return true
			}
		}
	}
	return false
}

// page draws one page.
func (t *tiling) page(row, column int) *scene.Sheet {
	title := fmt.Sprintf("Full size, %s", t.tileName(row, column))
	if t.sections > 1 {
		title = fmt.Sprintf("Full size, section %d, %s", t.section.Number, t.tileName(row, column))
	}
	s := scene.NewSheet(t.paperW, t.paperH, title)
	s.ID = t.pageID(row, column)
	w, o := t.window(), t.origin(row, column)
	p := newPicture(t.section, lengths.Of(t.review.Design), 1, wireLists)
	p.sheet, p.full, p.window = s, true, w
	p.shift = scene.Point{X: w.X - o.X, Y: w.Y - o.Y}
	t.edges(p, row, column)
	t.loom(p)
	t.words(p, row, column)
	foot(s, t.review, title+fmt.Sprintf(" of %d rows, %d columns", t.rows, t.columns))
	return s
}

func (t *tiling) tileName(row, column int) string {
	return fmt.Sprintf("row %d, column %d", row+1, column+1)
}

func (t *tiling) pageID(row, column int) string {
	return fmt.Sprintf("full-size-%d-%d-%d", t.section.Number, row+1, column+1)
}

// edges draws the window with its cut marks, and where a neighbour joins: the
// edge of the overlap, crosses that fall on the neighbour's own, and its name.
func (t *tiling) edges(p *picture, row, column int) {
	s, w := p.sheet, p.window
	s.Begin(scene.Group{ID: "window", Class: "window", Title: "cut marks and crosses"})
	pen := scene.Pen(0.18)
	s.Rect(w, &pen, nil)
	cutMarks(s, w)
	words := scene.TextStyle{SizeMM: frame.SmallMM, Align: scene.Middle, Colour: frame.Grey}
	c := w.Centre()
	for _, side := range []struct {
		row, column int
		at          scene.Point // of the words
		turn        float64
		vertical    bool
		middle      float64 // of the overlap
	}{
		{row, column - 1, scene.Point{X: w.X - 3, Y: c.Y}, 90, true, w.X + overlapMM/2},
		{row, column + 1, scene.Point{X: w.Right() + 5, Y: c.Y}, 90, true, w.Right() - overlapMM/2},
		{row - 1, column, scene.Point{X: c.X, Y: w.Y - 3}, 0, false, w.Y + overlapMM/2},
		{row + 1, column, scene.Point{X: c.X, Y: w.Bottom() + 4.5}, 0, false, w.Bottom() - overlapMM/2},
	} {
		if !t.used[[2]int{side.row, side.column}] {
			continue
		}
		words.Turn = side.turn
		s.TextAt(side.at, "joins "+t.tileName(side.row, side.column), words)
		for _, way := range []float64{1, -1} {
			if at, ok := t.clear(p, side.middle, side.vertical, way); ok {
				registration(s, at)
				p.taken.add(discShape(at, 4.2))
			}
		}
	}
	s.End()
}

// clear is a place in an overlap that no run covers, from one end or, with way
// -1, from the other. Both pages find the same place of the board.
func (t *tiling) clear(p *picture, middle float64, vertical bool, way float64) (at scene.Point, ok bool) {
	w := p.window
	for share := 0.2; share < 0.45; share += 0.04 {
		s := 0.5 - way*(0.5-share)
		at = scene.Point{X: middle, Y: w.Y + s*w.H}
		if !vertical {
			at = scene.Point{X: w.X + s*w.W, Y: middle}
		}
		ok = true
		for _, l := range t.section.Limbs {
			a, b := p.ends(l)
			ok = ok && !lineShape(a, b, 2*p.half(l.Run)+2).meets(discShape(at, 4.5))
		}
		if ok {
			return at, true
		}
	}
	return at, false
}

// cutMarks are short lines outside the corners of a window.
func cutMarks(s *scene.Sheet, w scene.Rect) {
	pen := scene.Pen(0.25)
	for _, x := range []float64{w.X, w.Right()} {
		for _, y := range []float64{w.Y, w.Bottom()} {
			sx, sy := math.Copysign(1, x-w.Centre().X), math.Copysign(1, y-w.Centre().Y)
			s.Line(scene.Point{X: x + sx, Y: y}, scene.Point{X: x + 6*sx, Y: y}, pen)
			s.Line(scene.Point{X: x, Y: y + sy}, scene.Point{X: x, Y: y + 6*sy}, pen)
		}
	}
}

// registration is a ringed cross.
func registration(s *scene.Sheet, at scene.Point) {
	pen := scene.Pen(0.18)
	s.Circle(at, 2.2, &pen, nil)
	s.Line(scene.Point{X: at.X - 4, Y: at.Y}, scene.Point{X: at.X + 4, Y: at.Y}, pen)
	s.Line(scene.Point{X: at.X, Y: at.Y - 4}, scene.Point{X: at.X, Y: at.Y + 4}, pen)
}

// loom draws what of the runs falls into the window.
func (t *tiling) loom(p *picture) {
	for i := len(t.section.Limbs) - 1; i >= 0; i-- {
		l := t.section.Limbs[i]
		a, b := p.ends(l)
		h := p.half(l.Run)
		band := lineShape(a, b, 2*h+outlineMM)
		if !band.meets(rectShape(p.window)) {
			continue
		}
		p.order, p.boxes, p.bands[l] = append(p.order, l), append(p.boxes, band.box()), band
		p.sheet.Begin(scene.Group{ID: p.sheet.UniqueID("run-" + number(l.Run)), Class: "run",
			Title: "run " + number(l.Run), Desc: runWords(p.unit, l.Run)})
		for _, piece := range l.Pieces() {
			from, long := along(a, b, piece[0], 0), piece[1]-piece[0]
			p.windowLine(along(from, b, 0, -h), along(from, b, long, -h), outlineMM)
			p.windowLine(along(from, b, 0, h), along(from, b, long, h), outlineMM)
			for _, f := range filling(long, h, l.Run.Bundle.Run.Cover, stretchIn(from, along(from, b, long, 0), long, p.window)) {
				p.windowLine(along(from, b, f[0].X, f[0].Y), along(from, b, f[1].X, f[1].Y), 0.13)
			}
		}
		p.breakOf(l)
		p.measure(l, a, b, h)
		p.sheet.End()
	}
	for _, spot := range t.section.Spots {
		c := p.at(spot.At)
		if r := math.Max(3, p.nailMM(spot)); p.window.Contains(scene.Rect{X: c.X - r, Y: c.Y - r, W: 2 * r, H: 2 * r}) {
			paintNail(p.sheet, c, r, nailKind(spot))
			p.taken.add(discShape(c, r+0.3))
		} else if p.window.Grow(r).Contains(scene.Rect{X: c.X, Y: c.Y}) {
			p.windowLine(scene.Point{X: c.X - 4, Y: c.Y}, scene.Point{X: c.X + 4, Y: c.Y}, 0.5)
			p.windowLine(scene.Point{X: c.X, Y: c.Y - 4}, scene.Point{X: c.X, Y: c.Y + 4}, 0.5)
			p.taken.add(discShape(c, 4))
		}
	}
}

// windowLine draws what of a line lies in the window.
func (p *picture) windowLine(a, b scene.Point, widthMM float64) {
	if a, b, ok := clip(a, b, p.window); ok {
		p.sheet.Line(a, b, scene.Pen(widthMM))
	}
}

// tickMM is how far apart ticks stand along a run: 100 mm, or 6 in.
func tickMM(u lengths.Unit) float64 {
	if u.Feet() {
		return 6 * 25.4
	}
	return 100
}

// measure marks clamps, and ticks from the run's first place.
func (p *picture) measure(l *formboard.Limb, a, b scene.Point, h float64) {
	step := tickMM(p.unit)
	for mm := step; !l.Broken() && mm < l.DrawnMm-10; mm += step {
		from, to := along(a, b, mm, h), along(a, b, mm, h+2)
		p.windowLine(from, to, 0.25)
		p.marks.add(lineShape(from, to, 0.3))
	}
	inside := p.window.Grow(-h - clampMM - 2)
	for _, mm := range l.Run.Supports {
		at, ok := l.Station(mm)
		if c := along(a, b, at, 0); ok && inside.Contains(scene.Rect{X: c.X, Y: c.Y}) {
			p.marks.add(paintClamp(p.sheet, a, b, at, h))
		}
	}
}

// words names the runs and places of a page, as far as there is room.
func (t *tiling) words(p *picture, row, column int) {
	x, y := t.step()
	own := scene.Rect{X: p.window.X, Y: p.window.Y, W: x, H: y} // each place is named once
	for _, s := range t.section.Spots {
		c := p.at(s.At)
		if c.X < own.X || c.X >= own.Right() || c.Y < own.Y || c.Y >= own.Bottom() {
			continue
		}
		b := &block{lines: []phrase{{s.Place.Name, scene.Bold, frame.NormalMM}}}
		b.add(spotWords(s)...)
		r, lost := math.Max(3, p.nailMM(s)), p.lost
		for _, across := range []int{1, 2, 3} { // as wide as need be for all of its wires
			full := &block{lines: slices.Clone(b.lines)}
			for some := range slices.Chunk(t.endLines(s), across) {
				full.add(strings.Join(some, " · "))
			}
			if p.label(c, r, widestGap(s), nil, full) {
				b, p.lost = nil, lost
				break
			}
		}
		if b != nil {
			p.label(c, r, widestGap(s), nil, b)
		}
	}
	for _, l := range t.section.Limbs {
		if p.bands[l] != nil {
			t.nameTileRun(p, l)
		}
	}
}

// nameTileRun labels what of a run shows on a page.
func (t *tiling) nameTileRun(p *picture, l *formboard.Limb) {
	a, b := p.ends(l)
	from, to, ok := clip(a, b, p.window)
	if !ok {
		return
	}
	blk := &block{ring: number(l.Run), lines: lengthLines(p.unit, l)}
	blk.add(runLines(p.unit, l.Run, wireLists)...)
	prefer := math.Atan2(from.Y-to.Y, to.X-from.X)*180/math.Pi + 90
	var anchors []scene.Point
	for _, at := range shares(from, to, 0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8) {
		if !p.inBreak(l, at) {
			anchors = append(anchors, at)
		}
	}
	p.labelAny(anchors, p.half(l.Run)+0.2, prefer, []*formboard.Limb{l}, blk)
}

// endLines are the wire ends at a spot out of its runs.
func (t *tiling) endLines(s *formboard.Spot) (lines []string) {
	here := map[*formboard.Run]bool{}
	for _, l := range s.Limbs {
		here[l.Run] = true
	}
	u := lengths.Of(t.review.Design)
	for _, e := range t.ends[s.Place] {
		if e.Via != nil && here[e.Via] {
			lines = append(lines, fmt.Sprintf("%s %s to %s, %s %s out", e.Wire.Number, e.Wire.Spec.Colour.Code(),
				e.Terminal.Part.Ref+":"+e.Terminal.Name, u.Near(e.FreeMm), u.Small()))
		}
	}
	return lines
}
