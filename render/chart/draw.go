package chart

import (
	"cmp"
	"math"
	"slices"

	"fusewright/render/scene"
)

// drawSpans tints every other interval of the x axis.
func (f *frame) drawSpans() {
	for i, s := range f.plot.Spans {
		left, right, ok := f.spanEnds(s)
		if !ok {
			continue
		}
		if i%2 == 1 {
			area := scene.Rect{X: left, Y: f.rect.Y, W: right - left, H: f.rect.H}
			f.sheet.Rect(area, nil, scene.Paint(spanTint))
		}
	}
}

// spanEnds gives the visible ends of an interval in mm.
func (f *frame) spanEnds(s Span) (left, right float64, ok bool) {
	a, okA := f.x.place(s.From)
	b, okB := f.x.place(s.To)
	left, right = max(a, f.rect.X), min(b, f.rect.Right())
	return left, right, okA && okB && right-left > 0.01
}

// drawGrid draws the grid lines and the heavier line of zero.
func (f *frame) drawGrid() {
	upright := func(v, width float64, colour scene.RGB) {
		if x, ok := f.x.place(v); ok {
			f.sheet.Line(scene.Point{X: x, Y: f.rect.Y}, scene.Point{X: x, Y: f.rect.Bottom()}, scene.Pen(width).In(colour))
		}
	}
	level := func(v, width float64, colour scene.RGB) {
		if y, ok := f.y.place(v); ok {
			f.sheet.Line(scene.Point{X: f.rect.X, Y: y}, scene.Point{X: f.rect.Right(), Y: y}, scene.Pen(width).In(colour))
		}
	}
	for _, v := range f.x.minor {
		upright(v, gridLine, minorColour)
	}
	for _, v := range f.y.minor {
		level(v, gridLine, minorColour)
	}
	for _, tick := range f.x.ticks {
		upright(tick.At, gridLine, gridColour)
	}
	for _, tick := range f.y.ticks {
		level(tick.At, gridLine, gridColour)
	}
	if !f.plot.Y.Log && f.y.min < 0 && f.y.max > 0 {
		level(0, frameLine, scene.Ink)
	}
}

// drawBands tints the areas and draws their edges thinly.
func (f *frame) drawBands() {
	for i, b := range f.plot.Bands {
		l := lookOf(i)
		low := f.polylines(Curve{X: b.X, Y: b.Low})
		high := f.polylines(Curve{X: b.X, Y: b.High})
		var area []scene.Point
		for j := range b.X {
			if at, ok := f.point(b.X[j], b.High[j]); ok {
				area = append(area, at)
			}
		}
		for j := len(b.X) - 1; j >= 0; j-- {
			if at, ok := f.point(b.X[j], b.Low[j]); ok {
				area = append(area, at)
			}
		}
		if area = clipArea(area, f.rect); len(area) > 2 {
			f.sheet.Polygon(area, nil, scene.Paint(l.tint()))
			f.tinted = append(f.tinted, area)
		}
		edges := slices.Concat(low, high)
		for _, line := range edges {
			f.sheet.Polyline(line, scene.Stroke{WidthMM: 0.25, Colour: l.colour, Dash: l.dash})
		}
		f.addName(&name{text: b.Name, look: l, area: true, lines: edges})
	}
}

// drawLevels draws the straight lines across the plot.
func (f *frame) drawLevels() {
	level := 0
	for _, l := range f.plot.Levels {
		if l.OnX {
			f.drawUpright(l)
			continue
		}
		style := lookOf(len(f.plot.Curves) + level)
		level++
		y, ok := f.y.place(l.At)
		if !ok || y < f.rect.Y-0.01 || y > f.rect.Bottom()+0.01 {
			continue
		}
		line := []scene.Point{{X: f.rect.X, Y: y}, {X: f.rect.Right(), Y: y}}
		f.sheet.Polyline(line, style.stroke(levelLine))
		f.addName(&name{text: l.Name, look: style, lines: [][]scene.Point{line}})
	}
}

func (f *frame) drawUpright(l Level) {
	x, ok := f.x.place(l.At)
	if !ok || x < f.rect.X-0.01 || x > f.rect.Right()+0.01 {
		return
	}
	line := []scene.Point{{X: x, Y: f.rect.Y - 1}, {X: x, Y: f.rect.Bottom()}}
	f.sheet.Polyline(line, scene.Stroke{WidthMM: 0.25, Colour: quiet, Dash: []float64{1.6, 1}})
	f.lines = append(f.lines, line)
}

// drawCurves draws the curves, the heavy ones last and on top.
func (f *frame) drawCurves() {
	for _, heavy := range []bool{false, true} {
		for i, c := range f.plot.Curves {
			if c.Heavy == heavy {
				f.drawCurve(c, lookOf(cmp.Or(c.Look, i+1)-1))
			}
		}
	}
}

func (f *frame) drawCurve(c Curve, l look) {
	stroke := l.stroke(curveLine)
	if c.Heavy {
		stroke.WidthMM = 1.5 * curveLine
	}
	lines := f.polylines(c)
	for _, line := range lines {
		f.sheet.Polyline(line, stroke)
	}
	if c.Markers {
		for i := range c.X {
			if at, ok := f.point(c.X[i], c.Y[i]); ok && f.rect.Grow(0.01).Contains(scene.Rect{X: at.X, Y: at.Y}) {
				f.sheet.Circle(at, 0.85, nil, scene.Paint(l.colour))
				f.boxes = append(f.boxes, around(at, 1))
			}
		}
	}
	f.addName(&name{text: c.Name, look: l, heavy: c.Heavy, lines: lines})
}

func around(at scene.Point, radiusMM float64) scene.Rect {
	return scene.Rect{X: at.X - radiusMM, Y: at.Y - radiusMM, W: 2 * radiusMM, H: 2 * radiusMM}
}

// addName keeps what needs a name, and its lines out of the way of others. A
// line that reaches the right border gets its name in the margin there.
func (f *frame) addName(n *name) {
	f.lines = append(f.lines, n.lines...)
	if n.text == "" || len(n.lines) == 0 {
		return
	}
	for _, line := range n.lines {
		if last := line[len(line)-1]; n.at == (scene.Point{}) || last.X > n.at.X {
			n.at = last
		}
	}
	n.right = !n.area && n.at.X > f.rect.Right()-rightEnd*f.rect.W &&
		f.nameRoom() >= min(n.width(), f.outer.W/3-nameGap)
	f.names = append(f.names, n)
}

// drawMarks draws the points that the text speaks of.
func (f *frame) drawMarks() {
	for _, m := range f.plot.Marks {
		at, ok := f.point(m.X, m.Y)
		if !ok || !f.rect.Grow(0.01).Contains(scene.Rect{X: at.X, Y: at.Y}) {
			continue
		}
		if m.Drop {
			foot := scene.Point{X: at.X, Y: f.rect.Bottom()}
			f.sheet.Line(at, foot, scene.Pen(0.18).Dashed(0.6, 0.6))
			f.lines = append(f.lines, []scene.Point{at, foot})
		}
		pen := scene.Pen(0.4)
		f.sheet.Circle(at, 1.1, &pen, scene.Paint(paper))
		f.boxes = append(f.boxes, around(at, 1.3))
		if m.Text != "" {
			ink := look{colour: scene.Ink}
			f.names = append(f.names, &name{text: m.Text, look: ink, at: at})
		}
	}
}

// drawTexts writes what stands outside the frame.
func (f *frame) drawTexts() {
	f.drawYTexts()
	f.drawTopRow()
	f.drawXTexts()
}

func (f *frame) drawYTexts() {
	style := scene.TextStyle{SizeMM: textSize, Colour: scene.Ink, Align: scene.Right}
	half := scene.CapHeightMM(textSize, scene.Regular) / 2
	free := math.Inf(1)
	for _, tick := range f.y.ticks {
		if y, ok := f.y.place(tick.At); ok && y < free {
			free = y - 3.4
			f.sheet.Line(scene.Point{X: f.rect.X - 1, Y: y}, scene.Point{X: f.rect.X, Y: y}, scene.Pen(frameLine))
			f.text(scene.Point{X: f.rect.X - 1.7, Y: y + half}, tick.Text, style)
		}
	}
	if label := f.plot.Y.label(); label != "" {
		style.Align = scene.Left
		at := scene.Point{X: f.outer.X, Y: f.outer.Y + scene.CapHeightMM(textSize, scene.Regular)}
		f.text(at, scene.Ellipsis(label, textSize, f.outer.W, scene.Regular), style)
	}
}

// drawTopRow writes the names of spans and of upright levels over the frame.
func (f *frame) drawTopRow() {
	style := scene.TextStyle{SizeMM: textSize, Colour: quiet, Align: scene.Middle}
	y := f.rect.Y - 2.2
	for _, s := range f.plot.Spans {
		left, right, ok := f.spanEnds(s)
		if !ok {
			continue
		}
		if text := scene.Ellipsis(s.Name, textSize, right-left-1, scene.Regular); len([]rune(text)) > 2 || text == s.Name {
			f.text(scene.Point{X: (left + right) / 2, Y: y}, text, style)
		}
	}
	var slots []*slot
	var texts []string
	for _, l := range f.plot.Levels {
		if x, ok := f.x.place(l.At); l.OnX && l.Name != "" && ok && x >= f.rect.X-0.01 && x <= f.rect.Right()+0.01 {
			slots = append(slots, &slot{want: x, size: scene.TextWidthMM(l.Name, textSize, scene.Regular) + 3})
			texts = append(texts, l.Name)
		}
	}
	if !spread(slots, f.outer.X, f.outer.Right()) {
		return // so many that they would be read by nobody: the lines stay
	}
	for i, s := range slots {
		f.text(scene.Point{X: s.at, Y: y}, texts[i], style)
	}
}

func (f *frame) drawXTexts() {
	if f.hideX {
		return
	}
	style := scene.TextStyle{SizeMM: textSize, Colour: scene.Ink, Align: scene.Middle}
	first := f.rect.Bottom() + 2.2 + scene.CapHeightMM(textSize, scene.Regular)
	rows, free := 1, math.Inf(-1)
	for _, tick := range f.x.ticks {
		x, ok := f.x.place(tick.At)
		if !ok {
			continue
		}
		f.sheet.Line(scene.Point{X: x, Y: f.rect.Bottom()}, scene.Point{X: x, Y: f.rect.Bottom() + 1}, scene.Pen(frameLine))
		lines := f.tickLines(tick.Text, f.rect.W)
		width := 0.0
		for _, line := range lines {
			width = max(width, style.Width(line))
		}
		if x-width/2 < free { // no room beside the one before
			continue
		}
		free = x + width/2 + 1
		rows = max(rows, len(lines))
		for i, line := range lines {
			f.text(scene.Point{X: x, Y: first + float64(i)*scene.LineHeightMM(textSize)}, line, style)
		}
	}
	if label := f.plot.X.label(); label != "" {
		at := scene.Point{X: f.rect.X + f.rect.W/2, Y: first + float64(rows-1)*scene.LineHeightMM(textSize) + rowHeight}
		f.text(at, scene.Ellipsis(label, textSize, f.outer.W, scene.Regular), style)
	}
}
