package schematic

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
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
func (d *drawing) addBlock(p *circuit.Part) {
	ways := waysOf(p)
	step := wayStep
	for _, w := range ways {
		step = max(step, wayStep+d.wayDrop(w))
	}
	most := max((d.paper.rowsM()-8)/step-1, 2)
	pieces := max((len(ways)+most-1)/most, 1)
	bus := busOf(p)
	for k := range pieces {
		c := &cell{part: p, piece: k + 1, pieces: pieces}
		c.ways = ways[k*len(ways)/pieces : (k+1)*len(ways)/pieces]
		for i := range max(len(c.ways), 1) {
			c.rows = append(c.rows, &row{cell: c, index: i})
		}
		if k == 0 {
			d.addInlets(c)
			c.returns = d.returns[p]
		} else {
			in := &inlet{cell: c, source: bus, term: bus}
			c.inlets = append(c.inlets, in)
			d.feeds[bus] = append(d.feeds[bus], in)
		}
		d.shapeBlock(c, k+1 < pieces, bus)
		d.addCell(c)
	}
}

// wayDrop is by how much the sign of a change lowers what stands below a way, in
// modules. The sign of a finding fits in.
func (d *drawing) wayDrop(w *way) int {
	if d.changes == nil || d.flags.ofRef(w.ref) == 0 {
		return 0
	}
	return inM(d.flags.drop)
}

// busOf is the terminal of the bar: the one that is fed, else the first.
func busOf(p *circuit.Part) *circuit.Terminal {
	named := map[string]bool{}
	if b, ok := p.Source.(*design.Block); ok {
		for _, w := range b.Ways {
			named[w.Number] = true
		}
	}
	for _, t := range p.Terminals {
		if !named[t.Name] {
			return t
		}
	}
	return &circuit.Terminal{Part: p, Name: "bar"}
}

// waysOf lists the ways of a block with what is in them.
func waysOf(p *circuit.Part) []*way {
	b, ok := p.Source.(*design.Block)
	if !ok {
		return nil
	}
	terms := map[string]*circuit.Terminal{}
	for _, t := range p.Terminals {
		terms[t.Name] = t
	}
	var list []*way
	for _, w := range b.Ways {
		v := &way{number: w.Number, term: terms[w.Number]}
		if v.term != nil {
			v.ref = v.term.FuseRef
		}
		fillWay(v, w)
		list = append(list, v)
	}
	return list
}

func fillWay(v *way, w *design.Way) {
	switch {
	case w.Spare:
		v.kind, v.words = spareWay, "spare"
	case w.Fuse == nil:
		v.kind, v.words = linkedWay, "no fuse"
	default:
		v.kind = wayKindOf(w.FuseType)
		v.words = number(w.Fuse.RatingA) + " A"
	}
}

func wayKindOf(t *library.FuseType) wayKind {
	if t == nil {
		return fusedWay
	}
	return map[string]wayKind{"breaker": breakerWay, "ptc": ptcWay}[t.Kind]
}

// symbolOfWay is what stands in a way; nil for a plain link.
func (d *drawing) symbolOfWay(v *way) *symbol.Symbol {
	kinds := map[wayKind]symbol.Kind{
		fusedWay: symbol.Fuse, breakerWay: symbol.Breaker, ptcWay: symbol.PTC, spareWay: symbol.SpareWay,
	}
	if k, ok := kinds[v.kind]; ok {
		return d.set.Symbol(k)
	}
	return nil
}

// shapeBlock measures a block: each way is a row that moves with what it feeds.
func (d *drawing) shapeBlock(c *cell, goesOn bool, bus *circuit.Terminal) {
	c.lead = max(d.leadOf(c), 1)
	c.body = blockRight
	for _, v := range c.ways {
		if d.flags.ofRef(v.ref) > 0 {
			c.body = blockRight + inM(d.flags.wide-5)
		}
	}
	if d.study != nil {
		c.body = blockRight + 3 // the share of the rating stands beside it
	}
	c.caption = d.captionAtop(c.part, float64(c.body+d.overhang(2))*symbol.M-0.5)
	for i, r := range c.rows {
		r.top, r.bottom = 1.55, 1.8
		if i < len(c.ways) {
			v := c.ways[i]
			if d.flags.ofRef(v.ref) > 0 {
				r.bottom = 1.8 + d.flags.drop/symbol.M + 0.53
			}
			if v.kind == breakerWay {
				r.top = 3.5
			}
			if v.term != nil && len(d.feeds[v.term]) > 0 {
				c.outlets = append(c.outlets, &outlet{cell: c, term: v.term, row: r, dx: c.body})
			}
		}
	}
	head := c.rows[0]
	head.top += 1.2 + (gapMM+capMM+float64(len(c.caption.lines)-1)*lineMM)/symbol.M
	if d.flags.ofPart(c.part) > 0 {
		head.top += d.flags.lift / symbol.M
	}
	c.rows[len(c.rows)-1].bottom += 0.8
	if goesOn {
		last := c.rows[len(c.rows)-1]
		c.outlets = append(c.outlets, &outlet{cell: c, term: bus, row: last, off: 3 + d.lastDrop(c), dx: blockBar})
		last.bottom += 3
	}
	d.placeBlockInlets(c)
}

// lastDrop is wayDrop of the last way of a cell.
func (d *drawing) lastDrop(c *cell) int {
	if n := len(c.ways); n > 0 {
		return d.wayDrop(c.ways[n-1])
	}
	return 0
}

// placeBlockInlets brings the feed in at a way near the middle, further feeds
// below it.
func (d *drawing) placeBlockInlets(c *cell) {
	at := (len(c.rows) - 1) / 2
	for k, in := range c.inlets {
		i := min(at+k, len(c.rows)-1)
		in.row = c.rows[i]
		in.off = (at + k - i) * d.inletStep()
		in.dx = blockBar
		in.row.top = max(in.row.top, d.labelTop())
		in.row.bottom = max(in.row.bottom, float64(in.off)+1)
	}
}
