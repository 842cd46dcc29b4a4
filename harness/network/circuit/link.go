package circuit

import (
	"slices"
	"sync"

	"fusewright/harness/design"
)

// flow is what Link finds of the whole network.
type flow struct {
	order  []*Node // every node, those that feed before those that are fed
	looped []*Node // nodes in or behind a circuit that feeds itself
	// contacts by coil branch: the relay contacts that a coil moves
	contacts  map[*Branch][]*Branch
	parts     map[design.Part]*Part // by design part
	source    []bool                // by node: the positive post of a battery
	posts     []*Node
	limited   []*Node // the outputs of chargers, and the stud of a charging system that feeds
	converter []*Part // by node: that feeds it; nil = the design has none
	// switchedBack tells that a contact stands in a return.
	switchedBack bool
	given        *sync.Map // by givenAt: reached; filled when asked
}

// Link finds the directions that the queries of this package follow. Build
// calls it; a circuit put together by hand must call it before any query.
func (c *Circuit) Link() {
	c.flow = flow{contacts: map[*Branch][]*Branch{}, parts: map[design.Part]*Part{}, given: &sync.Map{}}
	for _, p := range c.Parts {
		if p.Source != nil {
			c.flow.parts[p.Source] = p
		}
	}
	for _, n := range c.Nodes {
		n.fedBy, n.feeds, n.backTo, n.turns = nil, nil, nil, nil
	}
	for _, b := range c.Branches {
		switch {
		case b.Feeds():
			b.A.feeds = append(b.A.feeds, b)
			b.B.fedBy = append(b.B.fedBy, b)
		case b.Returns():
			b.A.backTo = append(b.A.backTo, b)
			c.flow.switchedBack = c.flow.switchedBack || b.Kind == ContactBranch
		}
		if b.BehindLoad() { // a return of the load before it
			b.A.backTo = append(b.A.backTo, b)
		}
		if b.Closer != nil {
			if coil := b.Closer.coil(); coil != nil {
				c.flow.contacts[coil] = append(c.flow.contacts[coil], b)
			}
		}
	}
	for _, b := range c.Branches {
		if b.Load != nil && b.Load.Reverses {
			_, far := b.Halves()
			far.turns = append(far.turns, b)
		}
	}
	c.flow.source = make([]bool, len(c.Nodes))
	if len(c.Nodes) > 1 {
		c.addPost(c.Positive())
	}
	for _, p := range c.Parts {
		if p.Kind == Bank {
			c.addPost(p.Terminal("+").Node)
		}
		if out := p.Output(); out != nil { // a source, and limits its own current
			c.flow.limited = append(c.flow.limited, out.A)
			c.flow.parts[p.Source.(*design.Charger).Input] = p
		}
		if p.Studded() {
			c.flow.limited = append(c.flow.limited, p.Terminal("B+").Node)
		}
	}
	c.findConverters()
	c.sortNodes()
}

func (c *Circuit) addPost(n *Node) {
	c.flow.source[n.Index] = true
	c.flow.posts = append(c.flow.posts, n)
}

// Halves are the outlets of the two halves of a reversing contactor between which a
// motor lies: that of the one which feeds it, and that of the one which does when it
// runs the other way round.
func (b *Branch) Halves() (near, far *Node) {
	near, far = b.A, b.B
	for len(near.fedBy) > 0 && !near.fedBy[0].OfRelay() {
		near = near.fedBy[0].A
	}
	for len(far.backTo) > 0 && !far.backTo[0].Rests() {
		far = far.backTo[0].B
	}
	return near, far
}

// OfFarHalf tells of the contacts of a half that turns a motor the other way round.
func (b *Branch) OfFarHalf() bool {
	return b.OfRelay() && len(b.A.turns)+len(b.B.turns) > 0
}

// OfRelay tells of a relay's contacts.
func (b *Branch) OfRelay() bool {
	return b.Kind == ContactBranch && b.Part != nil && b.Part.Kind == Relay
}

// Turns are the motors that a node feeds the other way round.
func (n *Node) Turns() []*Branch { return n.turns }

func (c *Closer) coil() *Branch {
	if c.Coil != nil {
		return c.Coil
	}
	return c.Break
}

// sortNodes puts every node behind those that feed it, and finds the nodes
// that have no such place because they feed themselves.
func (c *Circuit) sortNodes() {
	waits := make([]int, len(c.Nodes))
	for _, n := range c.Nodes {
		waits[n.Index] = len(n.fedBy)
		if len(n.fedBy) == 0 {
			c.flow.order = append(c.flow.order, n)
		}
	}
	for i := 0; i < len(c.flow.order); i++ {
		for _, b := range c.flow.order[i].feeds {
			if waits[b.B.Index]--; waits[b.B.Index] == 0 {
				c.flow.order = append(c.flow.order, b.B)
			}
		}
	}
	if len(c.flow.order) == len(c.Nodes) {
		return
	}
	for _, n := range c.Nodes {
		if waits[n.Index] > 0 {
			c.flow.looped = append(c.flow.looped, n)
		}
	}
}

// PartOf finds the part made of a design part, a post of the battery included;
// nil when there is none.
func (c *Circuit) PartOf(src design.Part) *Part {
	switch src.(type) {
	case *design.BatteryPart, *design.NegativePart:
		return c.Nodes[1].Terminals[0].Part
	}
	return c.flow.parts[src]
}

// Posts are the nodes of the positive posts of all batteries, the first battery's first.
func (c *Circuit) Posts() []*Node { return c.flow.posts }

// BothWays tells whether current flows to the post of a battery as well as from it: there is a further
// one, or the first is charged at the end of a feed.
func (c *Circuit) BothWays() bool { return len(c.flow.posts) > 1 || len(c.Positive().fedBy) > 0 }

// IsPost tells whether a node is the positive post of a battery. What is fed there is fed
// by that battery, whatever charges it.
func (c *Circuit) IsPost(n *Node) bool {
	return n.Index < len(c.flow.source) && c.flow.source[n.Index]
}

// Links are the branches that join the post of a further battery to another battery. A charger
// is no link: nothing flows back through it, and what it takes is its own.
func (c *Circuit) Links(post *Node) (list []*Branch) {
	for _, b := range post.FedBy() {
		if c.MainFeed(b.A).Whole {
			list = append(list, b)
		}
	}
	return list
}

// Sensing are the contacts of voltage-sensing relays in a link.
func (c *Circuit) Sensing(link *Branch) (list []*Branch) {
	for _, b := range append(c.MainFeed(link.A).Branches, link) {
		if b.Kind == ContactBranch && b.Closer.Coil != nil && b.Closer.Coil.Senses() {
			list = append(list, b)
		}
	}
	return list
}

// Studded tells of a charging system that feeds at its own stud what leads to the batteries.
func (p *Part) Studded() bool {
	ch, ok := p.Source.(*design.Charging)
	return ok && ch.Feeds
}

// Stud is the node of a charging system's own stud, where it feeds what leads to the batteries; nil = it does not.
func (c *Circuit) Stud() *Node {
	for _, n := range c.flow.limited {
		if slices.ContainsFunc(n.Terminals, func(t *Terminal) bool { return t.Part.Studded() }) {
			return n
		}
	}
	return nil
}

// OfCharger tells of the node of a charger's output, and of a charging system's own stud.
func (c *Circuit) OfCharger(n *Node) bool { return slices.Contains(c.flow.limited, n) }

// ChargersAbove are the chargers that alone feed a node; none where a battery does too, or a
// converter, which charges nothing.
func (c *Circuit) ChargersAbove(n *Node) (chargers []*Part) {
	if c.ConverterOf(n) != nil {
		return nil
	}
	seen := map[*Node]bool{n: true}
	for queue := []*Node{n}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if c.IsPost(at) {
			return nil
		}
		if c.OfCharger(at) {
			for _, t := range at.Terminals {
				if out := t.Part.Output(); out != nil && out.A == at || t.Part.Studded() {
					chargers = append(chargers, t.Part)
				}
			}
		}
		for _, b := range at.fedBy {
			if !seen[b.A] {
				seen[b.A] = true
				queue = append(queue, b.A)
			}
		}
	}
	return chargers
}

// Supply is the posts of the battery that feeds a node, or the output of the converter that
// does: where its main feed begins, the first battery where nothing feeds it.
func (c *Circuit) Supply(n *Node) (plus, minus *Node) {
	if p := c.ConverterOf(n); p != nil {
		out := p.Output()
		return out.A, out.B
	}
	if len(c.flow.posts) > 1 {
		if way := c.MainFeed(n); len(way.Branches) > 0 {
			n = way.Branches[0].A
		}
		if c.OfCharger(n) {
			if post := c.charged(n); post != nil {
				n = post
			}
		}
		for _, b := range n.Branches {
			if b.Kind == BatteryBranch && b.A == n {
				return b.Posts()
			}
		}
	}
	return c.Positive(), c.Negative()
}

// Positive is the node of the battery's positive post, Negative that of the
// negative one.
func (c *Circuit) Positive() *Node { return c.Nodes[1] }

// Negative is the reference node, battery negative.
func (c *Circuit) Negative() *Node { return c.Nodes[0] }
