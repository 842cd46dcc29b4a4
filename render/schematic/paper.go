package schematic

import (
	"fmt"
	"math"

	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// paper is a sheet in its frame, on the grid of the symbols.
type paper struct{ frame.Paper }

// paperOf finds a size by name; "" is A4.
func paperOf(name string) (paper, error) {
	p, err := frame.PaperOf(name)
	if err != nil {
		return paper{}, fmt.Errorf("schematic: %w", err)
	}
	return paper{p}, nil
}

// titleGap is the space over the title block.
const titleGap = 1.0

// field is where a circuit may stand: inside the frame, above the title strip,
// with its corner on the grid.
func (p paper) field() scene.Rect {
	in := p.Inner()
	x := math.Ceil((in.X+2)/symbol.M) * symbol.M
	y := math.Ceil((in.Y+1)/symbol.M) * symbol.M
	return scene.Rect{X: x, Y: y, W: in.Right() - 2 - x, H: in.Bottom() - frame.TitleH - titleGap - y}
}

// columnsM and rowsM are the field in grid modules.
func (p paper) columnsM() int { return int(p.field().W / symbol.M) }
func (p paper) rowsM() int    { return int(p.field().H / symbol.M) }
