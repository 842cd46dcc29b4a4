package schematic

import "fusewright/harness/network/circuit"

// addFlags puts a flag before every wire whose source stands elsewhere, one for
// each terminal, and a flag behind every terminal that goes on elsewhere.
func (d *drawing) addFlags(p *page) {
	parts := p.cells
	incoming := map[*circuit.Terminal]*cell{}
	for _, c := range parts {
		for _, in := range c.inlets {
			if !d.comesByFlag(p, in) {
				continue
			}
			flag := incoming[in.source]
			if flag == nil {
				flag = newFlag(inCell, in.source, p)
				flag.col = c.col - 1
				flag.outlets = []*outlet{{cell: flag, term: in.source, row: flag.rows[0], dx: flagBody}}
				incoming[in.source] = flag
				p.cells = append(p.cells, flag)
			}
			flag.col = min(flag.col, c.col-1)
		}
	}
	for _, c := range parts {
		for _, o := range c.outlets {
			if d.goesByFlag(p, o.term) {
				flag := newFlag(outCell, o.term, p)
				flag.col = c.col + 1
				flag.inlets = []*inlet{{cell: flag, source: o.term, term: o.term, row: flag.rows[0]}}
				p.cells = append(p.cells, flag)
			}
		}
	}
}

func newFlag(kind cellKind, t *circuit.Terminal, p *page) *cell {
	c := &cell{kind: kind, term: t, part: t.Part, body: flagBody, page: p}
	c.rows = []*row{{cell: c, top: 0.8, bottom: 1.9}}
	return c
}

// comesByFlag tells whether an inlet's source is not wired to it on this page.
func (d *drawing) comesByFlag(p *page, in *inlet) bool {
	from := d.outs[in.source]
	return from == nil || from.page != p || p.severed[in]
}

// goesByFlag tells whether a terminal feeds something that is not wired to it on
// this page.
func (d *drawing) goesByFlag(p *page, t *circuit.Terminal) bool {
	for _, in := range d.feeds[t] {
		if in.cell.page != p || p.severed[in] {
			return true
		}
	}
	return false
}

// addReferences notes where each terminal that stands on several places stands.
func (d *drawing) addReferences() {
	for _, p := range d.pages {
		for _, c := range p.cells {
			switch c.kind {
			case outCell:
				d.crossingOf(c.term).from = c
			case inCell:
				x := d.crossingOf(c.term)
				x.aways = append(x.aways, c)
			}
		}
	}
	for t, x := range d.refs {
		x.home = d.outs[t]
	}
}

func (d *drawing) crossingOf(t *circuit.Terminal) *crossing {
	x := d.refs[t]
	if x == nil {
		x = &crossing{}
		d.refs[t] = x
	}
	return x
}
