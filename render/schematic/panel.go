package schematic

import (
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// panelW is the width of a list beside the circuit, in mm.
const panelW = 64.0

// panelM is the room a column of lists takes from the circuit, in modules.
const panelM = 27

// panelRow is one entry of a list: its height and how to draw it with its top
// left corner at a place.
type panelRow struct {
	height float64
	draw   func(sheet *scene.Sheet, x, y float64)
}

// panel is a list with a heading.
type panel struct {
	title string
	rows  []panelRow
	area  scene.Rect // where it stands, set by composePanels
}

const (
	panelHead = 6.5 // heading with its line, mm
	panelGap  = 4.0
)

func (p *panel) height() float64 {
	h := panelHead
	for _, r := range p.rows {
		h += r.height
	}
	return h
}

// paint draws the list at its place.
func (p *panel) paint(sheet *scene.Sheet) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("list-" + p.title), Class: "list", Title: p.title})
	x, y := p.area.X, p.area.Y
	sheet.TextAt(scene.Point{X: x, Y: y + 3}, p.title, scene.TextStyle{SizeMM: normalMM, Face: scene.Bold, Colour: scene.Ink})
	sheet.Line(scene.Point{X: x, Y: y + 4.2}, scene.Point{X: x + panelW - 4, Y: y + 4.2}, scene.Pen(0.25))
	y += panelHead
	for _, r := range p.rows {
		r.draw(sheet, x, y)
		y += r.height
	}
	sheet.End()
}

// textRow is a row of wrapped words after an indent.
func textRow(words string, indent float64, face scene.Face, colour scene.RGB) panelRow {
	lines := scene.Wrap(words, smallMM, panelW-4-indent, face)
	return panelRow{
		height: float64(len(lines)) * lineMM,
		draw: func(sheet *scene.Sheet, x, y float64) {
			for i, line := range lines {
				sheet.TextAt(scene.Point{X: x + indent, Y: y + capMM + float64(i)*lineMM}, line,
					scene.TextStyle{SizeMM: smallMM, Face: face, Colour: colour})
			}
		},
	}
}

// slot is a free column of a sheet into which lists are put from the top.
type slot struct {
	x, y, bottom float64
}

// slots are the free columns of a page: at the right of the circuit when it is
// narrow, under it, and beside the title block.
func (d *drawing) slots(p *page) []slot {
	var list []slot
	field, in := d.paper.field(), d.paper.inner()
	stripTop := in.Bottom() - titleH
	bottom := field.Y + float64(p.height)*symbol.M + 3
	right := field.Right()
	if p.side {
		right -= panelW
		list = append(list, slot{right + 2, field.Y + 2, stripTop - 2})
	}
	left := in.X + 4
	foot := in.Bottom() - 10 // the caution stands below
	for x := left; x+panelW-4 < in.Right()-titleW; x += panelW + 2 {
		list = append(list, slot{x, max(bottom, field.Y), foot})
	}
	for x := left + 2*(panelW+2); x+panelW-4 < right; x += panelW + 2 {
		if x+panelW > in.Right()-titleW {
			list = append(list, slot{x, bottom, stripTop - 2})
		}
	}
	return list
}

// place puts whole lists into slots and returns those that found no room.
func place(lists []*panel, slots []slot) (placed, left []*panel) {
	for _, p := range lists {
		h := p.height()
		found := false
		for i := range slots {
			s := &slots[i]
			if s.y+h <= s.bottom {
				p.area = scene.Rect{X: s.x, Y: s.y, W: panelW - 4, H: h}
				s.y += h + panelGap
				placed = append(placed, p)
				found = true
				break
			}
		}
		if !found {
			left = append(left, p)
		}
	}
	return placed, left
}

// composePanels makes the lists of every page and puts what finds no room on
// sheets of its own.
func (d *drawing) composePanels() {
	shared := d.groundPanels()
	var homeless []*panel
	for _, p := range d.pages {
		slots := d.slots(p)
		own := d.findingPanels(p)
		placed, left := place(own, slots)
		p.panels = append(p.panels, placed...)
		homeless = append(homeless, left...)
		placed, shared = place(shared, slots)
		p.panels = append(p.panels, placed...)
		placed, left = place([]*panel{d.colourPanel(p)}, slots)
		p.panels = append(p.panels, placed...)
		homeless = append(homeless, left...)
		placed, _ = place([]*panel{d.notePanel()}, slots)
		p.panels = append(p.panels, placed...)
	}
	d.extras = d.extraPages(append(homeless, shared...))
}

// panels draws the lists of the page.
func (a *painter) panels() {
	for _, p := range a.page.panels {
		p.paint(a.sheet)
	}
}
