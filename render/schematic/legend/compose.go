// Package legend writes the lists round the circuit: findings or changes, ground
// points, colours, symbols, notes; and finds room for them.
package legend

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
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
	Absent []*column.List   // explain the drawing and found no room: see Legend
	still  bool             // the circuit stays as it stands
	air    int              // the highest level of air that is tried
}

// Compose makes the lists of every page and puts what finds no room on
// sheets of its own. Pages get as much air as their lists allow.
func Compose(arr *arrange.Arrangement, s *crossref.Sheets) *Lists {
	l := &Lists{Labels: arr.Labels, arr: arr, sheets: s, Beside: make([][]*column.List, len(arr.Pages))}
	full := true
	l.air = arrange.MostAir
	l.compose(full)
	if with := len(l.Extras); with > 0 { // shorter lists may save sheets of lists
		if full = false; l.composed(full) >= with {
			full = true
			l.compose(full)
		}
	}
	for l.air > 0 && len(l.Absent) > 0 { // what explains the drawing is worth some air
		l.air--
		l.compose(full)
	}
	return l
}

// Again makes the lists anew without moving the circuit.
func (l *Lists) Again() {
	l.still = true
	l.compose(true)
}

// composed composes and counts the sheets of lists.
func (l *Lists) composed(full bool) int {
	l.compose(full)
	return len(l.Extras)
}

// compose places all lists; full allows what each change says. What explains the
// drawing stands where a sheet has room, and is worth no sheet of its own.
func (l *Lists) compose(full bool) {
	shared := slices.Concat(l.groundPanel(), l.connectorPanel(), l.colourPanel())
	notes := l.legends()
	var homeless []*column.List
	short := false
	var free [][]*column.Slot
	for _, p := range l.arr.Pages {
		var with []*column.List
		only := len(l.arr.Pages) == 1
		if only { // the only sheet carries everything, the notes too where they fit
			with, shared = shared, nil
		}
		slots, brief, left := l.fitPanels(p, slices.Concat(with, notes), only, full)
		if only && (len(left) > 0 || brief && l.Marks != nil) {
			slots, brief, left = l.fitPanels(p, with, only, full)
		} else if only {
			notes = nil
		}
		short = short || brief
		homeless = append(homeless, left...)
		shared = l.put(p.Index, shared, slots)
		free = append(free, slots)
	}
	needed := func(q *column.List) bool { return q.Findings }
	cut := slices.ContainsFunc(homeless, needed)
	inFull := l.Marks != nil && (short || cut)
	if inFull {
		homeless = slices.DeleteFunc(homeless, needed) // the list in full has them
		list := l.allChanges()
		list.Untorn = true // whole beside a circuit, else on sheets of lists
		homeless = append(homeless, list)
	}
	for _, q := range shared {
		q.Untorn = !q.Wired
	}
	homeless = append(homeless, shared...)
	for i := range l.arr.Pages { // room that other pages have left
		homeless = l.put(i, homeless, free[i])
		notes = l.put(i, notes, free[i])
	}
	rest := append(homeless, notes...)
	for _, q := range rest { // what need not stand anywhere stands whole or not at all
		q.Untorn = !q.Findings && !q.Wired
	}
	for i := range l.arr.Pages {
		rest = l.put(i, rest, free[i])
	}
	l.Extras, l.Absent = nil, nil
	if slices.ContainsFunc(rest, func(q *column.List) bool { return q.Findings || q.Wired }) {
		l.Extras = l.extraPages(rest)
	} else {
		l.Absent = rest
		l.tellOfAbsent(free)
	}
	if inFull {
		l.referToAll()
	}
	for _, slots := range free {
		column.Align(slots)
	}
}

// tellOfAbsent says on a sheet where that is which found no room.
func (l *Lists) tellOfAbsent(free [][]*column.Slot) {
	if len(l.Absent) == 0 || l.Marks != nil { // no sheet follows the changes
		return
	}
	var names []string
	for _, q := range l.Absent {
		name, _, _ := strings.Cut(q.Title, " (")
		names = append(names, strings.TrimSuffix(name, " the drawing"))
	}
	note := []*column.List{{Title: wording.Present(names, ", ") + ": cover or later sheet", Whole: true}}
	for i := range l.arr.Pages {
		note = l.put(i, note, free[i])
	}
}

// Legend is what explains the drawing and found no room on its sheets, on sheets of
// its own.
func (l *Lists) Legend() [][]*column.List { return l.extraPages(l.Absent) }

// Block is the same as low as it goes in columns of a width, from the corner of a sheet.
func (l *Lists) Block(widthMM float64) (placed []*column.List, heightMM float64) {
	return low(l.Absent, 0, 0, widthMM)
}

// GroundWires is the list of the grounds, where wires are drawn in it, as low as it goes in
// columns of a width below a place on a sheet.
func GroundWires(s *crossref.Sheets, at scene.Point, widthMM float64) []*column.List {
	l := &Lists{Labels: s.Labels, arr: s.Arrangement, sheets: s}
	list := l.groundPanel()
	if len(list) == 0 || !list[0].Wired {
		return nil
	}
	placed, _ := low(list, at.X, at.Y, widthMM)
	return placed
}

// low places lists in columns of a width, from a place on, as low as they go.
func low(lists []*column.List, left, top, widthMM float64) (placed []*column.List, heightMM float64) {
	if len(lists) == 0 {
		return nil, 0
	}
	for heightMM = column.Head; ; heightMM += 2 {
		var slots []*column.Slot
		for x := 0.0; x+column.Width-4 <= widthMM; x += column.Step {
			slots = append(slots, column.NewSlot(left+x, top, top+heightMM))
		}
		var own []*column.List
		for _, q := range lists {
			list := *q
			own = append(own, &list)
		}
		placed, over, torn := column.Place(own, slots)
		if len(over) == 0 && !torn || len(slots) == 0 {
			return placed, heightMM
		}
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
			q.Title = fmt.Sprintf("%s, in full on sheet %d", l.listName(), first+1)
		}
	}
}

// legends are the lists that explain the drawing, the larger one first.
func (l *Lists) legends() (list []*column.List) {
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
func (l *Lists) fitPanels(p *arrange.Page, with []*column.List, only, allowFull bool) (slots []*column.Slot, short bool, left []*column.List) {
	for _, tearing := range []bool{false, true} {
		for _, full := range []bool{true, false} {
			if full && !allowFull {
				continue
			}
			own := l.findingPanel(p, full)
			if only {
				own = append(own, with...)
			}
			for air := l.air; air >= 0; air-- {
				if !l.still && !l.arr.Spread(p, air) {
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
