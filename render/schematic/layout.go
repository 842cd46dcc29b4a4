package schematic

// arrangement is the circuit shared out to pages, each in columns and rows.
type arrangement struct {
	*labels
	*cells
	paper paper
	pages []*page
}

// arrange shares a circuit out to pages of a paper and lays them out.
func arrange(l *labels, paper paper) (*arrangement, error) {
	a := &arrangement{labels: l, paper: paper}
	return a, a.layOut()
}

// flagBody is the width of a cell with a flag and its words, in modules.
const flagBody = 12

// layOut shares the circuit out to pages and lays each out, with wire labels in
// one line or in two, whichever needs fewer sheets and flags.
func (a *arrangement) layOut() error {
	if a.study != nil { // its labels always take two lines
		return a.layOutWith(true)
	}
	pages, one := a.estimate(false)
	if pages > trialPages {
		_, two := a.estimate(true)
		return a.layOutWith(two < one)
	}
	if err := a.layOutWith(false); err != nil || len(a.pages) == 1 && a.flagCount() == 0 {
		return err
	}
	one = effort*len(a.pages) + a.flagCount()
	if err := a.layOutWith(true); err != nil {
		return err
	}
	if effort*len(a.pages)+a.flagCount() < one {
		return nil
	}
	return a.layOutWith(false)
}

// trialPages is how many pages are laid out both ways to see which is better;
// beyond that an estimate decides. A reader turns a page as readily as he
// follows effort flags.
const (
	trialPages = 6
	effort     = 4
)

// flagCount is how many terminals go on elsewhere.
func (a *arrangement) flagCount() (n int) {
	for _, p := range a.pages {
		for _, c := range p.cells {
			if c.kind == outCell {
				n++
			}
		}
	}
	return n
}

// layOutWith lays all pages out with wire labels in two lines or one.
func (a *arrangement) layOutWith(stacked bool) error {
	a.reset(stacked)
	queue := a.start()
	for {
		for len(queue) > 0 {
			p, rest, err := a.nextPage(queue)
			if err != nil {
				return err
			}
			a.pages = append(a.pages, p)
			queue = rest
		}
		// Parts that feed each other in a ring hang on no root.
		for _, c := range a.cells.list {
			if c.sheet == 0 {
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
func (a *arrangement) reset(stacked bool) {
	a.stacked, a.pages = stacked, nil
	a.cells = buildCells(a.labels, a.paper.rowsM())
}

// estimate shares the circuit out without laying it out: the number of pages,
// and pages and flags weighed together.
func (a *arrangement) estimate(stacked bool) (pages, weight int) {
	a.reset(stacked)
	queue := a.start()
	for len(queue) > 0 {
		before := len(queue)
		_, queue = a.fill(queue, pages, a.paper.rowsM(), a.paper.columnsM())
		pages++
		weight += effort + max(len(queue)-before, 0)
	}
	return pages, weight
}

// nextPage fills and lays out one page; when it comes out too large it is
// filled again with less.
func (a *arrangement) nextPage(queue []feed) (*page, []feed, error) {
	rows, width := a.paper.rowsM(), a.paper.columnsM()
	for try := 0; ; try++ {
		p, rest := a.fill(append([]feed{}, queue...), len(a.pages), rows, width)
		if err := a.layPage(p); err != nil {
			return nil, nil, err
		}
		high, wide := p.height-a.paper.rowsM(), p.width()-a.paper.columnsM()
		if high <= 0 && wide <= 0 || try == 24 {
			return p, rest, nil
		}
		for _, c := range p.cells {
			if c.kind == partCell {
				c.sheet = 0
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
func (a *arrangement) layPage(p *page) error {
	parts := p.cells
	for {
		p.cells = append([]*cell{}, parts...)
		a.rankCells(p)
		a.addFlags(p)
		p.cellar = [2]*row{}
		a.addCellar(p)
		a.settle(p)
		var passing []*cell
		p.nets, passing = netsOf(p.cells, func(in *inlet) bool { return a.comesByFlag(p, in) })
		p.cells = append(p.cells, passing...)
		if err := orderColumns(p); err != nil {
			return err
		}
		p.solveRows(0)
		stuck := p.routeAll()
		if stuck == nil {
			return nil
		}
		p.severed[stuck] = true
	}
}
