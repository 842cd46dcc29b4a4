package chart

import (
	"fmt"
	"math"
	"slices"

	"fusewright/render/scene"
)

// panelOptions say what a panel shares with its neighbours.
type panelOptions struct {
	xLabels     bool    // tick texts and title under the x axis
	left, right float64 // margins in mm; 0 = from the texts
}

// frame is a panel being drawn: where its axes lie and what is in the way.
type frame struct {
	plot  *Plot
	sheet *scene.Sheet
	outer scene.Rect
	rect  scene.Rect // inside the axes
	x, y  *scale

	hideX bool            // no texts under the x axis
	names []*name         // what still needs a name beside it
	lines [][]scene.Point // all curves and levels, in the way of names
	boxes []scene.Rect    // texts and markers already drawn
	keys  []*name         // names that found no place

	tinted [][]scene.Point // areas of bands
}

// name is a text that belongs to a curve, a band, a level or a mark.
type name struct {
	text  string
	look  look
	heavy bool
	area  bool            // the sample in the key is a tint
	lines [][]scene.Point // what it names; nil for marks
	at    scene.Point     // the right end of it, or the mark
	right bool            // stands in the right margin
}

func (n *name) face() scene.Face {
	if n.heavy {
		return scene.Bold
	}
	return scene.Regular
}

func (n *name) width() float64 { return scene.TextWidthMM(n.text, textSize, n.face()) }

func (n *name) style() scene.TextStyle {
	return scene.TextStyle{SizeMM: textSize, Face: n.face(), Colour: n.look.colour}
}

// Least size of the area between the axes in mm.
const (
	leastWidth  = 25
	leastHeight = 10
)

// drawPanel draws one plot without title and note. Names that find no place
// beside their curves need a key, and the key needs room: so the layout is made
// on a scratch sheet first, and again with that room when there are any. On an
// error nothing is drawn.
func drawPanel(sheet *scene.Sheet, in scene.Rect, p *Plot, o panelOptions) error {
	var keys []*name
	for {
		scratch := &scene.Sheet{}
		f := newFrame(scratch, in, p, o, keys)
		if f.rect.W < leastWidth || f.rect.H < leastHeight {
			return fmt.Errorf("chart %q: %.0f × %.0f mm leaves no room between the axes", p.Title, in.W, in.H)
		}
		f.draw()
		if keyHeight(f.keys, in.W) <= keyHeight(keys, in.W) {
			f.drawKeys()
			sheet.Items = append(sheet.Items, scratch.Items...)
			return nil
		}
		keys = f.keys
	}
}

// newFrame lays out the axes, leaving room for a key of the given names.
func newFrame(sheet *scene.Sheet, in scene.Rect, p *Plot, o panelOptions, keys []*name) *frame {
	xs, ys := p.values()
	in.H -= keyHeight(keys, in.W)
	f := &frame{plot: p, sheet: sheet, outer: in, hideX: !o.xLabels}
	top := in.Y + 1.3
	if p.Y.label() != "" {
		top += rowHeight
	}
	if f.hasTopRow() {
		top += rowHeight
	}
	bottom := in.Bottom() - 1
	if o.xLabels {
		bottom -= rowHeight * f.xRows(in)
		if p.X.label() != "" {
			bottom -= rowHeight
		}
	}
	f.y = newScale(p.Y, ys, bottom, top, 9)
	left := o.left
	if left == 0 {
		left = f.y.widest() + 2.5
	}
	right := o.right
	if right == 0 {
		right = f.rightMargin(in, xs)
	}
	f.rect = scene.Rect{X: in.X + left, Y: top, W: in.W - left - right, H: bottom - top}
	f.x = newScale(p.X, xs, f.rect.X, f.rect.Right(), 16)
	return f
}

// hasTopRow tells whether names stand over the frame.
func (f *frame) hasTopRow() bool {
	for _, l := range f.plot.Levels {
		if l.OnX && l.Name != "" {
			return true
		}
	}
	return slices.ContainsFunc(f.plot.Spans, func(s Span) bool { return s.Name != "" })
}

// xRows is how many lines of text the ticks of the x axis take: given names are
// wrapped to the room between them; none when no tick has a text.
func (f *frame) xRows(in scene.Rect) float64 {
	rows := 1
	if ticks := f.plot.X.Ticks; len(ticks) > 0 && !slices.ContainsFunc(ticks, func(t Tick) bool { return t.Text != "" }) {
		rows = 0
	}
	for _, tick := range f.plot.X.Ticks {
		if tick.Text != "" {
			rows = max(rows, len(f.tickLines(tick.Text, in.W*0.6)))
		}
	}
	return float64(rows)
}

// tickLines wraps the name of a tick to its share of the axis, at most three
// lines.
func (f *frame) tickLines(text string, axisMM float64) []string {
	ticks := f.plot.X.Ticks
	if len(ticks) == 0 {
		return []string{text}
	}
	width := axisMM/float64(len(ticks)) - 1.5
	lines := scene.Wrap(text, textSize, width, scene.Regular)
	const most = 3
	if len(lines) > most {
		lines = lines[:most]
		lines[most-1] = scene.Ellipsis(lines[most-1]+" …", textSize, width, scene.Regular)
	}
	for i := range lines {
		lines[i] = scene.Ellipsis(lines[i], textSize, width, scene.Regular)
	}
	return lines
}

// rightMargin is the room for the names right of the frame, at most a third of
// the whole.
func (f *frame) rightMargin(in scene.Rect, xs []float64) float64 {
	widest := 0.0
	measure := func(text string, face scene.Face) {
		widest = max(widest, scene.TextWidthMM(text, textSize, face)+nameGap)
	}
	x := newScale(f.plot.X, xs, 0, in.W, 16)
	for _, c := range f.plot.Curves {
		if end, ok := x.place(furthest(c)); c.Name != "" && ok && end >= (1-rightEnd)*in.W {
			measure(c.Name, (&name{heavy: c.Heavy}).face())
		}
	}
	for _, l := range f.plot.Levels {
		if !l.OnX && l.Name != "" {
			measure(l.Name, scene.Regular)
		}
	}
	return max(4, x.widest()/2+0.5, min(widest+0.1, in.W/3))
}

// nameGap lies between the frame and the names in the right margin, where the
// thin leaders run.
const nameGap = 4.5

// rightEnd is the part of the width in which a line counts as ending at the
// right border.
const rightEnd = 0.005

// furthest is the largest x of a curve that can be shown.
func furthest(c Curve) float64 {
	x := math.Inf(-1)
	for i := range c.X {
		if finite(c.X[i]) && finite(c.Y[i]) {
			x = max(x, c.X[i])
		}
	}
	return x
}

// nameRoom is the width for a name in the right margin.
func (f *frame) nameRoom() float64 { return f.outer.Right() - f.rect.Right() - nameGap }

// draw draws everything but the key.
func (f *frame) draw() {
	f.drawSpans()
	f.drawGrid()
	f.drawBands()
	f.drawLevels()
	f.drawCurves()
	f.drawMarks()
	f.sheet.Rect(f.rect, ptr(scene.Pen(frameLine)), nil)
	f.drawTexts()
	f.nameRight()
	f.nameInside()
}

func ptr[T any](v T) *T { return &v }

// text writes a text and keeps others away from it.
func (f *frame) text(at scene.Point, text string, style scene.TextStyle) {
	f.sheet.TextAt(at, text, style)
	f.boxes = append(f.boxes, scene.InkBox(*f.sheet.Items[len(f.sheet.Items)-1].Text))
}
