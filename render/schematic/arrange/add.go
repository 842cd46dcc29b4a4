package arrange

import (
	"fmt"
	"slices"

	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
)

// Add lays a circuit out as an earlier one was that had less: what stood stays on its
// sheet and, where there is room, at its place. What is new goes to the sheet of what
// feeds it, else to the next with room, else to one more. It gives nil where a sheet has no
// room for what its blocks have more of.
func Add(before *Arrangement, l, twin *labels.Labels) (*Arrangement, error) {
	a := &Arrangement{Labels: l, Paper: before.Paper, Field: before.Field, Rows: before.Rows, Columns: before.Columns}
	if before.Twin != nil {
		a.Twin = twin
	}
	a.MainsBelow, a.Slots = before.MainsBelow, before.Slots
	a.reset(before.Stacked)
	a.takeOver(before)
	for _, p := range a.Pages {
		if err := a.layPage(p); err != nil {
			return nil, err
		}
		if err := a.relieve(p); err != nil {
			return nil, err
		}
	}
	for _, c := range a.List {
		if c.Sheet == 0 {
			if err := a.addTree(c); err != nil {
				return nil, err
			}
		}
	}
	if !slices.ContainsFunc(a.Pages, func(p *Page) bool { return !a.holds(p) }) {
		return a, nil
	}
	return nil, nil
}

// relieve sets what stands on a page that is too large now closer together, then takes
// circuits behind the ways of blocks off it, the last first, until it fits; their place is
// then found anew.
func (a *Arrangement) relieve(p *Page) error {
	if p.loose = !a.holds(p); p.loose {
		if err := a.stand([]standing{{p, asPlaced(partsOf(p)), p.Severed}}); err != nil {
			return err
		}
	}
	for _, c := range slices.Backward(partsOf(p)) {
		if a.holds(p) {
			return nil
		}
		in := primary(c)
		if c.Sheet == 0 || len(c.Ways) > 0 || in == nil || a.ComesByFlag(p, in) || len(a.Outs[in.Source].Ways) < 2 {
			continue
		}
		for _, q := range partsOf(p) {
			if slices.Contains(a.behind(c, nil), q) {
				q.Sheet = 0
			}
		}
		rest := slices.DeleteFunc(partsOf(p), func(q *cell.Cell) bool { return q.Sheet == 0 })
		if err := a.stand([]standing{{p, asPlaced(rest), p.Severed}}); err != nil {
			return err
		}
	}
	return nil
}

// holds tells whether a page is no larger than its sheet.
func (a *Arrangement) holds(p *Page) bool { return p.Height <= a.Rows && p.Width() <= a.Columns }

// takeOver makes the pages of an earlier arrangement with the cells that are the same.
func (a *Arrangement) takeOver(before *Arrangement) {
	now := map[string]*cell.Cell{}
	for _, c := range slices.Backward(a.List) {
		now[standsFor(c)] = c
	}
	for _, was := range before.Pages {
		p := &Page{Index: len(a.Pages), Severed: map[*cell.Inlet]bool{}, Outlined: was.Outlined, was: was}
		for _, o := range partsOf(was) {
			c := now[standsFor(o)]
			if c == nil || c.Sheet > 0 {
				continue
			}
			c.Sheet, c.Tier = p.Index+1, o.Tier
			p.Cells = append(p.Cells, c)
			for i, in := range o.Inlets {
				if was.Severed[in] && i < len(c.Inlets) {
					p.Severed[c.Inlets[i]] = true
				}
			}
		}
		a.Pages = append(a.Pages, p)
	}
}

// standsFor tells cells apart over two arrangements: of parts, flags and passing wires.
func standsFor(c *cell.Cell) string {
	switch {
	case c.Kind != cell.Part && c.Term != nil:
		return fmt.Sprint(c.Kind, c.Term.Text(), c.Col)
	case c.Empty && len(c.Inlets) > 0:
		return "slot " + c.Inlets[0].Source.Text() + " " + c.Inlets[0].Wire.Number
	}
	return fmt.Sprint(c.Kind, c.Part.Name, c.Piece, c.Coil)
}

// addTree puts a cell with what it feeds, none of it on a sheet yet, where it has room.
func (a *Arrangement) addTree(c *cell.Cell) error {
	for in := primary(c); in != nil; in = primary(c) { // begin where the sheets leave off
		up := a.Outs[in.Source]
		if up == nil || up.Sheet > 0 || up == c {
			break
		}
		c = up
	}
	tree := slices.DeleteFunc(a.behind(c, nil), func(q *cell.Cell) bool { return q.Sheet > 0 })
	pages := slices.Clone(a.Pages)
	if in := primary(c); in != nil && a.Outs[in.Source] != nil && a.Outs[in.Source].Sheet > 0 {
		home := a.Pages[a.Outs[in.Source].Sheet-1]
		pages = slices.Insert(slices.DeleteFunc(pages, func(p *Page) bool { return p == home }), 0, home)
	}
	var best *Page
	least := len(a.List)
	for _, p := range pages {
		moved, err := a.try(p, tree)
		if err != nil {
			return err
		}
		if moved < least {
			best, least = p, moved
		}
		if least == 0 {
			break
		}
	}
	if best != nil {
		return a.stand([]standing{a.with(best, tree)})
	}
	p := &Page{Index: len(a.Pages), Severed: map[*cell.Inlet]bool{}, Outlined: a.Outlined}
	a.Pages = append(a.Pages, p)
	return a.stand([]standing{{p, asPlaced(tree), p.Severed}})
}

// behind are a cell and all that it feeds.
func (a *Arrangement) behind(c *cell.Cell, list []*cell.Cell) []*cell.Cell {
	if slices.Contains(list, c) {
		return list
	}
	list = append(list, c)
	for _, o := range c.Outlets {
		for _, in := range a.Feeds[o.Term] {
			if primary(in.Cell) == in {
				list = a.behind(in.Cell, list)
			}
		}
	}
	return list
}

// with is a page with cells besides, in the tier of what feeds the first of them.
func (a *Arrangement) with(p *Page, tree []*cell.Cell) standing {
	tier := 0
	if in := primary(tree[0]); in != nil {
		if from := a.Outs[in.Source]; from != nil && p.Holds(from) {
			tier = from.Tier
		}
	}
	all := asPlaced(partsOf(p))
	for _, c := range tree {
		all = append(all, placed{c, tier})
	}
	return standing{p, all, p.Severed}
}

// try tells how many parts would move if cells were put on a page; as many as there are,
// if it has no room.
func (a *Arrangement) try(p *Page, tree []*cell.Cell) (moved int, err error) {
	before := a.standing(p)
	if err := a.stand([]standing{a.with(p, tree)}); err != nil {
		return 0, err
	}
	moved = len(a.List)
	if a.holds(p) {
		moved = p.moved(a.Columns)
	}
	for _, c := range tree {
		c.Sheet = 0
	}
	return moved, a.stand(before)
}
