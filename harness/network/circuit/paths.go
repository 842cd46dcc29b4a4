package circuit

import (
	"cmp"
	"iter"
	"slices"

	"fusewright/harness/design"
)

// Path is a way of current: the branches in order, from the source outward, or
// of a return from the part to battery negative.
type Path struct {
	Branches []*Branch
	// Whole is false when the way does not begin at the battery's positive post
	// (of returns: does not end at the negative one).
	Whole bool
}

// Wires lists the wires of the path in order.
func (p Path) Wires() []*Wire {
	var out []*Wire
	for _, b := range p.Branches {
		if b.Wire != nil {
			out = append(out, b.Wire)
		}
	}
	return out
}

// LengthM is the length of the path's wires.
func (p Path) LengthM() float64 {
	sum := 0.0
	for _, w := range p.Wires() {
		sum += w.LengthM
	}
	return sum
}

// MaxPaths is how many ways FeedPaths and ReturnPaths list at most: feeds that
// part and meet again n times give 2^n ways.
const MaxPaths = 64

// FeedPaths lists every way from a source to a node in design order, each from
// the source outward, at most MaxPaths. all is false when there are more.
// The time grows with the length of the ways listed.
func (c *Circuit) FeedPaths(to *Node) (paths []Path, all bool) {
	return walk(to, c.begins, func(n *Node) []*Branch { return n.fedBy },
		func(b *Branch) *Node { return b.A }, true)
}

// ReturnPaths lists every way from a node back to battery negative in design
// order, at most MaxPaths. all is false when there are more.
func (c *Circuit) ReturnPaths(from *Node) (paths []Path, all bool) {
	return walk(from, c.isNegative, func(n *Node) []*Branch { return n.backTo },
		func(b *Branch) *Node { return b.B }, false)
}

// MainFeed is the first of the feed paths of a node: what one would follow
// first with a finger.
func (c *Circuit) MainFeed(to *Node) Path {
	return c.follow(to, c.begins, func(n *Node) []*Branch { return n.fedBy },
		func(b *Branch) *Node { return b.A }, true)
}

func (c *Circuit) isNegative(n *Node) bool { return n == c.Negative() }

// HeaviestReturn is the way home (MainReturn) that takes, where several part, the one that
// carries most by the currents given by branch; of equals the first.
func (c *Circuit) HeaviestReturn(from, home *Node, amps []float64) Path {
	return c.returnBy(from, home, func(n *Node) []*Branch {
		return slices.SortedStableFunc(slices.Values(n.backTo), func(a, b *Branch) int { return cmp.Compare(amps[b.Index], amps[a.Index]) })
	})
}

// Ways are the main feed and the main return of a part; none without terminals.
func (c *Circuit) Ways(part *Part) []Path {
	plus, minus := part.Terminal("+"), part.Terminal("-")
	if plus == nil || minus == nil {
		return nil
	}
	return []Path{c.MainFeed(plus.Node), c.MainReturn(minus.Node, c.Home(plus.Node))}
}

// WayWires are the branches of the wires of every feed of a part, each once, and of its
// main return.
func (c *Circuit) WayWires(part *Part) []*Branch {
	var wires []*Branch
	ways := c.Ways(part)
	if len(ways) > 0 {
		feeds, _ := c.FeedPaths(part.Terminal("+").Node)
		ways = append(feeds, ways[1:]...)
	}
	for _, way := range ways {
		for _, w := range way.Wires() {
			if !slices.Contains(wires, w.Branch) {
				wires = append(wires, w.Branch)
			}
		}
	}
	return wires
}

// Leads is the lead that an accessory comes with, where its length is known.
func (p *Part) Leads() (leads []*Branch) {
	for _, b := range p.Branches {
		if b.OfLead() {
			leads = append(leads, b)
		}
	}
	return leads
}

// Homeward goes through the branches of every way home, each once, those nearer to the
// node first, whatever the order in which the design names its returns: of parallel ones
// any may have to carry the whole, when the others come loose. A fuse in one of several
// is left out: what it opens flows on by the others.
func (c *Circuit) Homeward(from *Node) iter.Seq[*Branch] {
	return func(yield func(*Branch) bool) {
		met := map[*Node]bool{from: true, c.Negative(): true}
		sole := true
		for queue := []*Node{from}; len(queue) > 0; queue = queue[1:] {
			if from == c.Negative() {
				return
			}
			back := queue[0].backTo
			sole = sole && len(back) < 2
			for _, b := range back {
				if (sole || b.Kind != FuseBranch) && !yield(b) {
					return
				}
				if !met[b.B] {
					met[b.B] = true
					queue = append(queue, b.B)
				}
			}
		}
	}
}

// Downstream lists every node, those that feed before those that are fed.
func (c *Circuit) Downstream() []*Node { return c.flow.order }

// follow takes the first branch at every node; a way of more branches than there
// are would go round for ever.
func (c *Circuit) follow(n *Node, end func(*Node) bool, at func(*Node) []*Branch, far func(*Branch) *Node, back bool) Path {
	var p Path
	for !end(n) && len(p.Branches) < len(c.Branches) {
		ways := at(n)
		if len(ways) == 0 {
			break
		}
		p.Branches = append(p.Branches, ways[0])
		n = far(ways[0])
	}
	p.Whole = end(n)
	if back {
		slices.Reverse(p.Branches)
	}
	return p
}

// walk lists all ways by going deep first; the trail keeps it from going round.
func walk(start *Node, end func(*Node) bool, at func(*Node) []*Branch, far func(*Branch) *Node, back bool) (
	paths []Path, all bool) {
	var trail []*Branch
	on := map[*Node]bool{}
	all = true
	var from func(n *Node)
	from = func(n *Node) {
		if on[n] || !all {
			return
		}
		if end(n) || len(at(n)) == 0 {
			if len(paths) == MaxPaths {
				all = false
				return
			}
			p := Path{Branches: slices.Clone(trail), Whole: end(n)}
			if back {
				slices.Reverse(p.Branches)
			}
			paths = append(paths, p)
			return
		}
		on[n] = true
		for _, b := range at(n) {
			trail = append(trail, b)
			from(far(b))
			trail = trail[:len(trail)-1]
		}
		delete(on, n)
	}
	from(start)
	return paths, all
}

// FedBy lists the branches that feed a node directly, in the order of their
// indices; more than one is a parallel feed.
func (n *Node) FedBy() []*Branch { return n.fedBy }

// FeedsOn lists the branches that a node feeds directly.
func (n *Node) FeedsOn() []*Branch { return n.feeds }

// ReturnsBy lists the branches that take current from a node directly back.
func (n *Node) ReturnsBy() []*Branch { return n.backTo }

// ParallelFeeds lists the nodes that more than one branch feeds.
func (c *Circuit) ParallelFeeds() []*Node {
	var out []*Node
	for _, n := range c.Nodes {
		if len(n.fedBy) > 1 {
			out = append(out, n)
		}
	}
	return out
}

// Feeding tells, by branch index, which branches lie on any feed path to any of
// the nodes. Linear in the size of the circuit.
func (c *Circuit) Feeding(nodes ...*Node) []bool {
	u := newUpstream(c)
	for _, n := range nodes {
		u.fed(n)
	}
	return u.run()
}

// Needed is Feeding of what draws in some branches, and the branches on its ways back,
// together with what pulls in the relays on all these ways: feeds and returns of the
// coils of every make contact met.
func (c *Circuit) Needed(draws ...*Branch) []bool {
	u := newUpstream(c)
	u.coils = true
	for _, b := range draws {
		u.between(b.A, b.B)
	}
	return u.run()
}

// upstream marks the branches on the ways to the source and back to it.
type upstream struct {
	c         *Circuit
	coils     bool               // with those of the coils of contacts on the way
	passes    func(*Branch) bool // nil = all do
	on        []bool
	hot, cold []bool // nodes seen, by index
	up, back  []*Node
}

func newUpstream(c *Circuit) *upstream {
	return &upstream{c: c, on: make([]bool, len(c.Branches)), hot: make([]bool, len(c.Nodes)), cold: make([]bool, len(c.Nodes))}
}

func (u *upstream) between(hot, cold *Node) {
	u.fed(hot)
	if !u.cold[cold.Index] {
		u.cold[cold.Index], u.back = true, append(u.back, cold)
	}
}

func (u *upstream) fed(n *Node) {
	if !u.hot[n.Index] {
		u.hot[n.Index], u.up = true, append(u.up, n)
		if p := u.c.ConverterOf(n); p != nil && u.coils { // what its converter needs, it needs
			in := p.Converts()
			u.between(in.A, in.B)
		}
	}
}

func (u *upstream) run() []bool {
	for len(u.up)+len(u.back) > 0 {
		for len(u.up) > 0 {
			n := u.up[len(u.up)-1]
			u.up = u.up[:len(u.up)-1]
			if u.c.IsPost(n) {
				continue
			}
			for _, b := range n.fedBy {
				if u.passes != nil && !u.passes(b) {
					continue
				}
				u.on[b.Index] = true
				u.fed(b.A)
				u.pull(b)
			}
		}
		for len(u.back) > 0 {
			n := u.back[len(u.back)-1]
			u.back = u.back[:len(u.back)-1]
			for _, b := range n.backTo {
				if u.passes != nil && !u.passes(b) {
					continue
				}
				u.on[b.Index] = true
				if !u.cold[b.B.Index] {
					u.cold[b.B.Index], u.back = true, append(u.back, b.B)
				}
				u.pull(b)
			}
		}
	}
	return u.on
}

func (u *upstream) pull(b *Branch) {
	if u.coils && b.Closer != nil && b.Closer.Coil != nil && b.Closer.Latch == nil {
		u.between(b.Closer.Coil.A, b.Closer.Coil.B)
	}
}

// NeededBy lists the contacts of switches, keys and relays that a load needs
// closed, in branch order: those on its ways from the battery and back, and on those
// of the coils of the relays among them.
func (c *Circuit) NeededBy(load *Branch) []*Branch {
	needed := c.Needed(load)
	var out []*Branch
	for _, b := range c.Branches {
		if b.Kind == ContactBranch && needed[b.Index] {
			out = append(out, b)
		}
	}
	return out
}

// SwitchesFor lists the manual switches that a load needs closed.
func (c *Circuit) SwitchesFor(load *Branch) []*design.Switch {
	var out []*design.Switch
	for _, b := range c.NeededBy(load) {
		if b.Closer.Switch != nil {
			out = append(out, b.Closer.Switch)
		}
	}
	return out
}

// Below is what a point feeds.
type Below struct {
	Branches  []*Branch // of the feed network, nearest first
	Terminals []*Terminal
	Loads     []*Branch // the power of loads; standby draws are left out
	Coils     []*Branch
}

// Below finds everything that a node feeds, through open contacts too, but not
// what the relays whose coils it feeds pass on. The time grows with what it
// finds, not with the circuit.
func (c *Circuit) Below(n *Node) *Below {
	out := &Below{}
	seen := map[*Node]bool{n: true}
	for queue := []*Node{n}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		out.Terminals = append(out.Terminals, at.Terminals...)
		for _, b := range at.Branches {
			switch {
			case b.A != at:
			case b.Load != nil && !b.Load.Standby:
				out.addLoad(b)
			case b.Part != nil && b == b.Part.Coil():
				out.Coils = append(out.Coils, b)
			}
		}
		for _, b := range at.turns {
			out.addLoad(b)
		}
		for _, b := range at.feeds {
			out.Branches = append(out.Branches, b)
			if !seen[b.B] {
				seen[b.B] = true
				queue = append(queue, b.B)
			}
		}
	}
	return out
}

// Idle tells of a fuse whose rating the design leaves open that nothing uses it: there is
// nothing to choose it for.
func (c *Circuit) Idle(b *Branch) bool { return b.Fuse != nil && b.Fuse.Auto && !c.Serves(b) }

// Serves tells whether something draws through a branch, charges through it or is charged.
func (c *Circuit) Serves(b *Branch) bool {
	if b.Returns() {
		return len(c.DrawsBack(b)) > 0
	}
	below := c.BelowBranch(b)
	return len(below.Loads)+len(below.Coils) > 0 || below.Charges() || below.has(Bank)
}

// Charges tells whether the cable of the charging system leads on from there.
func (b *Below) Charges() bool { return b.has(Generator) }

func (b *Below) has(kind Kind) bool {
	return slices.ContainsFunc(b.Terminals, func(t *Terminal) bool { return t.Part.Kind == kind })
}

// addLoad adds a load once: a motor that runs either way is met from both ends, of a string in
// series the first that is met stands for all.
func (x *Below) addLoad(b *Branch) {
	if b.Follows() && slices.ContainsFunc(x.Loads, func(l *Branch) bool { return l.InSeries(b) }) {
		return // the current of its string, once
	}
	if !b.Load.Reverses || !slices.Contains(x.Loads, b) {
		x.Loads = append(x.Loads, b)
	}
}

// BelowBranch is Below of the far end of a branch of the feed network.
func (c *Circuit) BelowBranch(b *Branch) *Below { return c.Below(b.B) }

// Names are those of what hangs there: loads, and relays whose coils are fed.
func (b *Below) Names() (names []string) {
	seen := map[*Part]bool{}
	add := func(p *Part, before string) {
		if p != nil && !seen[p] {
			seen[p] = true
			names = append(names, before+cmp.Or(p.Label, p.Name))
		}
	}
	for _, l := range b.Loads {
		add(l.Part, "")
		for _, next := range l.String {
			add(next.Part, "")
		}
	}
	for _, k := range b.Coils {
		add(k.Part, "relay coil of ")
	}
	return names
}

// DrawsBack lists the loads and coils whose current passes a branch of a return, in
// branch order; standby draws are left out.
func (c *Circuit) DrawsBack(b *Branch) []*Branch {
	var out []*Branch
	seen := map[*Node]bool{b.A: true}
	for queue := []*Node{b.A}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, up := range at.Branches {
			switch {
			case up.B != at:
			case up.Load != nil && !up.Load.Standby, up.IsCoil():
				out = append(out, up)
			case up.Returns() && !seen[up.A]:
				seen[up.A] = true
				queue = append(queue, up.A)
			}
		}
	}
	slices.SortFunc(out, func(a, b *Branch) int { return a.Index - b.Index })
	return out
}

// ContactsOf lists the contacts that a relay's coil moves.
func (c *Circuit) ContactsOf(coil *Branch) []*Branch { return c.flow.contacts[coil] }
