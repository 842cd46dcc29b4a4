// Package chart draws axes and curves into a rectangle of a scene sheet, in the
// manner of an engineering handbook: names beside the curves and not in a box,
// units at the axes, few lines of grid. It knows nothing of circuits: plain
// numbers come in.
//
// Curves differ by dash as well as by colour, so a print in black
// and white says the same. No text ever lies over another; a name that finds no
// free place beside its curve goes into a key under the picture.
//
//	plot := &chart.Plot{
//		X: chart.Axis{Title: "Engine speed", Unit: "rpm"},
//		Y: chart.Axis{Title: "Current", Unit: "A", FromZero: true},
//		Curves: []chart.Curve{{Name: "output", X: []float64{1300, 4000}, Y: []float64{13, 28}}},
//	}
//	err := plot.Draw(sheet, scene.Rect{X: 20, Y: 30, W: 170, H: 100})
package chart

import (
	"errors"
	"fmt"
	"math"

	"fusewright/render/scene"
)

// Sizes of text and widths of lines in mm. The capitals of the smallest text
// are 2 mm high on paper.
const (
	titleSize = 3.8
	textSize  = 2.92
	frameLine = 0.25
	gridLine  = 0.13
	curveLine = 0.5
	levelLine = 0.35
	rowHeight = 4.6 // one line of text with air
)

// MinWidthMM and MinHeightMM are the smallest rectangle a plot is drawn in.
const (
	MinWidthMM  = 56
	MinHeightMM = 22
)

// Tick is a mark of an axis with its own text.
type Tick struct {
	At   float64
	Text string
}

// Axis is one direction of a plot.
type Axis struct {
	Title string
	Unit  string // "" = none
	Log   bool   // decades, between Min and Max
	// Min and Max fix the range; both zero = from the data, rounded outwards
	// to ticks.
	Min, Max float64
	FromZero bool   // linear axes: the range takes in zero
	Ticks    []Tick // given ticks, such as names of places; nil = reckoned
}

// Curve is named values over X, joined by straight lines. A NaN breaks the line.
type Curve struct {
	Name    string
	X, Y    []float64
	Markers bool // a dot at each point
	Heavy   bool // the curve the picture is about
	// Look is the place of its colour and dash, counted from 1, so that a thing looks the same
	// in several pictures; 0 = by its place among the curves.
	Look int
}

// Band is the area between two curves over X, such as a tolerance.
type Band struct {
	Name         string
	X, Low, High []float64
}

// Level is a straight line across the plot at one value: a load over engine
// speed (on the y axis) or a speed such as idle (on the x axis).
type Level struct {
	Name string
	At   float64
	OnX  bool // a value of the x axis: an upright line, thin and grey
}

// Span is an interval of the x axis with a name over it, such as one leg of a
// ride. Every other one is tinted.
type Span struct {
	Name     string
	From, To float64
}

// Mark is a point that the text speaks of, such as where two curves cross. A
// thin line leads down to the x axis when Drop is set.
type Mark struct {
	Text string
	X, Y float64
	Drop bool
}

// Plot is one picture.
type Plot struct {
	// ID names the group on the sheet; "" = no group. Desc is read aloud.
	ID, Desc string
	Title    string
	X, Y     Axis
	Curves   []Curve
	Bands    []Band
	Levels   []Level
	Spans    []Span
	Marks    []Mark
	Note     string // one or more lines under the picture
}

// Draw draws the plot inside the rectangle. It fails on values that fit no axis,
// on a rectangle below MinWidthMM × MinHeightMM, and on one whose texts would
// leave no room between the axes; then nothing is drawn.
func (p *Plot) Draw(sheet *scene.Sheet, in scene.Rect) error {
	if err := p.check(); err != nil {
		return err
	}
	if !(in.W >= MinWidthMM && in.H >= MinHeightMM) {
		return fmt.Errorf("chart %q: %.0f × %.0f mm is too small (expected %d × %d or more)",
			p.Title, in.W, in.H, MinWidthMM, MinHeightMM)
	}
	scratch := &scene.Sheet{}
	p.begin(scratch)
	in = drawTitle(scratch, in, p.Title)
	in = drawNote(scratch, in, p.Note)
	if err := drawPanel(scratch, in, p, panelOptions{xLabels: true}); err != nil {
		return err
	}
	p.end(scratch)
	sheet.Items = append(sheet.Items, scratch.Items...)
	return nil
}

func (p *Plot) begin(sheet *scene.Sheet) {
	if p.ID != "" {
		sheet.Begin(scene.Group{ID: p.ID, Class: "chart", Title: p.Title, Desc: p.Desc})
	}
}

func (p *Plot) end(sheet *scene.Sheet) {
	if p.ID != "" {
		sheet.End()
	}
}

// drawTitle writes the heading and returns what is left of the rectangle.
func drawTitle(sheet *scene.Sheet, in scene.Rect, title string) scene.Rect {
	if title == "" {
		return in
	}
	style := scene.TextStyle{SizeMM: titleSize, Face: scene.Bold, Colour: scene.Ink}
	text := scene.Ellipsis(title, titleSize, in.W, scene.Bold)
	sheet.TextAt(scene.Point{X: in.X, Y: in.Y + scene.CapHeightMM(titleSize, scene.Bold)}, text, style)
	const used = 7
	return scene.Rect{X: in.X, Y: in.Y + used, W: in.W, H: in.H - used}
}

// drawNote writes lines at the bottom and returns what is left.
func drawNote(sheet *scene.Sheet, in scene.Rect, note string) scene.Rect {
	if note == "" {
		return in
	}
	const most = 3
	lines := scene.Wrap(note, textSize, in.W, scene.Italic)
	lines = lines[:min(len(lines), most)]
	y := in.Bottom() - float64(len(lines)-1)*scene.LineHeightMM(textSize) - 0.8
	for i, line := range lines {
		at := scene.Point{X: in.X, Y: y + float64(i)*scene.LineHeightMM(textSize)}
		sheet.TextAt(at, line, scene.TextStyle{SizeMM: textSize, Face: scene.Italic, Colour: quiet})
	}
	in.H -= float64(len(lines))*scene.LineHeightMM(textSize) + 1.5
	return in
}

// check tells what cannot be drawn.
func (p *Plot) check() error {
	var problems []error
	refuse := func(format string, args ...any) {
		problems = append(problems, fmt.Errorf("chart %q: "+format, append([]any{p.Title}, args...)...))
	}
	for _, c := range p.Curves {
		if len(c.X) != len(c.Y) {
			refuse("curve %q has %d x and %d y", c.Name, len(c.X), len(c.Y))
		}
	}
	for _, b := range p.Bands {
		if len(b.X) != len(b.Low) || len(b.X) != len(b.High) {
			refuse("band %q has %d x, %d low and %d high", b.Name, len(b.X), len(b.Low), len(b.High))
		}
	}
	for _, axis := range []Axis{p.X, p.Y} {
		fixed := axis.Min != 0 || axis.Max != 0
		if fixed && !(axis.Max > axis.Min && finite(axis.Min) && finite(axis.Max)) {
			refuse("axis %q from %g to %g", axis.Title, axis.Min, axis.Max)
		}
		if axis.Log && axis.Min <= 0 {
			refuse("axis %q in decades from %g (expected above zero)", axis.Title, axis.Min)
		}
	}
	if len(problems) > 0 {
		return errors.Join(problems...)
	}
	xs, ys := p.values()
	if _, _, ok := p.X.rangeOf(xs); !ok {
		refuse("no values on the x axis")
	}
	if _, _, ok := p.Y.rangeOf(ys); !ok {
		refuse("no values on the y axis")
	}
	return errors.Join(problems...)
}

// values gathers what the axes must take in. Only the part of a curve whose x
// lies in a fixed x range counts on the y axis.
func (p *Plot) values() (xs, ys []float64) {
	add := func(x, y float64) {
		xs = append(xs, x)
		if p.X.Max == p.X.Min || x >= p.X.Min && x <= p.X.Max {
			ys = append(ys, y)
		}
	}
	for _, c := range p.Curves {
		for i := range c.X {
			add(c.X[i], c.Y[i])
		}
	}
	for _, b := range p.Bands {
		for i := range b.X {
			add(b.X[i], b.Low[i])
			add(b.X[i], b.High[i])
		}
	}
	for _, m := range p.Marks {
		add(m.X, m.Y)
	}
	for _, l := range p.Levels {
		if l.OnX {
			xs = append(xs, l.At)
		} else {
			ys = append(ys, l.At)
		}
	}
	for _, s := range p.Spans {
		xs = append(xs, s.From, s.To)
	}
	return xs, ys
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
