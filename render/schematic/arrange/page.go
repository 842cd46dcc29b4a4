package arrange

import (
	"fmt"
	"math"

	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/route"
	"fusewright/render/symbol"
)

// Page is one sheet of the circuit.
type Page struct {
	Index    int
	Cells    []*cell.Cell // as shared out, flags added by layout
	Columns  [][]*cell.Cell
	nets     []*route.Net
	ColumnX  []int // left edge of each column, in modules
	Leads    []int
	Widths   []int
	Height   int  // rows used
	Outlined bool // places are outlined
	Side     bool // a column of lists stands at the right
	Severed  map[*cell.Inlet]bool
	Lines    []route.Line
	OneLine  map[*cell.Inlet]bool // labels in one line though the page has two
	Cellar   [2]*cell.Row         // the source's lower row and the room kept beside it
}

// Holds tells whether a cell stands on the page.
func (p *Page) Holds(c *cell.Cell) bool { return c.Sheet == p.Index+1 }

// Width is the modules from the first column to the last.
func (p *Page) Width() int {
	last := len(p.ColumnX) - 1
	return p.ColumnX[last] + p.Widths[last]
}

// TraceLines works out every line of a page from columns, rows and tracks.
func (p *Page) TraceLines() {
	var edges []int
	for col, x := range p.ColumnX {
		edges = append(edges, x+p.Widths[col])
	}
	p.Lines = route.Lines(p.nets, edges)
}

// paper is a sheet in its frame, on the grid of the symbols.
type paper struct{ frame.Paper }

// PaperOf finds a size by name; "" is A4.
func PaperOf(name string) (paper, error) {
	p, err := frame.PaperOf(name)
	if err != nil {
		return paper{}, fmt.Errorf("schematic: %w", err)
	}
	return paper{p}, nil
}

// titleGap is the space over the title block.
const titleGap = 1.0

// Field is where a circuit may stand: inside the frame, above the title strip,
// with its corner on the grid.
func (p paper) Field() scene.Rect {
	in := p.Inner()
	x := math.Ceil((in.X+2)/symbol.M) * symbol.M
	y := math.Ceil((in.Y+1)/symbol.M) * symbol.M
	return scene.Rect{X: x, Y: y, W: in.Right() - 2 - x, H: in.Bottom() - frame.TitleH - titleGap - y}
}

// ColumnsM and rowsM are the field in grid modules.
func (p paper) ColumnsM() int { return int(p.Field().W / symbol.M) }
func (p paper) RowsM() int    { return int(p.Field().H / symbol.M) }
