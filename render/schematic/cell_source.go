package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// The source stands in two parts: its post, whose row is the first row of the
// page, and below everything the battery feeds in the next column its cellar: a
// positive trunk with the vehicle's loads and the generator as branches, the
// battery at its foot, and the negative trunk. Measures in modules.
const (
	sourceTrunk  = 2
	sourceBranch = 8  // width of a branch's symbol
	sourceNeg    = 13 // the negative trunk
	sourcePost   = 4  // width of the cell in its own column
	sourceCellar = 15 // width of the cellar, which reaches into the next column
	sourceStep   = 6
	sourceMarked = 9 // the step below a branch with a change
)

// shapeSource measures the battery with what stands beside it.
func (b *builder) shapeSource(c *cell) {
	_, _, battery := sourceRows(b.labels)
	c.body = sourcePost
	c.caption = b.captionOf(c.part, (sourceNeg-sourceTrunk-2.5-float64(b.signs.leadGap(c.part)))*symbol.M, b.plain(3, 2))
	c.rows[0].top, c.rows[0].bottom = 1, 0.8
	c.rows = append(c.rows, &row{cell: c, index: 1, top: 1.75, bottom: float64(battery+5) + 1.75 + 0.2})
	b.addOutlets(c, sourceTrunk)
}

// sourceRows gives the rows of the branches and of the battery's plus pin,
// counted from the cellar's row; a branch that is not there has row -1.
func sourceRows(l *labels) (vehicle, generator, battery int) {
	g, v := sourceParts(l.circuit)
	vehicle, generator = -1, -1
	next := 0
	step := func(p *circuit.Part) int {
		if l.signs.changes != nil && l.signs.ofPart(p) > 0 {
			return sourceMarked
		}
		return sourceStep
	}
	if v != nil {
		vehicle, next = next, next+step(v)
	}
	if g != nil {
		generator, next = next, next+step(g)
	}
	return vehicle, generator, max(next-1, 0)
}
