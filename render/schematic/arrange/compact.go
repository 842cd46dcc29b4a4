package arrange

import (
	"errors"
	"maps"
	"slices"

	"fusewright/render/schematic/cell"
)

// mostCompacted is how many sheets are compacted at most: of more, the time that it takes
// counts for more than the sheets that it saves.
const mostCompacted = 16

// Compact moves circuits that stand behind flags to sheets with room for them: where that
// saves a sheet, and to a sheet that stands half empty with others behind it. It gives
// what lays all out again as it was; nil when nothing was moved.
func (a *Arrangement) Compact() (undo func() error, err error) {
	if n := len(a.Pages); n < 2 || n > mostCompacted {
		return nil, nil
	}
	pages, before := slices.Clone(a.Pages), a.standing(a.Pages...)
	moved := false
	for i := len(a.Pages) - 1; i > 0 && err == nil; i-- {
		var gone bool
		gone, err = a.dissolve(a.Pages[i])
		moved = moved || gone
	}
	for i := 0; i < len(a.Pages)-1 && err == nil; i++ {
		var some bool
		some, err = a.fillUp(a.Pages[i])
		moved = moved || some
	}
	if err != nil || !moved {
		return nil, err
	}
	return func() error {
		a.Pages = pages
		for i, p := range pages {
			p.Index = i
		}
		return a.stand(before)
	}, nil
}

// dissolve moves all that stands on a page to others, or nothing.
func (a *Arrangement) dissolve(p *Page) (bool, error) {
	list, sum, room := a.groups(p, true), 0, 0
	for _, g := range list {
		sum += g.rows
	}
	for _, to := range a.Pages {
		if to != p {
			room += a.Rows - to.Height
		}
	}
	if sum > room {
		return false, nil
	}
	before := a.standing(a.Pages...)
	slices.SortStableFunc(list, func(a, b group) int { return b.rows - a.rows })
	for _, g := range list {
		if ok, err := a.moveToAny(g, p); err != nil || !ok {
			return false, errors.Join(err, a.stand(before))
		}
	}
	a.drop(p)
	return true, nil
}

// moveToAny moves a group to the first page that has room for it, of those not before what
// feeds it if it can; on those before only into columns that stand there.
func (a *Arrangement) moveToAny(g group, from *Page) (ok bool, err error) {
	fed := slices.IndexFunc(a.Pages, func(p *Page) bool { return a.fedFrom(g, p) })
	for _, to := range slices.Concat(a.Pages[max(fed, 0):], a.Pages[:max(fed, 0)]) {
		if to != from && !ok && err == nil {
			ok, err = a.move(g, from, to, a.Rows, to.Index >= fed)
		}
	}
	return ok, err
}

// fillUp moves groups of later pages to a page half empty that feeds them, and leaves room
// for lists. What another page feeds stays behind it: nobody turns back for half a circuit.
func (a *Arrangement) fillUp(p *Page) (moved bool, err error) {
	if p.Height > a.Rows/2 {
		return false, nil
	}
	for i := len(a.Pages) - 1; i > p.Index; i-- {
		from := a.Pages[i]
		list := a.groups(from, false)
		for _, g := range list {
			if !a.fedFrom(g, p) || len(list) == 1 {
				continue
			}
			ok, err := a.move(g, from, p, a.Rows*3/4, true)
			if err != nil {
				return moved, err
			}
			moved = moved || ok
		}
		if len(from.Cells) == 0 {
			a.drop(from)
		}
	}
	return moved, nil
}

// fedFrom tells whether a page feeds a group.
func (a *Arrangement) fedFrom(g group, p *Page) bool {
	return slices.ContainsFunc(g.cells, func(c *cell.Cell) bool {
		in := primary(c)
		return in != nil && a.Outs[in.Source] != nil && p.Holds(a.Outs[in.Source])
	})
}

// move takes a group to another page if it then has no more than some rows: into the columns that
// stand there or, where those grow too wide and it may stand below them, into a tier of its own.
func (a *Arrangement) move(g group, from, to *Page, rows int, below bool) (bool, error) {
	if g.rows > rows-to.Height {
		return false, nil
	}
	before := a.standing(from, to)
	last := 0
	for _, c := range to.Cells {
		last = max(last, c.Tier)
	}
	for tier := last; tier == last || below && tier == last+1; tier++ {
		after := a.standing(from, to)
		after[0].cells = slices.DeleteFunc(after[0].cells, func(c placed) bool { return slices.Contains(g.cells, c.Cell) })
		for _, c := range g.cells {
			after[1].cells = append(after[1].cells, placed{c, tier})
		}
		if err := a.stand(after); err != nil {
			return false, err
		}
		if to.Height <= rows && to.Width() <= a.Columns {
			return true, nil
		}
		if err := a.stand(before); err != nil {
			return false, err
		}
	}
	return false, nil
}

// standing is what stands on a page, to come back to.
type standing struct {
	page    *Page
	cells   []placed
	severed map[*cell.Inlet]bool
}

// placed is a cell in a tier.
type placed struct {
	*cell.Cell
	tier int
}

// asPlaced are cells in the tiers in which they stand.
func asPlaced(cells []*cell.Cell) (list []placed) {
	for _, c := range cells {
		list = append(list, placed{c, c.Tier})
	}
	return list
}

func (a *Arrangement) standing(pages ...*Page) (list []standing) {
	for _, p := range pages {
		list = append(list, standing{p, asPlaced(partsOf(p)), maps.Clone(p.Severed)})
	}
	return list
}

// stand lays pages out with what is to stand on them.
func (a *Arrangement) stand(list []standing) error {
	for _, s := range list {
		s.page.Cells, s.page.Severed, s.page.slot = nil, maps.Clone(s.severed), 0
		for _, c := range s.cells {
			c.Sheet, c.Tier = s.page.Index+1, c.tier
			s.page.Cells = append(s.page.Cells, c.Cell)
		}
	}
	for _, s := range list {
		if len(s.cells) == 0 {
			continue
		}
		if err := a.layPage(s.page); err != nil {
			return err
		}
	}
	return nil
}

// drop takes out a page.
func (a *Arrangement) drop(p *Page) {
	a.Pages = slices.Delete(a.Pages, p.Index, p.Index+1)
	for _, q := range a.Pages[p.Index:] {
		q.Index--
		for _, c := range q.Cells {
			c.Sheet--
		}
	}
}

// partsOf are the cells of a page without flags and what else its layout adds.
func partsOf(p *Page) (list []*cell.Cell) {
	for _, c := range p.Cells {
		if c.Kind == cell.Part {
			list = append(list, c)
		}
	}
	return list
}
