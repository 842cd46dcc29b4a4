package cell

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// The source stands in two parts: its post, whose row is the first row of the
// page, and below everything the battery feeds in the next column its cellar: a
// positive trunk with the vehicle's loads and the generator as branches, the
// battery at its foot, and the negative trunk. Measures in modules.
const (
	SourceTrunk  = 2
	SourceBranch = 8  // width of a branch's symbol
	SourceNeg    = 13 // the negative trunk
	SourcePost   = 4  // width of the cell in its own column
	SourceCellar = 15 // width of the cellar, which reaches into the next column
	sourceStep   = 6
	sourceMarked = 9 // the step below a branch with a change
)

// shapeSource measures the battery with what stands beside it.
func (b *builder) shapeSource(c *Cell) {
	_, _, battery := SourceRows(b.Labels)
	c.Body = SourcePost
	c.Caption = b.CaptionOf(c.Part, (SourceNeg-SourceTrunk-2.5-float64(b.Signs.LeadGap(c.Part)))*symbol.M, b.Plain(3, 2))
	c.Rows[0].Top, c.Rows[0].Bottom = 1, 0.8
	c.Rows = append(c.Rows, &Row{Cell: c, Index: 1, Top: 1.75, Bottom: float64(battery+5) + 1.75 + 0.2})
	b.addOutlets(c, SourceTrunk)
}

// SourceRows gives the rows of the branches and of the battery's plus pin,
// counted from the cellar's row; a branch that is not there has row -1.
func SourceRows(l *labels.Labels) (vehicle, generator, battery int) {
	g, v := parts.SourceParts(l.Circuit)
	vehicle, generator = -1, -1
	next := 0
	step := func(p *circuit.Part) int {
		if l.Signs.Changes != nil && l.Signs.OfPart(p) > 0 {
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
