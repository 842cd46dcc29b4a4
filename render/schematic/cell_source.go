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

// sourceParts finds the parts that stand with the battery.
func (d *drawing) sourceParts() (generator, vehicle *circuit.Part) {
	for _, p := range d.circuit.Parts {
		switch p.Kind {
		case circuit.Generator:
			generator = p
		case circuit.VehicleLoads:
			vehicle = p
		}
	}
	return generator, vehicle
}

// sourceRows gives the rows of the branches and of the battery's plus pin,
// counted from the cellar's row; a branch that is not there has row -1.
func (d *drawing) sourceRows() (vehicle, generator, battery int) {
	g, v := d.sourceParts()
	vehicle, generator = -1, -1
	next := 0
	step := func(p *circuit.Part) int {
		if d.changes != nil && d.flags.ofPart(p) > 0 {
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

// shapeSource measures the battery with what stands beside it.
func (d *drawing) shapeSource(c *cell) {
	_, _, battery := d.sourceRows()
	c.body = sourcePost
	c.caption = d.captionOf(c.part, (sourceNeg-sourceTrunk-2.5-float64(d.flags.leadGap(c.part)))*symbol.M, d.plain(3, 2))
	c.rows[0].top, c.rows[0].bottom = 1, 0.8
	c.rows = append(c.rows, &row{cell: c, index: 1, top: 1.75, bottom: float64(battery+5) + 1.75 + 0.2})
	d.addOutlets(c, sourceTrunk)
}

// addCellar keeps the room of the cellar free in the column next to the source.
func (d *drawing) addCellar(p *page) {
	for _, c := range p.cells {
		if c.kind == partCell && c.part.Kind == circuit.Battery {
			low := c.rows[1]
			blank := &cell{kind: blankCell, part: c.part, page: p, col: c.col + 1, body: sourceCellar - sourcePost}
			blank.rows = []*row{{cell: blank, top: low.top, bottom: low.bottom}}
			p.cells = append(p.cells, blank)
			p.cellar = [2]*row{low, blank.rows[0]}
			return
		}
	}
}

// keepCellar orders the columns of the source and next to it: what the battery
// feeds stands above the cellar, everything else below it.
func (p *page) keepCellar() {
	if p.cellar[0] == nil {
		return
	}
	source := p.cellar[0].cell
	fed := map[*cell]bool{}
	for _, n := range p.nets {
		if n.from.cell == source {
			for _, to := range n.hops[0].to {
				fed[to.cell] = true
			}
		}
	}
	rank := func(c *cell) int {
		switch {
		case c == source || fed[c]:
			return 0
		case c.kind == blankCell:
			return 1
		}
		return 2
	}
	for _, col := range []int{source.col, source.col + 1} {
		var sorted []*cell
		for r := range 3 {
			for _, c := range p.columns[col] {
				if rank(c) == r {
					sorted = append(sorted, c)
				}
			}
		}
		p.columns[col] = sorted
	}
}

// plain is how many lines of plain words a caption of a fixed height has: a
// study sheet needs some for solved values.
func (d *drawing) plain(lines, solved int) int {
	if d.study != nil {
		return lines - solved
	}
	return lines
}

// sourceCaptions are the texts at the vehicle's loads and the generator.
func (d *drawing) sourceCaptions() (vehicle, generator caption) {
	g, v := d.sourceParts()
	const width = (sourceNeg - sourceTrunk - 0.7) * symbol.M
	if v != nil {
		words, _ := d.wordsOf(v)
		vehicle = d.head(v).fit(words, "", width, 1).solved(width, d.study.part(v)...)
	}
	if g != nil {
		words, details := d.wordsOf(g)
		if d.study != nil { // the second line is the solved one
			details = ""
		}
		generator = d.head(g).fit(words, details, width, d.plain(2, 1)).solved(width, d.study.part(g)...)
	}
	return vehicle, generator
}

// batteryPostText names the negative post.
func batteryPostText(p *circuit.Part) string { return p.Ref + " −" }
