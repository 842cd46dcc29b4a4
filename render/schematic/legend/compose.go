// Package legend writes the lists round the circuit: findings or changes, ground
// points, colours, symbols, notes; and finds room for them.
package legend

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/column"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/labels"
)

// Lists are all the lists of a set of sheets: beside the circuit of each page,
// and on sheets of their own.
type Lists struct {
	*labels.Labels
	arr    *arrange.Arrangement
	sheets *crossref.Sheets
	Beside [][]*column.List // by page
	Extras [][]*column.List // what found no room
}

// Compose makes the lists of every page and puts what finds no room on
// sheets of its own. Pages get as much air as their lists allow.
func Compose(arr *arrange.Arrangement, s *crossref.Sheets) *Lists {
	l := &Lists{Labels: arr.Labels, arr: arr, sheets: s, Beside: make([][]*column.List, len(arr.Pages))}
	l.compose(true)
	if with := len(l.Extras); with > 0 { // shorter lists may save sheets of lists
		if l.compose(false); len(l.Extras) >= with {
			l.compose(true)
		}
	}
	return l
}

// compose places all lists; full allows what each finding says.
func (l *Lists) compose(full bool) {
	shared := l.groundPanel()
	notes := l.legends()
	var homeless []*column.List
	cut, short := false, false
	var free [][]*column.Slot
	for _, p := range l.arr.Pages {
		var with, tried []*column.List
		only := len(l.arr.Pages) == 1
		if only { // the only sheet carries everything, the notes too where they fit
			with, shared = shared, nil
			tried = slices.Concat(with, notes)
		}
		slots, brief, left := l.fitPanels(p, tried, full)
		if only && (len(left) > 0 || brief && l.Signs.Changes != nil) {
			slots, brief, left = l.fitPanels(p, with, full)
		} else if only {
			notes = nil
		}
		short = short || brief
		for _, q := range left {
			if q.Findings {
				cut = true // the rest stands in the list of all findings
				continue
			}
			homeless = append(homeless, q)
		}
		shared = l.put(p.Index, shared, slots)
		free = append(free, slots)
	}
	homeless = append(homeless, shared...)
	inFull := l.Signs.Changes != nil && !l.Signs.AsWas && (short || cut)
	if inFull {
		list := l.allFindings()
		list.Untorn = true // whole beside a circuit, else on sheets of lists
		homeless = append(homeless, list)
	}
	for i := range l.arr.Pages { // room that other pages have left
		homeless = l.put(i, homeless, free[i])
		notes = l.put(i, notes, free[i])
	}
	if len(homeless) == 0 && !cut { // no sheet of lists for these alone
		for _, q := range notes {
			q.Untorn = false
		}
		for i := range l.arr.Pages {
			notes = l.put(i, notes, free[i])
		}
	}
	for _, q := range homeless {
		q.Untorn = q.Untorn && !q.InFull
	}
	homeless = append(homeless, notes...)
	all := (cut || len(homeless) > 0) && len(l.Signs.List) > 0 && l.Signs.Changes == nil
	if all { // the sheet is there anyway
		homeless = append(homeless, l.allFindings())
	}
	l.Extras = l.extraPages(homeless)
	if all || inFull {
		l.referToAll()
	}
	for _, slots := range free {
		column.Align(slots)
	}
}

// referToAll says in the headings of the short lists where the long one is.
func (l *Lists) referToAll() {
	first := slices.IndexFunc(slices.Concat(l.Beside, l.Extras), func(list []*column.List) bool {
		return slices.ContainsFunc(list, func(q *column.List) bool { return q.InFull })
	})
	for _, q := range slices.Concat(l.Beside...) {
		switch {
		case q.InFull || !q.Findings:
		case strings.HasSuffix(q.Title, column.Continued):
			q.Title = l.listName() + column.Continued
		default:
			q.Title = fmt.Sprintf("%s, in full on sheet %d", l.listName(), l.sheets.Number(first))
		}
	}
}

// legends are the lists that explain the drawing, the larger one first. The
// sheets of an earlier design follow others that have them.
func (l *Lists) legends() (list []*column.List) {
	if l.Signs.AsWas {
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
func (l *Lists) put(index int, list []*column.List, slots []*column.Slot) (left []*column.List) {
	placed, left, _ := column.Place(list, slots)
	l.Beside[index] = append(l.Beside[index], placed...)
	return left
}

// fitPanels places a page's own lists: with what each finding says and much air
// if there is room without tearing one, else with the names of the rules alone.
// It tells whether they say less than there is to say.
func (l *Lists) fitPanels(p *arrange.Page, with []*column.List, allowFull bool) (slots []*column.Slot, short bool, left []*column.List) {
	for _, tearing := range []bool{false, true} {
		for _, full := range []bool{true, false} {
			if full && !allowFull {
				continue
			}
			own := append(l.ownPanels(p, full), with...)
			for air := mostAir; air >= 0; air-- {
				if !l.arr.Spread(p, air) {
					continue
				}
				var torn bool
				slots = l.slots(p)
				l.Beside[p.Index], left, torn = column.Place(own, slots)
				if len(left) == 0 && (tearing || !torn) {
					return slots, !full, nil
				}
			}
		}
	}
	return slots, true, left
}

// ownPanels are the lists that belong on a page.
func (l *Lists) ownPanels(p *arrange.Page, full bool) []*column.List {
	own := l.findingPanel(p, full)
	if colours := l.colourPanel(p); len(colours.Rows) > 0 {
		own = append(own, colours)
	}
	return own
}

// mostAir is the most extra rows between cells.
const mostAir = 2
