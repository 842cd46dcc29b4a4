package schematic

import "fusewright/harness/network/circuit"

// addFlags puts a flag before every wire whose source stands elsewhere, one for
// each terminal, and a flag behind every terminal that goes on elsewhere.
func (a *arrangement) addFlags(p *page) {
	parts := p.cells
	incoming := map[*circuit.Terminal]*cell{}
	for _, c := range parts {
		for _, in := range c.inlets {
			if !a.comesByFlag(p, in) {
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
			if a.goesByFlag(p, o.term) {
				flag := newFlag(outCell, o.term, p)
				flag.col = c.col + 1
				flag.inlets = []*inlet{{cell: flag, source: o.term, term: o.term, row: flag.rows[0]}}
				p.cells = append(p.cells, flag)
			}
		}
	}
}

func newFlag(kind cellKind, t *circuit.Terminal, p *page) *cell {
	c := &cell{kind: kind, term: t, part: t.Part, body: flagBody, sheet: p.index + 1}
	c.rows = []*row{{cell: c, top: 0.8, bottom: 1.9}}
	return c
}

// comesByFlag tells whether an inlet's source is not wired to it on this page.
func (a *arrangement) comesByFlag(p *page, in *inlet) bool {
	from := a.outs[in.source]
	return from == nil || !p.holds(from) || p.severed[in]
}

// goesByFlag tells whether a terminal feeds something that is not wired to it on
// this page.
func (a *arrangement) goesByFlag(p *page, t *circuit.Terminal) bool {
	for _, in := range a.feeds[t] {
		if !p.holds(in.cell) || p.severed[in] {
			return true
		}
	}
	return false
}
