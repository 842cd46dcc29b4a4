package arrange

import (
	"cmp"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
	"slices"
)

// flatten writes the labels of a column in one line where its tier leaves some of so many modules
// to spare, the columns that need least first. Labels stay in two lines elsewhere.
func (a *Arrangement) flatten(p *Page, total int) {
	for _, c := range p.Cells {
		c.Flat, c.FlatReturns, c.RunMore = false, false, 0
	}
	if a.Stacked && a.Study == nil {
		for _, t := range p.tiers() {
			spare := total - p.ColumnX[t.end-1] - p.Widths[t.end-1]
			if a.Twin != nil { // no column is wider than with solved values
				spare = 0
			}
			a.flattenColumns(p, t, spare)
		}
	}
	for col, list := range p.Columns {
		for _, c := range list {
			if hasReturnRun(c) { // signs of ground one below the other
				c.RunMore = p.Widths[col] - p.Leads[col] - c.Body
			}
		}
	}
	p.setBodies()
}

func (a *Arrangement) flattenColumns(p *Page, t tier, spare int) {
	type wish struct{ col, more int }
	var wishes []wish
	for col := t.start; col < t.end; col++ {
		wishes = append(wishes, wish{col, a.flatLead(p, col) - p.Leads[col]})
	}
	slices.SortStableFunc(wishes, func(a, b wish) int { return cmp.Compare(a.more, b.more) })
	for _, w := range wishes {
		more := max(w.more, 0)
		if more > spare {
			break
		}
		spare -= more
		p.Leads[w.col] += more
		p.widenColumn(t, w.col, more)
		for _, c := range p.Columns[w.col] {
			c.Flat = true
		}
	}
	for col := t.start; col < t.end; col++ {
		if more := a.flatReturns(p, col); more > 0 && more <= spare {
			spare -= more
			p.widenColumn(t, col, more)
			for _, c := range p.Columns[col] {
				c.FlatReturns = true
			}
		}
	}
}

// widenColumn moves everything right of a column in its tier.
func (p *Page) widenColumn(t tier, col, more int) {
	p.Widths[col] += more
	for k := col + 1; k < t.end; k++ {
		p.ColumnX[k] += more
	}
}

// flatLead is the lead a column needs for labels in one line.
func (a *Arrangement) flatLead(p *Page, col int) (lead int) {
	for _, c := range p.Columns[col] {
		if c.Kind != cell.Part {
			continue
		}
		own := 0
		for _, in := range c.Inlets {
			if in.Wire != nil {
				need := a.InletM(in.Wire, c.Part, false)
				if cell.SharesTerminal(in) {
					need++
				}
				own = max(own, need)
			}
		}
		lead = max(lead, c.Lead, own)
	}
	return lead
}

// flatReturns is how much wider a column gets when the returns of its loads
// have labels in one line.
func (a *Arrangement) flatReturns(p *Page, col int) (more int) {
	body := p.Widths[col] - p.Leads[col]
	for _, c := range p.Columns[col] {
		if hasReturnRun(c) {
			more = max(more, c.Body+a.ReturnRun(c.Returns, false)-a.ReturnRun(c.Returns, a.Stacked)-body)
		}
	}
	return more
}

func hasReturnRun(c *cell.Cell) bool {
	return c.Kind == cell.Part && len(c.Returns) > 0 && (c.Part.Kind == circuit.Load || c.Coil || c.Part.InReturn && c.Part.Kind != circuit.Relay)
}
