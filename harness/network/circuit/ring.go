package circuit

import "slices"

// Rings is what closes the feeds of one battery to a ring: that feeds a branch of it from its far
// end too, with whatever other contacts closed.
type Rings struct {
	Far  [][]*Branch // by branch: the nearest fuses beyond its far end that feed it there; none = it is in no ring
	Bare []bool      // by branch: its far end is fed without a fuse too
}

// In tells whether a branch is fed from its far end too.
func (r *Rings) In(b *Branch) bool { return r != nil && (r.Bare[b.Index] || len(r.Far[b.Index]) > 0) }

// Fuses are the fuses in rings.
func (r *Rings) Fuses(c *Circuit) (list []*Branch) {
	for _, b := range c.Branches {
		if b.Kind == FuseBranch && r.In(b) {
			list = append(list, b)
		}
	}
	return list
}

// Largest is the number of fuses of the ring that has most, those apart at the battery's post not counted together.
func (r *Rings) Largest(c *Circuit) (most int) {
	if r == nil {
		return 0
	}
	met := make([]bool, len(c.Branches))
	for _, first := range c.Branches {
		if met[first.Index] || !r.In(first) {
			continue
		}
		met[first.Index] = true
		fuses := 0
		for queue := []*Branch{first}; len(queue) > 0; queue = queue[1:] {
			b := queue[0]
			if b.Kind == FuseBranch {
				fuses++
			}
			for _, n := range []*Node{b.A, b.B} {
				for _, x := range n.Branches {
					if !c.IsPost(n) && !met[x.Index] && r.In(x) {
						met[x.Index] = true
						queue = append(queue, x)
					}
				}
			}
		}
		most = max(most, fuses)
	}
	return most
}

// Together are the fuses that must all be out before what a branch and they feed is dead: those of its ring, in order;
// none where it is in no ring, or where that does not make all of it dead.
func (r *Rings) Together(c *Circuit, b *Branch) (list []*Branch) {
	if !r.In(b) {
		return nil
	}
	met := map[*Branch]bool{b: true}
	fuses := r.Fuses(c)
	for queue := []*Branch{b}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for _, x := range fuses {
			if !met[x] && (slices.Contains(r.Far[at.Index], x) || slices.Contains(r.Far[x.Index], at)) {
				met[x], queue = true, append(queue, x)
			}
		}
	}
	list = slices.DeleteFunc(fuses, func(x *Branch) bool { return !met[x] })
	if slices.ContainsFunc(append(slices.Clone(list), b), func(x *Branch) bool { return len(c.reached(x.B, nil, list)) > 0 }) {
		return nil
	}
	return list
}

// Rings finds the branches that are fed from both ends; nil where there are none. Of wires side by side
// (`parallel`) the others are no further feed. What has one battery at each end is Linked's.
func (c *Circuit) Rings() *Rings {
	r, found := &Rings{make([][]*Branch, len(c.Branches)), make([]bool, len(c.Branches))}, false
	for _, b := range c.aboveMeetings() {
		r.Far[b.Index], r.Bare[b.Index] = c.fedBeyond(b)
		found = found || r.In(b)
	}
	if !found {
		return nil
	}
	return r
}

// aboveMeetings are the branches above each node that more than one feed leads to.
func (c *Circuit) aboveMeetings() (list []*Branch) {
	seen := make([]bool, len(c.Nodes))
	for _, n := range c.Nodes {
		if len(n.fedBy) > 1 && len(n.fedBy) != len(Abreast(n.fedBy[:1])) {
			list = c.above(n, seen, list)
		}
	}
	return list
}

// Above are the branches on all ways from the posts to a node, the nearest first.
func (c *Circuit) Above(n *Node) []*Branch { return c.above(n, make([]bool, len(c.Nodes)), nil) }

func (c *Circuit) above(n *Node, seen []bool, list []*Branch) []*Branch {
	for queue := []*Node{n}; len(queue) > 0; queue = queue[1:] {
		if at := queue[0]; !seen[at.Index] && !c.IsPost(at) {
			seen[at.Index] = true
			for _, b := range at.fedBy {
				list, queue = append(list, b), append(queue, b.A)
			}
		}
	}
	return list
}

// fedBeyond finds what feeds the far end of a branch without it: the nearest fuses, and whether
// anything else does.
func (c *Circuit) fedBeyond(b *Branch) (fuses []*Branch, bare bool) {
	if !b.Passes(b.B) {
		return nil, false
	}
	own, near, mine := Abreast([]*Branch{b}), map[*Node]bool{b.B: true}, c.flow.posts
	if len(mine) > 1 {
		mine = c.reached(b.A, nil, own)
	}
	isMine := func(post *Node) bool { return slices.Contains(mine, post) }
	var ends []*Branch
	for queue := []*Node{b.B}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		if isMine(n) {
			return nil, true
		}
		if c.IsPost(n) {
			continue
		}
		for _, x := range n.Branches {
			m := x.other(n)
			switch {
			case !x.Feeds() || !x.Passes(m) || slices.Contains(own, x):
			case x.Kind == FuseBranch:
				ends = append(ends, x)
			case !near[m]:
				near[m] = true
				queue = append(queue, m)
			}
		}
	}
	for _, x := range ends {
		beyond := x.A
		if near[beyond] {
			beyond = x.B
		}
		if slices.ContainsFunc(c.reached(beyond, near, own), isMine) {
			fuses = append(fuses, x)
		}
	}
	return fuses, false
}

// reached are the posts that feed a node without some nodes and branches, and not through one another.
func (c *Circuit) reached(n *Node, nodes map[*Node]bool, without []*Branch) (posts []*Node) {
	met := map[*Node]bool{n: true}
	for queue := []*Node{n}; len(queue) > 0; queue = queue[1:] {
		if n = queue[0]; c.IsPost(n) {
			posts = append(posts, n)
			continue
		}
		if nodes[n] {
			continue
		}
		for _, x := range n.Branches {
			if m := x.other(n); x.Feeds() && x.Passes(m) && !met[m] && !slices.Contains(without, x) {
				met[m] = true
				queue = append(queue, m)
			}
		}
	}
	return posts
}

func (b *Branch) other(n *Node) *Node {
	if b.A == n {
		return b.B
	}
	return b.A
}
