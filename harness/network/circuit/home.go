package circuit

import (
	"iter"
	"slices"
)

// Home is where the current of what is fed at a node returns to: the negative post of the
// battery, or of the converter, that feeds it (Supply).
func (c *Circuit) Home(fed *Node) *Node {
	_, minus := c.Supply(fed)
	return minus
}

// MainReturn is the way home from a node that takes the first of each returns, to the negative post
// of a battery. What returns to the first battery's post instead comes home against the
// direction of the other's negative cable; what the two would have in common carries nothing of it.
func (c *Circuit) MainReturn(from, home *Node) Path {
	return c.returnBy(from, home, func(n *Node) []*Branch { return n.backTo })
}

func (c *Circuit) returnBy(from, home *Node, at func(*Node) []*Branch) Path {
	there := func(n *Node) bool { return n == home || c.isNegative(n) }
	back := func(n *Node) Path { return c.follow(n, there, at, func(b *Branch) *Node { return b.B }, false) }
	way := back(from)
	if n := len(way.Branches); !way.Whole || from == home || n > 0 && way.Branches[n-1].B == home {
		return way
	}
	bond := c.follow(home, c.isNegative, at, func(b *Branch) *Node { return b.B }, false)
	for n, m := len(way.Branches), len(bond.Branches); n > 0 && m > 0 && way.Branches[n-1] == bond.Branches[m-1]; n, m = n-1, m-1 {
		way.Branches, bond.Branches = way.Branches[:n-1], bond.Branches[:m-1]
	}
	slices.Reverse(bond.Branches)
	return Path{append(way.Branches, bond.Branches...), bond.Whole}
}

// WaysHome goes through the branches of every way home of what draws between two nodes, to
// each battery that can feed it, each once: what an own battery feeds passes the cable
// between the negative posts only where that is on its way.
func (c *Circuit) WaysHome(fed, back *Node) iter.Seq[*Branch] {
	homes := c.Homes(fed)
	if slices.Contains(homes, c.Negative()) && len(homes) == 1 {
		return c.Homeward(back)
	}
	return func(yield func(*Branch) bool) {
		seen := map[*Branch]bool{}
		for _, home := range homes {
			for _, b := range c.between(back, home) {
				if !seen[b] && !yield(b) {
					return
				}
				seen[b] = true
			}
		}
	}
}

// Homes are the negative posts of the batteries that can feed a node, each once; the first
// battery's where none can.
func (c *Circuit) Homes(fed *Node) (list []*Node) {
	if len(c.flow.posts) < 2 && c.flow.converter == nil {
		return []*Node{c.Negative()}
	}
	seen := map[*Node]bool{fed: true}
	for queue := []*Node{fed}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		if c.IsPost(n) || len(n.fedBy) == 0 {
			if home := c.Home(n); !slices.Contains(list, home) {
				list = append(list, home)
			}
			continue
		}
		for _, b := range n.fedBy {
			if !seen[b.A] {
				seen[b.A] = true
				queue = append(queue, b.A)
			}
		}
	}
	return list
}

// BeyondHome tells whether a return stands on the way of a further battery's negative post to the
// first battery's, and that battery alone feeds a node: what is fed there is home before.
func (c *Circuit) BeyondHome(fed *Node, b *Branch) bool {
	homes := c.Homes(fed)
	if len(homes) != 1 || homes[0] == c.Negative() {
		return false
	}
	for x := range c.Homeward(homes[0]) {
		if x == b {
			return true
		}
	}
	return false
}

// between lists the branches of the returns of two nodes by which a current can flow from one to
// the other: all that no one node parts from both.
func (c *Circuit) between(from, home *Node) (list []*Branch) {
	list = slices.Collect(c.Homeward(from))
	for b := range c.Homeward(home) {
		if !slices.Contains(list, b) {
			list = append(list, b)
		}
	}
	var cuts []*Node
	for _, b := range list {
		cuts = append(cuts, b.A, b.B)
	}
	slices.SortFunc(cuts, func(a, b *Node) int { return a.Index - b.Index })
	for _, cut := range slices.Compact(cuts) {
		met := reachedBeside(cut, list, from, home)
		list = slices.DeleteFunc(list, func(b *Branch) bool { return b.A != cut && !met[b.A] || b.B != cut && !met[b.B] })
	}
	return list
}

// reachedBeside are the nodes that some branches join to one of the starts, but by a cut.
func reachedBeside(cut *Node, by []*Branch, starts ...*Node) map[*Node]bool {
	met := map[*Node]bool{}
	for _, n := range starts {
		met[n] = n != cut
	}
	for grown := true; grown; {
		grown = false
		for _, b := range by {
			if b.A != cut && b.B != cut && met[b.A] != met[b.B] {
				met[b.A], met[b.B], grown = true, true, true
			}
		}
	}
	return met
}
