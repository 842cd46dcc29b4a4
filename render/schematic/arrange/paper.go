package arrange

import (
	"fmt"
	"math"

	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

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
