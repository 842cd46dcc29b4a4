package schematic

// page is one sheet of the circuit.
type page struct {
	index    int
	cells    []*cell // as shared out, flags added by layout
	columns  [][]*cell
	nets     []*net
	columnX  []int // left edge of each column, in modules
	leads    []int
	widths   []int
	height   int  // rows used
	outlined bool // places are outlined
	side     bool // a column of lists stands at the right
	severed  map[*inlet]bool
	lines    []line
	oneLine  map[*inlet]bool // labels in one line though the page has two
	cellar   [2]*row         // the source's lower row and the room kept beside it
}

// holds tells whether a cell stands on the page.
func (p *page) holds(c *cell) bool { return c.sheet == p.index+1 }

// width is the modules from the first column to the last.
func (p *page) width() int {
	last := len(p.columnX) - 1
	return p.columnX[last] + p.widths[last]
}

// traceLines works out every line of a page from columns, rows and tracks.
func (p *page) traceLines() {
	var edges []int
	for col, x := range p.columnX {
		edges = append(edges, x+p.widths[col])
	}
	p.lines = linesOf(p.nets, edges)
}
