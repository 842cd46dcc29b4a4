package arrange

import (
	"slices"

	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
)

// Fill draws in slots the loads that stood there in an earlier circuit and are gone, where
// they have room and a line leads there, and tells their references and wire numbers.
func (a *Arrangement) Fill(earlier *labels.Labels) (shown map[string]bool) {
	earlier.Stacked, earlier.MainsBelow, earlier.Slots = a.Stacked, a.MainsBelow, labels.NoSlots
	shown = map[string]bool{}
	var gone []*cell.Cell
	for _, o := range cell.Build(earlier, a.Rows).List {
		if !slices.ContainsFunc(a.List, func(q *cell.Cell) bool { return !q.Empty && q.Part.Name == o.Part.Name }) {
			gone = append(gone, o)
		}
	}
	for _, c := range a.List {
		at := slices.IndexFunc(gone, func(o *cell.Cell) bool { return c.Empty && c.Stood(o) && a.takesIn(c, o) })
		if at < 0 {
			continue
		}
		c.Fill(gone[at])
		if p := a.Pages[c.Sheet-1]; hasReturnRun(c) {
			c.RunMore = p.Widths[c.Col] - p.Leads[c.Col] - c.Body
		}
		shown[c.Part.Ref] = true
		for _, w := range c.Wires() {
			shown[w.Number] = true
		}
	}
	return shown
}

// takesIn tells whether there is room for a cell where a slot is, and what feeds it stands
// on the same page.
func (a *Arrangement) takesIn(slot, o *cell.Cell) bool {
	p, in, r := a.Pages[slot.Sheet-1], slot.Inlets[0], slot.Rows[0]
	top, bottom := float64(r.Y)-o.Rows[0].Top, float64(r.Y)+o.Rows[0].Bottom
	if !p.Wires(a.Outs[in.Source], in) || top < 0 || bottom > float64(a.Rows) ||
		o.Lead > p.Leads[slot.Col] || o.Body > p.Widths[slot.Col]-p.Leads[slot.Col] {
		return false
	}
	return !slices.ContainsFunc(p.Columns[slot.Col], func(c *cell.Cell) bool {
		return c != slot && !c.Empty && slices.ContainsFunc(c.Rows, func(q *cell.Row) bool {
			return float64(q.Y)-q.Top < bottom && top < float64(q.Y)+q.Bottom
		})
	})
}
