package arrange

import (
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/route"
)

// Page is one sheet of the circuit.
type Page struct {
	Index    int
	Cells    []*cell.Cell // as shared out, flags added by layout
	Columns  [][]*cell.Cell
	nets     []*route.Net
	ColumnX  []int // left edge of each column, in modules
	Leads    []int
	tracks   []int // between each column and the next
	Widths   []int
	Height   int  // rows used
	slot     int  // rows a way of a block has at least; 0 = what is in it
	Outlined bool // places are outlined
	Side     bool // a column of lists stands at the right
	Severed  map[*cell.Inlet]bool
	Lines    []route.Line
	OneLine  map[*cell.Inlet]bool // labels in one line though the page has two
	Cellar   [2]*cell.Row         // the source's lower row and the room kept beside it
	was      *Page                // what stood here before more was added; nil = nothing
	loose    bool                 // in the order in which that stood, but closer together
}

// Holds tells whether a cell stands on the page.
func (p *Page) Holds(c *cell.Cell) bool { return c.Sheet == p.Index+1 }

// Wires tells whether a cell and an inlet that it feeds stand in one tier of the page, so that a wire leads there.
func (p *Page) Wires(from *cell.Cell, in *cell.Inlet) bool {
	return from != nil && p.Holds(from) && p.Holds(in.Cell) && from.Tier == in.Cell.Tier && !p.Severed[in]
}

// Width is the modules from the first column to the last, of the widest tier.
func (p *Page) Width() (width int) {
	for _, t := range p.tiers() {
		last := t.end - 1
		width = max(width, p.ColumnX[last]+p.Widths[last])
	}
	return width
}

// tier is a stretch of columns that stand side by side.
type tier struct{ start, end int }

// tiers are the stretches of columns that stand one below the other.
func (p *Page) tiers() (list []tier) {
	for col, cells := range p.Columns {
		if n := len(list); n > 0 && cells[0].Tier == p.Columns[col-1][0].Tier {
			list[n-1].end = col + 1
		} else {
			list = append(list, tier{col, col + 1})
		}
	}
	return list
}

// TraceLines works out every line of a page from columns, rows and tracks.
func (p *Page) TraceLines() {
	var edges []int
	for col, x := range p.ColumnX {
		edges = append(edges, x+p.Widths[col])
	}
	p.Lines = route.Lines(p.nets, edges)
}
