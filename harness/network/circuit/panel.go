package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// BringsBack tells whether a ground brings back all that a block feeds, as the minus of a panel does, and whether nothing
// else but what coils take returns there.
func (c *Circuit) BringsBack(ground *design.Ground, block *design.Block) (all, alone bool) {
	minus, plus := c.PartOf(ground), c.PartOf(block)
	if minus == nil || plus == nil || plus.Terminal("in") == nil {
		return false, false
	}
	var back []*Part
	for _, t := range minus.Terminals {
		for _, b := range t.Node.ReturnsBy() {
			back = append(back, loadsOf(c.DrawsBack(b))...)
		}
	}
	fed := loadsOf(c.Below(plus.Terminal("in").Node).Loads)
	out := func(list []*Part) func(*Part) bool {
		return func(p *Part) bool { return !slices.Contains(list, p) }
	}
	all = len(fed) > 1 && !slices.ContainsFunc(fed, out(back))
	return all, all && !slices.ContainsFunc(back, out(fed))
}

// loadsOf are the parts of what draws, coils left out.
func loadsOf(draws []*Branch) (list []*Part) {
	for _, b := range draws {
		if !b.OfCoil() && !slices.Contains(list, b.Part) {
			list = append(list, b.Part)
		}
	}
	return list
}
