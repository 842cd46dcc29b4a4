package schematic

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// A block's body, in modules from its outline's left edge: bar, fuse, outline.
const (
	blockBar   = 1
	blockFuse  = 2
	blockRight = 6 // of the outline; one more when a way carries a flag
)

// wayStep is about what one way takes in rows; a piece of a block must fit.
const wayStep = 4

// addBlock makes the cell of a block, or several when it has more ways than a
// sheet takes.
func (b *builder) addBlock(p *circuit.Part) {
	ways := waysOf(p)
	step := wayStep
	for _, w := range ways {
		step = max(step, wayStep+b.wayDrop(w))
	}
	most := max((b.sheetRows-8)/step-1, 2)
	pieces := max((len(ways)+most-1)/most, 1)
	bus := busOf(p)
	for k := range pieces {
		c := &cell{part: p, piece: k + 1, pieces: pieces}
		c.ways = ways[k*len(ways)/pieces : (k+1)*len(ways)/pieces]
		for i := range max(len(c.ways), 1) {
			c.rows = append(c.rows, &row{cell: c, index: i})
		}
		if k == 0 {
			b.addInlets(c)
			c.returns = b.wiring.returns[p]
		} else {
			in := &inlet{cell: c, source: bus, term: bus}
			c.inlets = append(c.inlets, in)
			b.feeds[bus] = append(b.feeds[bus], in)
		}
		b.shapeBlock(c, k+1 < pieces, bus)
		b.addCell(c)
	}
}

// shapeBlock measures a block: each way is a row that moves with what it feeds.
func (b *builder) shapeBlock(c *cell, goesOn bool, bus *circuit.Terminal) {
	c.lead = max(b.leadOf(c), 1)
	c.body = blockRight
	for _, v := range c.ways {
		if b.signs.ofRef(v.ref) > 0 {
			c.body = blockRight + inM(b.signs.wide-5)
		}
	}
	if b.study != nil {
		c.body = blockRight + 3 // the share of the rating stands beside it
	}
	c.caption = b.captionAtop(c.part, float64(c.body+b.overhang(2))*symbol.M-0.5)
	for i, r := range c.rows {
		r.top, r.bottom = 1.55, 1.8
		if i < len(c.ways) {
			v := c.ways[i]
			if b.signs.ofRef(v.ref) > 0 {
				r.bottom = 1.8 + b.signs.drop/symbol.M + 0.53
			}
			if v.kind == breakerWay {
				r.top = 3.5
			}
			if v.term != nil && len(b.feeds[v.term]) > 0 {
				c.outlets = append(c.outlets, &outlet{cell: c, term: v.term, row: r, dx: c.body})
			}
		}
	}
	head := c.rows[0]
	head.top += 1.2 + (gapMM+capMM+float64(len(c.caption.lines)-1)*lineMM)/symbol.M
	if b.signs.ofPart(c.part) > 0 {
		head.top += b.signs.lift / symbol.M
	}
	c.rows[len(c.rows)-1].bottom += 0.8
	if goesOn {
		last := c.rows[len(c.rows)-1]
		c.outlets = append(c.outlets, &outlet{cell: c, term: bus, row: last, off: 3 + lastDrop(b.labels, c), dx: blockBar})
		last.bottom += 3
	}
	b.placeBlockInlets(c)
}

// placeBlockInlets brings the feed in at a way near the middle, further feeds
// below it.
func (b *builder) placeBlockInlets(c *cell) {
	at := (len(c.rows) - 1) / 2
	for k, in := range c.inlets {
		i := min(at+k, len(c.rows)-1)
		in.row = c.rows[i]
		in.off = (at + k - i) * b.inletStep()
		in.dx = blockBar
		in.row.top = max(in.row.top, b.labelTop())
		in.row.bottom = max(in.row.bottom, float64(in.off)+1)
	}
}

// lastDrop is wayDrop of the last way of a cell.
func lastDrop(l *labels, c *cell) int {
	if n := len(c.ways); n > 0 {
		return l.wayDrop(c.ways[n-1])
	}
	return 0
}
