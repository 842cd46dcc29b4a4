package schematic

import (
	"fmt"
	"fusewright/harness/network/circuit"
	"fusewright/render/frame"
	"fusewright/render/symbol"
	"slices"
	"strings"
)

// lists are all the lists of a set of sheets: beside the circuit of each page,
// and on sheets of their own.
type lists struct {
	*labels
	arr    *arrangement
	sheets *sheets
	beside [][]*panel // by page
	extras [][]*panel // what found no room
}

// composeLists makes the lists of every page and puts what finds no room on
// sheets of its own. Pages get as much air as their lists allow.
func composeLists(arr *arrangement, s *sheets) *lists {
	l := &lists{labels: arr.labels, arr: arr, sheets: s, beside: make([][]*panel, len(arr.pages))}
	l.compose(true)
	if with := len(l.extras); with > 0 { // shorter lists may save sheets of lists
		if l.compose(false); len(l.extras) >= with {
			l.compose(true)
		}
	}
	return l
}

// compose places all lists; full allows what each finding says.
func (l *lists) compose(full bool) {
	shared := l.groundPanel()
	notes := l.legends()
	var homeless []*panel
	cut, short := false, false
	var free [][]*slot
	for _, p := range l.arr.pages {
		with := []*panel(nil)
		if len(l.arr.pages) == 1 { // the only sheet carries everything
			with, shared = shared, nil
		}
		slots, brief, left, all := l.fitAll(p, with, notes, full)
		if all {
			notes = nil
		} else {
			slots, brief, left = l.fitPanels(p, with, full)
		}
		short = short || brief
		for _, q := range left {
			if q.findings {
				cut = true // the rest stands in the list of all findings
				continue
			}
			homeless = append(homeless, q)
		}
		shared = l.put(p.index, shared, slots)
		free = append(free, slots)
	}
	homeless = append(homeless, shared...)
	inFull := l.signs.changes != nil && !l.signs.asWas && (short || cut)
	if inFull {
		list := l.allFindings()
		list.untorn = true // whole beside a circuit, else on sheets of lists
		homeless = append(homeless, list)
	}
	for i := range l.arr.pages { // room that other pages have left
		homeless = l.put(i, homeless, free[i])
		notes = l.put(i, notes, free[i])
	}
	if len(homeless) == 0 && !cut { // no sheet of lists for these alone
		for _, q := range notes {
			q.untorn = false
		}
		for i := range l.arr.pages {
			notes = l.put(i, notes, free[i])
		}
	}
	for _, q := range homeless {
		q.untorn = q.untorn && !q.inFull
	}
	homeless = append(homeless, notes...)
	all := (cut || len(homeless) > 0) && len(l.signs.list) > 0 && l.signs.changes == nil
	if all { // the sheet is there anyway
		homeless = append(homeless, l.allFindings())
	}
	l.extras = l.extraPages(homeless)
	if all || inFull {
		l.referToAll()
	}
	for _, slots := range free {
		align(slots)
	}
}

// referToAll says in the headings of the short lists where the long one is.
func (l *lists) referToAll() {
	number := 0
	note := func(index int, panels []*panel) {
		for _, q := range panels {
			if q.inFull && number == 0 {
				number = l.sheets.number(index)
			}
		}
	}
	for i, list := range slices.Concat(l.beside, l.extras) {
		note(i, list)
	}
	for _, list := range l.beside {
		for _, q := range list {
			if q.inFull {
				continue
			}
			if q.findings && strings.HasSuffix(q.title, continued) {
				q.title = l.listName() + continued
			} else if q.findings {
				q.title = fmt.Sprintf("%s, in full on sheet %d", l.listName(), number)
			}
		}
	}
}

// legends are the lists that explain the drawing, the larger one first. The
// sheets of an earlier design follow others that have them.
func (l *lists) legends() (list []*panel) {
	if l.signs.asWas {
		return nil
	}
	if signs := l.signPanel(); signs != nil {
		list = append(list, signs)
	}
	if symbols := l.symbolPanel(); symbols != nil {
		list = append(list, symbols)
	}
	return append(list, l.notePanel())
}

// put places lists on the page and returns what found no room.
func (l *lists) put(index int, list []*panel, slots []*slot) (left []*panel) {
	placed, left, _ := place(list, slots)
	l.beside[index] = append(l.beside[index], placed...)
	return left
}

// fitAll places the lists of the only page with the notes, which with less air or
// shorter lists may save a sheet; all tells that it does.
func (l *lists) fitAll(p *page, with, notes []*panel, full bool) (slots []*slot, short bool, left []*panel, all bool) {
	if len(l.arr.pages) > 1 {
		return nil, false, nil, false
	}
	slots, short, left = l.fitPanels(p, append(append([]*panel{}, with...), notes...), full)
	return slots, short, left, len(left) == 0 && !(short && l.signs.changes != nil)
}

// fitPanels places a page's own lists: with what each finding says and much air
// if there is room without tearing one, else with the names of the rules alone.
// It tells whether they say less than there is to say.
func (l *lists) fitPanels(p *page, with []*panel, allowFull bool) (slots []*slot, short bool, left []*panel) {
	for _, tearing := range []bool{false, true} {
		for _, full := range []bool{true, false} {
			if full && !allowFull {
				continue
			}
			own := append(l.ownPanels(p, full), with...)
			for air := mostAir; air >= 0; air-- {
				if !l.arr.spread(p, air) {
					continue
				}
				var torn bool
				slots = l.slots(p)
				l.beside[p.index], left, torn = place(own, slots)
				if len(left) == 0 && (tearing || !torn) {
					return slots, !full, nil
				}
			}
		}
	}
	return slots, true, left
}

// ownPanels are the lists that belong on a page.
func (l *lists) ownPanels(p *page, full bool) []*panel {
	own := l.findingPanel(p, full)
	if colours := l.colourPanel(p); len(colours.rows) > 0 {
		own = append(own, colours)
	}
	return own
}

// mostAir is the most extra rows between cells.
const mostAir = 2

// slots are the free columns of a page: at the right of the circuit when it is
// narrow, under it, and beside the title block.
func (l *lists) slots(p *page) []*slot {
	var list []*slot
	field, in := l.arr.paper.field(), l.arr.paper.Inner()
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
		list = append(list, newSlot(x, l.bottomOf(p, x, x+panelW), bottom))
	}
	return list
}

// bottomOf is the lower edge, in mm, of whatever the circuit has between two
// upright lines.
func (l *lists) bottomOf(p *page, left, right float64) float64 {
	field := l.arr.paper.field()
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

// extraPages fills sheets with lists, column by column.
func (l *lists) extraPages(rest []*panel) (pages [][]*panel) {
	for len(rest) > 0 {
		placed, left, _ := place(rest, l.freshSlots())
		if len(placed) == 0 { // one list taller than a sheet: it may run on
			put(rest[0], []*slot{newSlot(l.arr.paper.Inner().X+4, l.arr.paper.Inner().Y+4, 0)}, l.arr.paper.Inner().Y+4, rest[0].height())
			placed, left = rest[:1], rest[1:]
		}
		pages = append(pages, placed)
		rest = left
	}
	return pages
}

// freshSlots are the columns of an empty sheet.
func (l *lists) freshSlots() []*slot {
	var list []*slot
	in := l.arr.paper.Inner()
	for x := in.X + 4; x+panelW-4 < in.Right(); x += panelStep {
		bottom := in.Bottom() - 12
		if x+panelW > in.Right()-frame.TitleW {
			bottom = in.Bottom() - frame.TitleH - 2
		}
		list = append(list, newSlot(x, in.Y+5, bottom))
	}
	return list
}
