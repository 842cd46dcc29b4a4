// Package arrange places cells: shared out to pages by what feeds them, in columns
// by rank, in rows on the grid, with as much air as a page has room for.
package arrange

import (
	"cmp"
	"slices"

	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/route"
	"fusewright/render/symbol"
)

// Arrangement is the circuit shared out to pages, each in columns and rows.
type Arrangement struct {
	*labels.Labels
	*cell.Cells
	Paper         frame.Paper
	Field         scene.Rect // where a circuit may stand, in mm
	Rows, Columns int        // of the grid in it
	Pages         []*Page
	limit         int  // rows of a page that are filled; 0 = all
	splits        bool // blocks are begun where most of a page is free, though they would fit another whole

	// Twin is another way of drawing the circuit, at the same places; nil = none.
	Twin *labels.Labels
}

// Circuit shares a circuit out to pages of a paper and lays them out, with the room that
// a twin takes where that needs no more pages; nil is none.
func Circuit(l *labels.Labels, paper frame.Paper, twin *labels.Labels) (*Arrangement, error) {
	field := paper.Grid(symbol.M)
	a := &Arrangement{Labels: l, Paper: paper, Field: field, Rows: int(field.H / symbol.M), Columns: int(field.W / symbol.M)}
	if twin == nil {
		return a, a.layOut()
	}
	return a, a.layOutBoth(twin)
}

// Narrow lays a circuit out on one page of a roll, with what is written at wires in two lines.
func Narrow(l *labels.Labels, roll frame.Paper) (*Arrangement, error) {
	field := roll.Grid(symbol.M)
	a := &Arrangement{Labels: l, Paper: roll, Field: field, Rows: int(field.H / symbol.M), Columns: int(field.W / symbol.M)}
	return a, a.layOutWith(true)
}

// HasSlots tells of room for loads that are not there.
func (a *Arrangement) HasSlots() bool {
	return slices.ContainsFunc(a.Cells.List, func(c *cell.Cell) bool { return c.Empty })
}

// HalfEmpty tells of a page whose slots take more than half of its rows, or that holds
// nothing else.
func (a *Arrangement) HalfEmpty() bool {
	return slices.ContainsFunc(a.Pages, func(p *Page) bool {
		rows, parts := 0, 0
		for _, c := range p.Cells {
			switch {
			case c.Kind != cell.Part:
			case c.Empty:
				rows += rowHeight(c.Rows[0])
			default:
				parts++
			}
		}
		return parts == 0 || rows > a.Rows/2
	})
}

// layOutBoth lays out with the room of a twin, or without where that is better: the
// estimates say so, or the pages come out more than estimated and more than without.
func (a *Arrangement) layOutBoth(twin *labels.Labels) error {
	pages, weight := a.estimate(false)
	if p, w := a.estimate(true); w < weight {
		pages, weight = p, w
	}
	a.Twin = twin
	if _, both := a.estimate(true); both <= weight {
		if err := a.layOut(); err != nil || len(a.Pages) <= pages {
			return err
		}
	}
	both := a.laid()
	a.Twin, a.limit = nil, 0
	if err := a.layOut(); err != nil || len(both.pages) == 0 || len(a.Pages) < len(both.pages) {
		return err
	}
	a.Twin = twin
	a.back(both)
	return nil
}

// Dress turns an arrangement into that of its twin or one like it, at the same places,
// and tells whether it has the room for it.
func (a *Arrangement) Dress(l *labels.Labels) bool {
	l.Stacked, l.MainsBelow, l.Slots = a.Stacked, a.MainsBelow, a.Slots
	if a.Twin == nil || !a.Cells.Dress(cell.Build(l, a.Rows)) {
		return false
	}
	*a.Labels = *l
	return true
}

// FlagBody is the width of a cell with a flag and its words, in modules.
const FlagBody = 12

// layOut lays the circuit out and shares it out evenly.
func (a *Arrangement) layOut() error {
	a.splits = false
	if err := a.layOutMains(); err != nil {
		return err
	}
	if a.halfEmpty() > 0 && len(a.Pages) <= trialPages {
		weight, whole := a.weight(), a.laid()
		a.splits = true
		if err := a.layOutMains(); err != nil {
			return err
		}
		if a.weight() >= weight {
			a.splits = false
			a.back(whole)
		}
	}
	return a.even()
}

// even fills all pages alike where the emptiest would stand half empty, if that needs no
// more sheets and few more flags.
func (a *Arrangement) even() error {
	n, weight, lowest, sum := len(a.Pages), a.weight(), a.lowest(), 0
	if n < 2 || n > trialPages || lowest > a.Rows/2 {
		return nil
	}
	for _, p := range a.Pages {
		sum += p.Height
	}
	full := a.laid()
	for _, more := range []int{0, a.Rows / 8} {
		a.limit = sum/n + more
		if p, _ := a.estimate(a.Stacked); p > n {
			continue
		}
		if err := a.layOutWith(a.Stacked); err != nil {
			return err
		}
		if len(a.Pages) == n && a.weight() <= weight+effort/2 && a.lowest() > lowest {
			return nil
		}
	}
	a.limit = 0
	a.back(full)
	return nil
}

// laying is the circuit laid out in one way, to come back to.
type laying struct {
	cells               *cell.Cells
	pages               []*Page
	stacked, mainsBelow bool
}

func (a *Arrangement) laid() laying { return laying{a.Cells, a.Pages, a.Stacked, a.MainsBelow} }

func (a *Arrangement) back(to laying) {
	a.MainsBelow = to.mainsBelow
	a.manner(to.stacked)
	a.Cells, a.Pages = to.cells, to.pages
}

// manner sets the way of writing wire labels, that of the twin too.
func (a *Arrangement) manner(stacked bool) {
	a.Stacked = stacked
	if a.Twin != nil {
		a.Twin.Stacked, a.Twin.MainsBelow, a.Twin.Slots = stacked, a.MainsBelow, a.Slots
	}
}

// lowest is the rows of the emptiest page.
func (a *Arrangement) lowest() int {
	low := a.Rows
	for _, p := range a.Pages {
		low = min(low, p.Height)
	}
	return low
}

// layOutMains lays the circuit out with the ground bars beside the battery or, where
// that needs fewer sheets and flags, below it.
func (a *Arrangement) layOutMains() error {
	a.MainsBelow = false
	if err := a.layOutLabels(); err != nil || a.weight() == effort || len(a.Pages) > trialPages || !a.hasMains() {
		return err
	}
	weight, beside := a.weight(), a.laid()
	a.MainsBelow = true // with labels in two lines: both save width
	if err := a.layOutWith(true); err != nil || a.weight() < weight {
		return err
	}
	a.back(beside)
	return nil
}

// hasMains tells whether ground bars stand with the battery.
func (a *Arrangement) hasMains() bool {
	return slices.ContainsFunc(a.Cells.List, func(c *cell.Cell) bool { return len(c.MainRows) > 0 })
}

// weight is pages and flags weighed together, with pages before the last that stand half
// empty.
func (a *Arrangement) weight() int {
	return effort*len(a.Pages) + a.flagCount() + (effort-1)*a.halfEmpty()
}

// halfEmpty counts the pages before the last that stand half empty.
func (a *Arrangement) halfEmpty() (n int) {
	for _, p := range a.Pages[:max(len(a.Pages)-1, 0)] {
		if p.Height <= a.Rows/2 {
			n++
		}
	}
	return n
}

// layOutLabels shares the circuit out to pages and lays each out, with wire labels in
// one line or in two, whichever needs fewer sheets and flags.
func (a *Arrangement) layOutLabels() error {
	if a.Study != nil || a.Twin != nil { // its labels always take two lines
		return a.layOutWith(true)
	}
	pages, single := a.estimate(false)
	if pages > trialPages {
		_, double := a.estimate(true)
		return a.layOutWith(double < single)
	}
	if err := a.layOutWith(false); err != nil || len(a.Pages) == 1 && a.flagCount() == 0 {
		return err
	}
	weight, one := a.weight(), a.laid()
	if err := a.layOutWith(true); err != nil || a.weight() < weight {
		return err
	}
	a.back(one)
	return nil
}

// trialPages is how many pages are laid out both ways to see which is better;
// beyond that an estimate decides. A reader turns a page as readily as he
// follows effort flags.
const (
	trialPages = 6
	effort     = 4
)

// flagCount is how many terminals go on elsewhere.
func (a *Arrangement) flagCount() (n int) {
	for _, p := range a.Pages {
		for _, c := range p.Cells {
			if c.Kind == cell.Out {
				n++
			}
		}
	}
	return n
}

// layOutWith lays all pages out with wire labels in two lines or one.
func (a *Arrangement) layOutWith(stacked bool) error {
	a.reset(stacked)
	queue := a.start()
	for {
		for len(queue) > 0 {
			p, rest, err := a.nextPage(queue)
			if err != nil {
				return err
			}
			a.Pages = append(a.Pages, p)
			queue = rest
		}
		// Parts that feed each other in a ring hang on no root.
		for _, c := range a.Cells.List {
			if c.Sheet == 0 {
				queue = append(queue, feed{root: c})
				break
			}
		}
		if len(queue) == 0 {
			break
		}
	}
	return nil
}

// reset builds the cells anew for a way of writing wire labels.
func (a *Arrangement) reset(stacked bool) {
	a.manner(stacked)
	a.Cells, a.Pages = cell.Build(a.Labels, a.Rows), nil
	if a.Twin != nil {
		a.Cells.Widen(cell.Build(a.Twin, a.Rows))
	}
}

// estimate shares the circuit out without laying it out: the number of pages,
// and pages and flags weighed together.
func (a *Arrangement) estimate(stacked bool) (pages, weight int) {
	a.reset(stacked)
	queue := a.start()
	for len(queue) > 0 {
		before := len(queue)
		_, queue = a.fill(queue, pages, cmp.Or(a.limit, a.Rows), a.Columns)
		pages++
		weight += effort + max(len(queue)-before, 0)
	}
	return pages, weight
}

// nextPage fills and lays out one page; when it comes out too large it is
// filled again with less.
func (a *Arrangement) nextPage(queue []feed) (*Page, []feed, error) {
	rows, width := cmp.Or(a.limit, a.Rows), a.Columns
	for try := 0; ; try++ {
		p, rest := a.fill(append([]feed{}, queue...), len(a.Pages), rows, width)
		if err := a.layPage(p); err != nil {
			return nil, nil, err
		}
		high, wide := p.Height-a.Rows, p.Width()-a.Columns
		if high <= 0 && wide <= 0 || try == 24 {
			return p, rest, nil
		}
		for _, c := range p.Cells {
			if c.Kind == cell.Part {
				c.Sheet = 0
			}
		}
		if high > 0 {
			rows -= max(2, min(high, rows/3))
		}
		if wide > 0 {
			width -= max(wide, 3)
		}
	}
}

// layPage gives the cells of a page their columns, order, rows and tracks. A
// wire that cannot be routed without running over another is taken out and
// replaced by two flags, and the page laid out again.
func (a *Arrangement) layPage(p *Page) error {
	parts := p.Cells
	for {
		p.Cells = append([]*cell.Cell{}, parts...)
		a.rankCells(p)
		a.addFlags(p)
		p.Cellar = [2]*cell.Row{}
		a.addCellar(p)
		a.settle(p)
		var passing []*cell.Cell
		p.nets, passing = route.Nets(p.Cells, func(in *cell.Inlet) bool { return a.ComesByFlag(p, in) })
		p.Cells = append(p.Cells, passing...)
		if err := orderColumns(p); err != nil {
			return err
		}
		p.keepOrder()
		p.solveRows(0)
		stuck := p.routeAll()
		if stuck == nil {
			return nil
		}
		p.Severed[stuck] = true
	}
}
