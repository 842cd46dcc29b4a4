package schematic

import (
	"fmt"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/render/frame"
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

// panel is a list with a heading, in one column or in several side by side.
type panel struct {
	title string
	whole bool // never in several columns
	// untorn lists are never carried on elsewhere, whole ones neither.
	untorn   bool
	findings bool
	grounds  bool
	inFull   bool // the list of everything that others tell in short
	rows     []panelRow
	area     scene.Rect // where it stands, set when it is placed
	cuts     []int      // row with which each further column begins
}

const (
	panelHead = 6.5 // heading with its line, mm
	panelGap  = 3.5
	panelStep = panelW + 2 // from column to column
)

// height is the height in one column.
func (p *panel) height() float64 { return panelHead + heightOf(p.rows) }

func heightOf(rows []panelRow) (sum float64) {
	for _, r := range rows {
		sum += r.height
	}
	return sum
}

// columns are the rows column by column.
func (p *panel) columns() (list [][]panelRow) {
	from := 0
	for _, cut := range append(append([]int{}, p.cuts...), len(p.rows)) {
		list = append(list, p.rows[from:cut])
		from = cut
	}
	return list
}

// paint draws the list at its place.
func (p *panel) paint(sheet *scene.Sheet) {
	sheet.Begin(scene.Group{ID: sheet.UniqueID("list-" + p.title), Class: "list", Title: p.title})
	x, y := p.area.X, p.area.Y
	sheet.TextAt(scene.Point{X: x, Y: y + 3}, p.title, scene.TextStyle{SizeMM: normalMM, Face: scene.Bold, Colour: scene.Ink})
	sheet.Line(scene.Point{X: x, Y: y + 4.2}, scene.Point{X: p.area.Right(), Y: y + 4.2}, scene.Pen(0.25))
	for k, rows := range p.columns() {
		low := y + panelHead
		for _, r := range rows {
			r.draw(sheet, x+float64(k)*panelStep, low)
			low += r.height
		}
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

// slots are the free columns of a page: at the right of the circuit when it is
// narrow, under it, and beside the title block.
func (d *drawing) slots(p *page) []*slot {
	var list []*slot
	field, in := d.paper.field(), d.paper.Inner()
	stripTop := in.Bottom() - frame.TitleH
	right := field.Right()
	if p.side {
		right -= panelW
		list = append(list, newSlot(right+2, field.Y+2, stripTop-2))
	}
	left := in.X + 4
	foot := in.Bottom() - 9 // the caution stands below
	for x := left; x+panelW-4 < right; x += panelStep {
		bottom := foot
		if x+panelW-4 >= in.Right()-frame.TitleW {
			bottom = stripTop - 2
		}
		list = append(list, newSlot(x, d.bottomOf(p, x, x+panelW), bottom))
	}
	return list
}

// bottomOf is the lower edge, in mm, of whatever the circuit has between two
// upright lines.
func (d *drawing) bottomOf(p *page, left, right float64) float64 {
	field := d.paper.field()
	low := 0.0
	note := func(x0, x1 int, y float64) {
		if field.X+float64(x0-1)*symbol.M < right && field.X+float64(x1+1)*symbol.M > left {
			low = max(low, y)
		}
	}
	for _, c := range p.cells {
		for _, r := range c.rows {
			width := c.body
			if c.kind == passCell {
				width = p.widths[c.col]
			}
			if c.kind == partCell && c.part.Kind == circuit.Battery {
				width = sourceCellar
			}
			note(c.x-1-max(c.lead, p.leads[c.col]), c.x+width, float64(r.y)+r.bottom)
		}
	}
	p.traceLines()
	for _, l := range p.lines {
		for k := 1; k < len(l.pts); k++ {
			a, b := l.pts[k-1], l.pts[k]
			note(min(a.x, b.x), max(a.x, b.x), float64(max(a.y, b.y))+0.5)
		}
	}
	if p.outlined {
		for _, r := range p.frames() {
			note(p.columnX[r.first]-1, p.columnX[r.last]+p.widths[r.last]+1, r.bottom+0.3)
		}
	}
	return field.Y + low*symbol.M + 3
}

// mostAir is the most extra rows between cells.
const mostAir = 2

// composePanels makes the lists of every page and puts what finds no room on
// sheets of its own. Pages get as much air as their lists allow.
func (d *drawing) composePanels() {
	d.compose(true)
	if with := len(d.extras); with > 0 { // shorter lists may save sheets of lists
		if d.compose(false); len(d.extras) >= with {
			d.compose(true)
		}
	}
}

// compose places all lists; full allows what each finding says.
func (d *drawing) compose(full bool) {
	shared := d.groundPanel()
	notes := d.legends()
	var homeless []*panel
	cut, short := false, false
	var free [][]*slot
	for _, p := range d.pages {
		with := []*panel(nil)
		if len(d.pages) == 1 { // the only sheet carries everything
			with, shared = shared, nil
		}
		slots, brief, left, all := d.fitAll(p, with, notes, full)
		if all {
			notes = nil
		} else {
			slots, brief, left = d.fitPanels(p, with, full)
		}
		short = short || brief
		for _, q := range left {
			if q.findings {
				cut = true // the rest stands in the list of all findings
				continue
			}
			homeless = append(homeless, q)
		}
		shared = p.put(shared, slots)
		free = append(free, slots)
	}
	homeless = append(homeless, shared...)
	inFull := d.changes != nil && !d.asWas && (short || cut)
	if inFull {
		list := d.allFindings()
		list.untorn = true // whole beside a circuit, else on sheets of lists
		homeless = append(homeless, list)
	}
	for i, p := range d.pages { // room that other pages have left
		homeless = p.put(homeless, free[i])
		notes = p.put(notes, free[i])
	}
	if len(homeless) == 0 && !cut { // no sheet of lists for these alone
		for _, q := range notes {
			q.untorn = false
		}
		for i, p := range d.pages {
			notes = p.put(notes, free[i])
		}
	}
	for _, q := range homeless {
		q.untorn = q.untorn && !q.inFull
	}
	homeless = append(homeless, notes...)
	all := (cut || len(homeless) > 0) && len(d.flags.list) > 0 && d.changes == nil
	if all { // the sheet is there anyway
		homeless = append(homeless, d.allFindings())
	}
	d.extras = d.extraPages(homeless)
	if all || inFull {
		d.referToAll()
	}
	for _, slots := range free {
		align(slots)
	}
}

// referToAll says in the headings of the short lists where the long one is.
func (d *drawing) referToAll() {
	number := 0
	note := func(index int, panels []*panel) {
		for _, q := range panels {
			if q.inFull && number == 0 {
				number = d.number(index)
			}
		}
	}
	for i, p := range d.pages {
		note(i, p.panels)
	}
	for i, e := range d.extras {
		note(len(d.pages)+i, e.panels)
	}
	for _, p := range d.pages {
		for _, q := range p.panels {
			if q.inFull {
				continue
			}
			if q.findings && strings.HasSuffix(q.title, continued) {
				q.title = d.listName() + continued
			} else if q.findings {
				q.title = fmt.Sprintf("%s, in full on sheet %d", d.listName(), number)
			}
		}
	}
}

// legends are the lists that explain the drawing, the larger one first. The
// sheets of an earlier design follow others that have them.
func (d *drawing) legends() (list []*panel) {
	if d.asWas {
		return nil
	}
	if signs := d.signPanel(); signs != nil {
		list = append(list, signs)
	}
	if symbols := d.symbolPanel(); symbols != nil {
		list = append(list, symbols)
	}
	return append(list, d.notePanel())
}

// put places lists on the page and returns what found no room.
func (p *page) put(lists []*panel, slots []*slot) (left []*panel) {
	placed, left, _ := place(lists, slots)
	p.panels = append(p.panels, placed...)
	return left
}

// fitAll places the lists of the only page with the notes, which with less air or
// shorter lists may save a sheet; all tells that it does.
func (d *drawing) fitAll(p *page, with, notes []*panel, full bool) (slots []*slot, short bool, left []*panel, all bool) {
	if len(d.pages) > 1 {
		return nil, false, nil, false
	}
	slots, short, left = d.fitPanels(p, append(append([]*panel{}, with...), notes...), full)
	return slots, short, left, len(left) == 0 && !(short && d.changes != nil)
}

// fitPanels places a page's own lists: with what each finding says and much air
// if there is room without tearing one, else with the names of the rules alone.
// It tells whether they say less than there is to say.
func (d *drawing) fitPanels(p *page, with []*panel, allowFull bool) (slots []*slot, short bool, left []*panel) {
	for _, tearing := range []bool{false, true} {
		for _, full := range []bool{true, false} {
			if full && !allowFull {
				continue
			}
			own := append(d.ownPanels(p, full), with...)
			for air := mostAir; air >= 0; air-- {
				if !d.spread(p, air) {
					continue
				}
				var torn bool
				slots = d.slots(p)
				p.panels, left, torn = place(own, slots)
				if len(left) == 0 && (tearing || !torn) {
					return slots, !full, nil
				}
			}
		}
	}
	return slots, true, left
}

// ownPanels are the lists that belong on a page.
func (d *drawing) ownPanels(p *page, full bool) []*panel {
	own := d.findingPanel(p, full)
	if colours := d.colourPanel(p); len(colours.rows) > 0 {
		own = append(own, colours)
	}
	return own
}

// panels draws the lists of the page.
func (a *painter) panels() {
	for _, p := range a.page.panels {
		p.paint(a.sheet)
	}
}
