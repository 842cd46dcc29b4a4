package outlook

import "fusewright/harness/study/together"

// Sets are the largest sets that the charging system carries at the state's speed.
type Sets struct {
	CapacityA float64  // for what is switched; below zero = what is always on asks too much
	Columns   []Column // what can be switched, what is given up last first
	Rows      []Row
	Complete  bool // Rows has all of them
}

// Column is what one hand switches.
type Column struct {
	Name     string
	A        float64
	Critical bool
	On       bool // in the state
}

// Row is one largest set.
type Row struct {
	Has            []bool // by column
	DrawsA, SpareA float64
	Set            map[string]string // of controls, to switch to it
}

// mostSets is how many sets are looked for, mostRows how many are shown.
const mostSets, mostRows = 1 << 12, 24

func (p *Planner) sets(c *together.Choice) Sets {
	out := Sets{CapacityA: c.CapacityA, Complete: c.Complete && len(c.Sets) <= mostRows}
	on := map[*together.Item]bool{}
	for _, i := range c.On {
		on[i] = true
	}
	for _, i := range p.hands.Items {
		out.Columns = append(out.Columns, Column{i.Name, i.CurrentA, i.Critical, on[i]})
	}
	for _, s := range c.Sets[:min(len(c.Sets), mostRows)] {
		row := Row{Set: p.handsFor(s)}
		for i, item := range p.hands.Items {
			row.Has = append(row.Has, s.Has(i))
			if s.Has(i) {
				row.DrawsA += item.CurrentA
			}
		}
		row.SpareA = c.CapacityA - row.DrawsA
		out.Rows = append(out.Rows, row)
	}
	return out
}

// handsFor are the controls set so that what is in a set is on and all else off.
func (p *Planner) handsFor(s together.Set) map[string]string {
	set := map[string]string{}
	for _, has := range []bool{false, true} { // what is on decides of a hand that both need
		for i, item := range p.hands.Items {
			if s.Has(i) != has {
				continue
			}
			if !has {
				if id, word := p.off(item, nil); id != "" {
					set[id] = word
				}
				continue
			}
			for _, h := range item.Hands() {
				if c := p.Control(h.Part.PartName()); c != nil {
					if set[c.ID] = on; h.Position != "" {
						set[c.ID] = h.Position
					}
				}
			}
		}
	}
	return set
}
