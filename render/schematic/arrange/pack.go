package arrange

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/cell"
)

// feed is what still has to be drawn: wires that leave a terminal, or a part
// that nothing feeds.
type feed struct {
	term   *circuit.Terminal
	inlets []*cell.Inlet
	root   *cell.Cell
}

// flagRow is what a flag takes in rows, channelM what the wires between two
// columns take in width, both as estimates for sharing out.
const (
	flagRow  = 4
	channelM = 1
)

// packer shares the cells out to pages, following the feeds.
type packer struct {
	a       *Arrangement
	queue   []feed
	page    *Page
	columns []int // width of each column so far
	loads   int   // width of the column of loads
	rows    int   // of a fresh page
	width   int   // modules the columns may take
}

// start fills the queue with the source, then with whatever else nothing feeds.
func (a *Arrangement) start() []feed {
	var queue []feed
	for _, c := range a.Cells.List {
		if primary(c) == nil && c.Part.Kind == circuit.Battery {
			queue = append([]feed{{root: c}}, queue...)
		} else if primary(c) == nil {
			queue = append(queue, feed{root: c})
		}
	}
	return queue
}

// primary is the inlet by which a cell hangs in the tree of feeds: the first
// that is no coil's.
func primary(c *cell.Cell) *cell.Inlet {
	for _, in := range c.Inlets {
		if in.Wire == nil || in.Wire.Role != circuit.CoilFeedWire {
			return in
		}
	}
	if len(c.Inlets) > 0 {
		return c.Inlets[0]
	}
	return nil
}

// fill takes feeds off the queue until the page is full, and returns the page
// and the feeds that are left. rows and width are what may be used.
func (a *Arrangement) fill(queue []feed, index, rows, width int) (*Page, []feed) {
	k := &packer{a: a, page: &Page{Index: index, Severed: map[*cell.Inlet]bool{}, Outlined: a.Outlined}}
	k.rows, k.width = rows, width
	used := 0
	var later []feed // does not fit here; what comes after it may
	for len(queue) > 0 {
		f := queue[0]
		if f.root != nil && f.root.Sheet > 0 {
			queue = queue[1:]
			continue
		}
		took, rest := k.take(f, k.rows-used)
		if took == 0 && len(rest) > 0 {
			later, queue = append(later, rest...), queue[1:]
			continue
		}
		used += took
		queue = append(queue[1:], rest...)
	}
	return k.page, append(later, k.queue...)
}

// take puts a feed on the page as far as it fits; it returns the rows used and
// the feed when nothing of it fitted. The first feed of a page always does.
func (k *packer) take(f feed, budget int) (used int, rest []feed) {
	first := len(k.page.Cells) == 0
	if f.root != nil {
		if !first && k.a.fullOf(f.root) > budget && (k.a.fullOf(f.root) <= k.rows || budget < k.rows/2) {
			return 0, []feed{f}
		}
		used, ok := k.add(f.root, 0, budget, first)
		if !ok {
			return 0, []feed{f}
		}
		return max(used, 1), nil
	}
	k.widen(0, FlagBody)
	left := len(k.queue)
	used = k.children(f.term, f.inlets, 1, budget, first)
	if used == 0 && len(k.queue) > left {
		k.queue = k.queue[:left]
		return 0, []feed{f}
	}
	return max(used, flagRow), nil
}

// add puts a cell on the page with as much of what it feeds as fits.
func (k *packer) add(c *cell.Cell, rank, budget int, force bool) (used int, ok bool) {
	if c.Sheet > 0 {
		return 0, true
	}
	if !force && (!k.fits(c, rank) || k.least(c) > budget) {
		return 0, false
	}
	c.Sheet = k.page.Index + 1
	k.page.Cells = append(k.page.Cells, c)
	k.note(c, rank)
	used = k.pull(c, budget-k.least(c))
	later := k.least(c)
	for _, r := range c.Rows {
		own := k.rowLeast(c, r)
		later -= own
		rowUsed := 0
		for _, o := range c.Outlets {
			if o.Row == r {
				rowUsed += k.children(o.Term, k.a.Feeds[o.Term], rank+1, budget-used-later-rowUsed, false)
			}
		}
		used += max(own, rowUsed)
	}
	return used, true
}

// children adds what a terminal feeds, in order, until one does not fit; the
// rest goes to the queue and a flag takes its place.
func (k *packer) children(t *circuit.Terminal, list []*cell.Inlet, rank, budget int, force bool) (used int) {
	for i, in := range list {
		c := in.Cell
		if c.Sheet > 0 || primary(c) != in {
			continue
		}
		left := budget - used
		if i+1 < len(list) {
			left -= flagRow
		}
		// A circuit is begun where it fits whole, from its fuse to its ground; what fits on
		// no sheet whole is begun where there is room.
		whole := k.a.fullWith(c) <= left && k.fitsWhole(c, rank)
		tooLarge := left >= k.rows*6/10 && (k.a.splits && k.a.feedsBlock(c) || !k.a.fitsAlone(c, k.rows, k.width))
		u, ok := 0, false
		if whole || tooLarge || force {
			u, ok = k.add(c, rank, left, force)
		}
		if !ok {
			k.queue = append(k.queue, feed{term: t, inlets: list[i:]})
			if used == 0 && i == 0 {
				return 0
			}
			return used + flagRow
		}
		force = false
		used += u
		if half := k.a.otherHalf(c); half != nil && half.Sheet == 0 {
			u, _ = k.add(half, rank, left-u, true)
			used += u
		}
	}
	return used
}

// pull brings the small trees that feed a relay's coil alone to the relay.
func (k *packer) pull(c *cell.Cell, budget int) (used int) {
	for _, in := range c.Inlets {
		if in == primary(c) {
			continue
		}
		root := k.a.rootOf(in)
		if root == nil || root.Sheet > 0 || k.a.fullOf(root) > budget-used || root.Part.Kind == circuit.Battery {
			continue
		}
		if u, ok := k.add(root, 0, budget-used, false); ok {
			used += u
		}
	}
	return used
}

// rootOf climbs from an inlet to the part that nothing feeds.
func (a *Arrangement) rootOf(in *cell.Inlet) *cell.Cell {
	for range len(a.Cells.List) + 1 {
		c := a.Outs[in.Source]
		if c == nil {
			return nil
		}
		up := primary(c)
		if up == nil {
			return c
		}
		in = up
	}
	return nil
}
