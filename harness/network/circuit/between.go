package circuit

// Between are the feeding branches on some way from the posts to a node that meets no node twice, whichever way round
// current could pass, in branch order: rings that merely hang on such a way are not among them.
func (c *Circuit) Between(n *Node) (list []*Branch) {
	if c.IsPost(n) {
		return nil
	}
	// The way closes over the posts, taken as one node, and back to n: it is the one block of the net with that link
	// in it, found by depth-first search from n with the link gone first.
	k := &blocks{c: c, at: map[*Node]int{}, low: map[*Node]int{}, on: make([]bool, len(c.Branches))}
	k.at[n], k.low[n] = 1, 1
	if posts := c.Posts(); len(posts) > 0 {
		k.posts = posts
		k.visit(posts[0], nil, n)
	}
	for i, on := range k.on {
		if on {
			list = append(list, c.Branches[i])
		}
	}
	return list
}

type blocks struct {
	c       *Circuit
	posts   []*Node       // as one node, known by the first
	at, low map[*Node]int // when a node was met; the earliest met that it leads back to
	on      []bool        // by branch
	stack   []*Branch
}

// visit walks on from a node; root is where the search began.
func (k *blocks) visit(n *Node, from *Branch, root *Node) {
	k.at[n] = len(k.at) + 1
	k.low[n] = k.at[n]
	at := []*Node{n}
	if n == k.posts[0] {
		at = k.posts
	}
	for _, n0 := range at {
		for _, b := range n0.Branches {
			if b == from || !b.Feeds() {
				continue
			}
			m := b.other(n0)
			if k.c.IsPost(m) {
				m = k.posts[0]
			}
			switch met := k.at[m]; {
			case met == 0:
				height := len(k.stack)
				k.stack = append(k.stack, b)
				k.visit(m, b, root)
				if k.low[m] >= k.at[n] { // what hangs on n alone
					k.stack = k.stack[:height]
				}
				k.low[n] = min(k.low[n], k.low[m])
			case met < k.at[n]:
				k.stack = append(k.stack, b)
				k.low[n] = min(k.low[n], met)
			}
		}
	}
	if from == nil {
		for _, b := range k.stack {
			k.on[b.Index] = true
		}
	}
}
