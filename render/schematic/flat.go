package schematic

import (
	"sort"

	"fusewright/harness/network/circuit"
)

// flatten writes the labels of a column in one line where the page has width to
// spare, the columns that need least first. Labels stay in two lines elsewhere.
func (a *arrangement) flatten(p *page, spare int) {
	for _, c := range p.cells {
		c.flat, c.flatReturns, c.runMore = false, false, 0
	}
	if a.stacked && a.study == nil {
		a.flattenColumns(p, spare)
	}
	for col, list := range p.columns {
		for _, c := range list {
			if hasReturnRun(c) { // signs of ground one below the other
				c.runMore = p.widths[col] - p.leads[col] - c.body
			}
		}
	}
	p.setBodies()
}

func (a *arrangement) flattenColumns(p *page, spare int) {
	type wish struct{ col, more int }
	var wishes []wish
	for col := range p.columns {
		wishes = append(wishes, wish{col, a.flatLead(p, col) - p.leads[col]})
	}
	sort.SliceStable(wishes, func(i, j int) bool { return wishes[i].more < wishes[j].more })
	for _, w := range wishes {
		more := max(w.more, 0)
		if more > spare {
			break
		}
		spare -= more
		p.leads[w.col] += more
		p.widenColumn(w.col, more)
		for _, c := range p.columns[w.col] {
			c.flat = true
		}
	}
	for col := range p.columns {
		if more := a.flatReturns(p, col); more > 0 && more <= spare {
			spare -= more
			p.widenColumn(col, more)
			for _, c := range p.columns[col] {
				c.flatReturns = true
			}
		}
	}
}

// widenColumn moves everything right of a column.
func (p *page) widenColumn(col, more int) {
	p.widths[col] += more
	for k := col + 1; k < len(p.columnX); k++ {
		p.columnX[k] += more
	}
}

// flatLead is the lead a column needs for labels in one line.
func (a *arrangement) flatLead(p *page, col int) (lead int) {
	for _, c := range p.columns[col] {
		if c.kind != partCell {
			continue
		}
		own := 0
		for _, in := range c.inlets {
			if in.wire != nil {
				need := a.labelMOf(in.wire, false) + a.signs.leadGap(c.part)
				if sharesTerminal(in) {
					need++
				}
				own = max(own, need)
			}
		}
		lead = max(lead, c.lead, own)
	}
	return lead
}

// flatReturns is how much wider a column gets when the returns of its loads
// have labels in one line.
func (a *arrangement) flatReturns(p *page, col int) (more int) {
	body := p.widths[col] - p.leads[col]
	for _, c := range p.columns[col] {
		if hasReturnRun(c) {
			more = max(more, c.body+a.returnMore(c)-body)
		}
	}
	return more
}

// returnMore is by how much the returns of a load get longer in one line.
func (a *arrangement) returnMore(c *cell) int {
	return a.returnRunOf(c.returns, false) - a.returnRun(c.returns)
}

func hasReturnRun(c *cell) bool {
	return c.kind == partCell && len(c.returns) > 0 && (c.part.Kind == circuit.Load || c.coil)
}
