package chart

import (
	"fmt"
	"math"

	"fusewright/render/scene"
)

// Bar is one row of a bar chart.
type Bar struct {
	Name  string
	Value float64
	Text  string // stands behind the bar
}

// Bars is a list of horizontal bars, such as how far each wire is loaded. A bar
// beyond Limit is hatched and its text bold, so that it shows without colour.
type Bars struct {
	ID, Desc  string
	Axis      Axis // linear, from zero; Min and Max as in a plot
	Limit     float64
	LimitName string // stands over the line of the limit
	Bars      []Bar
}

// barRow is the height of one row in mm.
const barRow = 4.0

// Rows tells how many bars a rectangle of the height takes.
func (b *Bars) Rows(heightMM float64) int {
	return max(0, int((heightMM-2-rowHeight*3)/barRow))
}

// Draw draws as many bars as fit, in order, and returns how many those were:
// the caller goes on with the rest on the next sheet.
func (b *Bars) Draw(sheet *scene.Sheet, in scene.Rect) (drawn int, err error) {
	values := []float64{b.Limit}
	for _, bar := range b.Bars {
		if !finite(bar.Value) || bar.Value < 0 {
			return 0, fmt.Errorf("chart %q: bar %q is %g (expected zero or more)", b.ID, bar.Name, bar.Value)
		}
		values = append(values, bar.Value)
	}
	count := min(b.Rows(in.H), len(b.Bars))
	if in.W < MinWidthMM || count == 0 {
		return 0, fmt.Errorf("chart %q: no bar fits into %.0f × %.0f mm", b.ID, in.W, in.H)
	}
	whole := &Plot{ID: b.ID, Desc: b.Desc}
	whole.begin(sheet)
	defer whole.end(sheet)
	d := &barDrawing{bars: b, sheet: sheet, shown: b.Bars[:count]}
	d.layOut(in, values)
	d.draw()
	return count, nil
}

// mostWords is the most of the width that names and texts take together.
const mostWords = 0.75

// barDrawing is a bar chart being drawn.
type barDrawing struct {
	bars  *Bars
	sheet *scene.Sheet
	shown []Bar
	left  float64 // where the names start
	rect  scene.Rect
	x     *scale
}

func (d *barDrawing) layOut(in scene.Rect, values []float64) {
	names, texts := 0.0, 0.0
	for _, bar := range d.shown {
		names = max(names, scene.TextWidthMM(bar.Name, textSize, scene.Regular))
		texts = max(texts, scene.TextWidthMM(bar.Text, textSize, scene.Bold))
	}
	if over := names + texts - mostWords*in.W; over > 0 { // the longer gives way
		names, texts = min(names, max(names-over, mostWords/2*in.W)), min(texts, max(texts-over, mostWords/2*in.W))
	}
	d.left = in.X
	top := in.Y + rowHeight
	d.rect = scene.Rect{
		X: in.X + names + 2, Y: top,
		W: in.W - names - 2 - texts - 2, H: float64(len(d.shown)) * barRow,
	}
	axis := d.bars.Axis
	axis.FromZero = true
	d.x = newScale(axis, values, d.rect.X, d.rect.Right(), 16)
}

func (d *barDrawing) over(bar Bar) bool {
	return d.bars.Limit > 0 && bar.Value > d.bars.Limit
}

func (d *barDrawing) draw() {
	d.drawAxis()
	for i, bar := range d.shown {
		d.drawBar(bar, d.rect.Y+float64(i)*barRow)
	}
	d.drawLimit()
	d.sheet.Line(scene.Point{X: d.rect.X, Y: d.rect.Y}, scene.Point{X: d.rect.X, Y: d.rect.Bottom()}, scene.Pen(0.35))
}

func (d *barDrawing) drawAxis() {
	style := scene.TextStyle{SizeMM: textSize, Colour: scene.Ink, Align: scene.Middle}
	y := d.rect.Bottom() + 2 + scene.CapHeightMM(textSize, scene.Regular)
	for _, tick := range d.x.ticks {
		x, ok := d.x.place(tick.At)
		if !ok {
			continue
		}
		d.sheet.Line(scene.Point{X: x, Y: d.rect.Y}, scene.Point{X: x, Y: d.rect.Bottom() + 1}, scene.Pen(gridLine).In(gridColour))
		d.sheet.TextAt(scene.Point{X: x, Y: y}, tick.Text, style)
	}
	d.sheet.TextAt(scene.Point{X: d.rect.X + d.rect.W/2, Y: y + rowHeight}, d.bars.Axis.label(), style)
}

// drawBar draws one row. The text stands behind the bar, or behind the whole
// scale when the line of the limit would run through it.
func (d *barDrawing) drawBar(bar Bar, top float64) {
	const height = 2.8
	name := scene.TextStyle{SizeMM: textSize, Colour: scene.Ink, Align: scene.Right}
	row := scene.Rect{X: d.left - 0.01, Y: top, W: d.rect.X - 2 - d.left + 0.01, H: barRow}
	d.sheet.TextIn(row, bar.Name, name)
	end, _ := d.x.place(bar.Value)
	end = min(end, d.rect.Right())
	body := scene.Rect{X: d.rect.X, Y: top + (barRow-height)/2, W: max(end-d.rect.X, 0), H: height}
	over := d.over(bar)
	face, fill, pen := scene.Regular, scene.Paint(looks[1].tint()), scene.Stroke{WidthMM: 0.25, Colour: looks[1].colour}
	if over {
		face, fill, pen = scene.Bold, scene.Paint(looks[2].tint()), scene.Stroke{WidthMM: 0.35, Colour: looks[2].colour}
	}
	d.sheet.Rect(body, &pen, fill)
	if over {
		d.hatch(body, pen)
	}
	text := bar.Text
	room := d.rect.Right() + 2 + d.textRoom() - end - 1.2
	text = scene.Ellipsis(text, textSize, room, face)
	ground := scene.Rect{X: end + 1.2, Y: top, W: scene.TextWidthMM(text, textSize, face), H: barRow}
	if limit, ok := d.x.place(d.bars.Limit); ok && ground.X-0.6 < limit && limit < ground.Right()+0.6 {
		ground.X = limit + 1.2
	}
	d.sheet.Rect(scene.Rect{X: ground.X - 0.3, Y: top + 0.2, W: ground.W + 0.6, H: barRow - 0.4}, nil, scene.Paint(paper))
	d.sheet.TextIn(scene.Rect{X: ground.X, Y: top, W: ground.W + 0.01, H: barRow}, text,
		scene.TextStyle{SizeMM: textSize, Face: face, Colour: scene.Ink})
}

func (d *barDrawing) textRoom() float64 {
	widest := 0.0
	for _, bar := range d.shown {
		widest = max(widest, scene.TextWidthMM(bar.Text, textSize, scene.Bold))
	}
	return widest
}

// hatch draws lines at 45° over a bar.
func (d *barDrawing) hatch(body scene.Rect, pen scene.Stroke) {
	const step = 1.6
	pen.WidthMM = 0.2
	for x := body.X + step - math.Mod(body.H, step); x < body.Right()+body.H; x += step {
		a, b := scene.Point{X: x, Y: body.Y}, scene.Point{X: x - body.H, Y: body.Bottom()}
		if from, to, ok := clipSegment(a, b, body); ok {
			d.sheet.Line(from, to, pen)
		}
	}
}

func (d *barDrawing) drawLimit() {
	x, ok := d.x.place(d.bars.Limit)
	if !ok || x > d.rect.Right()+0.01 {
		return
	}
	d.sheet.Line(scene.Point{X: x, Y: d.rect.Y - 1}, scene.Point{X: x, Y: d.rect.Bottom()}, scene.Pen(0.5))
	width := scene.TextWidthMM(d.bars.LimitName, textSize, scene.Regular)
	left := max(d.left, min(x-width/2, d.rect.Right()-width))
	d.sheet.TextAt(scene.Point{X: left, Y: d.rect.Y - 1.8}, d.bars.LimitName, scene.TextStyle{SizeMM: textSize, Colour: scene.Ink})
}
