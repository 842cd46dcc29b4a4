// Package scene is a drawing as a list of primitives in millimetres on a sheet,
// the origin at the top left, y downwards. Schematics, charts and pages draw
// into it; the back-ends svg, pdf and png replay it and show the same picture.
// It knows nothing of circuits.
//
// A sheet is filled with its builder methods and replayed to a back-end:
//
//	sheet := scene.NewSheet(210, 297, "Drops")
//	sheet.Begin(scene.Group{ID: "w1", Class: "wire", Title: "wire 1"})
//	sheet.Line(scene.Point{X: 20, Y: 30}, scene.Point{X: 90, Y: 30}, scene.Pen(0.5))
//	sheet.TextAt(scene.Point{X: 22, Y: 29}, "W1 1.5 mm²", scene.TextStyle{SizeMM: 2.8})
//	sheet.End()
package scene

import (
	"iter"
	"time"
)

// Point is a place on the sheet in millimetres.
type Point struct{ X, Y float64 }

// Rect is an upright rectangle in millimetres.
type Rect struct{ X, Y, W, H float64 }

// RGB is a colour.
type RGB struct{ R, G, B uint8 }

// Ink is the usual drawing colour.
var Ink = RGB{17, 17, 17}

// Stroke is how a line is drawn.
type Stroke struct {
	WidthMM float64
	Colour  RGB
	Dash    []float64 // lengths in mm, on and off; nil = solid
	Round   bool      // round caps and joins
}

// Fill is how an area is filled; nil pointers mean not filled.
type Fill struct{ Colour RGB }

// Align is the horizontal anchor of a text.
type Align int

// The anchors.
const (
	Left Align = iota
	Middle
	Right
)

// Face is one of the embedded faces.
type Face int

// The faces.
const (
	Regular Face = iota
	Bold
	Italic
)

// Text is one line of text. At is on the baseline. SizeMM is the height of the
// font's em square (the capital height is about 0.7 of it).
type Text struct {
	At     Point
	String string
	SizeMM float64
	Face   Face
	Align  Align
	Colour RGB
	Turn   float64 // degrees counter-clockwise about At
}

// Verb is a path step.
type Verb int

// The path steps. Cubic takes three points, the others one (Close none).
const (
	Move Verb = iota
	Line
	Cubic
	Close
)

// Path is a line or area.
type Path struct {
	Verbs  []Verb
	Points []Point
	Stroke *Stroke
	Fill   *Fill
}

// pointsOf is how many points each step takes.
var pointsOf = [...]int{Move: 1, Line: 1, Cubic: 3, Close: 0}

// Steps gives the steps of a valid path in order, each with its points.
func (p *Path) Steps() iter.Seq2[Verb, []Point] {
	return func(yield func(Verb, []Point) bool) {
		rest := p.Points
		for _, verb := range p.Verbs {
			n := pointsOf[verb]
			if !yield(verb, rest[:n]) {
				return
			}
			rest = rest[n:]
		}
	}
}

// Group marks a part of the drawing so that pages and readers can address it.
type Group struct {
	ID    string // unique on the sheet, a plain XML name (see ID); "" = not addressed
	Class string // "part", "wire", "frame", "label", ...
	Title string // short text read aloud
	Desc  string
	// Of is the label of the part or wire that the group shows, for pages on which it can
	// be chosen; "" = of none.
	Of string
	// Link is the ID of a group, or of a sheet, of the same document that a
	// click on the group leads to; "" = none.
	Link string
}

// Item is one primitive in drawing order: exactly one field is set, Begin and
// End bracket a group.
type Item struct {
	Path  *Path
	Text  *Text
	Begin *Group
	End   bool
}

// Sheet is one page.
type Sheet struct {
	WidthMM, HeightMM float64
	Title             string
	Items             []Item
	ID                string // link target of the whole page; "" = none
	Desc              string // longer text read aloud; "" = none
	Level             int    // depth of the bookmark in a PDF; 0 = top

	taken  map[string]bool // IDs of the groups among the first so many items; see UniqueID
	looked int
}

// Document is pages in order with what a PDF or SVG says of itself.
type Document struct {
	Title, Author, Subject string
	Sheets                 []*Sheet
	// Date is what the PDF says of its making. The zero value is written as a
	// fixed day, so that the same drawing is always the same bytes.
	Date time.Time
}
