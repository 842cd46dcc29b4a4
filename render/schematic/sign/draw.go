package sign

import (
	"fmt"
	"strconv"
	"strings"

	"fusewright/harness/design/wording"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
	"fusewright/render/symbol"
)

// Measures of the numbered triangle in mm; a drawing has seldom a hundred.
const (
	DeltaW = 7.4
	DeltaH = 5.4
)

// deltaFoot is from the base of a triangle to the foot of its number.
const deltaFoot = 0.6

var changeColours = map[compare.What]scene.RGB{
	compare.Added: adviceBlue, compare.Changed: faultOrange, compare.Removed: dangerRed, compare.Judged: scene.Ink, compare.Relabelled: faultOrange,
}

// DrawChange draws the numbered triangle of a change, its middle at a place:
// added full, changed open, removed on its point, judged anew dashed.
func DrawChange(sheet *scene.Sheet, m *Entry, x, y float64) {
	kind := m.Change.What
	colour := changeColours[kind]
	pen, fill, ink := scene.Pen(symbol.LineMM).In(colour), scene.Paint(White), colour
	up, base := 1.0, y+DeltaH/2-deltaFoot
	switch kind {
	case compare.Added:
		fill, ink = scene.Paint(colour), White
	case compare.Removed:
		up, base = -1, y-DeltaH/2+deltaFoot+lettering.CapMM
	case compare.Judged:
		pen = scene.Pen(0.3).Dashed(0.9, 0.6)
	}
	number := strconv.Itoa(m.Number)
	sheet.Begin(scene.Group{ID: sheet.UniqueID("change-" + number), Class: "change",
		Title: "change " + number + ": " + string(kind), Desc: m.Brief()})
	sheet.Polygon([]scene.Point{{X: x, Y: y - up*DeltaH/2}, {X: x + DeltaW/2, Y: y + up*DeltaH/2},
		{X: x - DeltaW/2, Y: y + up*DeltaH/2}}, &pen, fill)
	sheet.TextAt(scene.Point{X: x, Y: base}, number,
		scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}

// The colours of flags; the shape alone tells the severity too.
var (
	dangerRed   = scene.RGB{R: 170, G: 20, B: 20}
	faultOrange = scene.RGB{R: 176, G: 84, B: 0}
	adviceBlue  = scene.RGB{R: 20, G: 70, B: 160}
	White       = scene.RGB{R: 255, G: 255, B: 255}
)

// Draw draws a numbered sign, its middle at a place: danger filled, fault a thick
// ring, advice a thin ring, accepted a dashed ring, a change as DrawChange does.
func Draw(sheet *scene.Sheet, m *Entry, x, y float64) {
	if m.Change != nil {
		DrawChange(sheet, m, x, y)
		return
	}
	worst := m.Findings[0]
	ring, fill, ink := scene.Pen(symbol.ThinMM), scene.Paint(White), scene.Ink
	switch {
	case worst.Accepted != "":
		ring = scene.Pen(0.3).Dashed(0.9, 0.6)
	case worst.Severity == finding.Danger:
		ring, fill, ink = scene.Pen(symbol.LineMM).In(dangerRed), scene.Paint(dangerRed), White
	case worst.Severity == finding.Fault:
		ring, ink = scene.Pen(0.7).In(faultOrange), faultOrange
	default:
		ring, ink = scene.Pen(0.3).In(adviceBlue), adviceBlue
	}
	radius := Radius
	if m.Number > 99 {
		radius = Radius + 0.4
	}
	sheet.Begin(scene.Group{ID: sheet.UniqueID("flag-" + strconv.Itoa(m.Number)), Class: "finding",
		Title: "finding " + strconv.Itoa(m.Number) + ": " + worst.Rule, Desc: worst.What, Of: m.Refs[0]})
	sheet.Circle(scene.Point{X: x, Y: y}, radius, &ring, fill)
	sheet.TextAt(scene.Point{X: x, Y: y + lettering.CapMM/2}, strconv.Itoa(m.Number),
		scene.TextStyle{SizeMM: lettering.SmallMM, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}

// Head names what an entry is about: "F1, danger".
func (m *Entry) Head() string {
	if m.Change != nil {
		return wording.Present(append(m.names(), string(m.Change.What)), ", ")
	}
	severity := m.Findings[0].Severity.String()
	if m.Findings[0].Accepted != "" {
		severity = "accepted"
	}
	names := wording.Present(m.Refs, ", ")
	switch n := len(m.Likewise); {
	case n == 1 && m.Likewise[0] != names:
		names = wording.Present([]string{names, m.Likewise[0]}, ", ")
	case n > 0:
		names += fmt.Sprintf(" and %d more", n)
	}
	return wording.Present([]string{names, severity}, ", ")
}

// Indent is the room of a sign in a list, Half half its height, in mm.
func (m *Entry) Indent() float64 {
	if m.Change != nil {
		return 9
	}
	return 6.5
}

func (m *Entry) Half() float64 {
	if m.Change != nil {
		return DeltaH / 2
	}
	return Radius
}

// Figure is the number that decides the worst finding, with its limit; "" when
// there is none, or one without a unit that says nothing alone.
func (m *Entry) Figure() string {
	if m.Findings[0].Figure.Of == "" {
		return ""
	}
	return m.Findings[0].Figure.String()
}

// also are the numbers of the other findings of the part: "also 7, 12"; "" without any.
func (m *Entry) also() string {
	if len(m.Findings) < 2 {
		return ""
	}
	var numbers []string
	for _, f := range m.Findings[1:] {
		numbers = append(numbers, strconv.Itoa(f.Number))
	}
	return "also " + strings.Join(numbers, ", ")
}

// follow tells how many further findings follow from these; "" for none.
func (m *Entry) follow() string {
	if m.Follow == 0 {
		return ""
	}
	return wording.Count(m.Follow, "more follows", "more follow")
}

// Fit is the most that an entry says in one line of a width: figure, rule, the numbers of
// the part's other findings and how many follow, else without the figure. No number is left out.
func (m *Entry) Fit(widthMM float64, measure func(string) float64) string {
	if m.Change != nil {
		return m.short()
	}
	text := wording.Present([]string{m.Findings[0].Rule, m.also(), m.follow()}, ", ")
	if whole := wording.Present([]string{m.Figure(), text}, ", "); measure(whole) <= widthMM {
		return whole
	}
	return text
}
