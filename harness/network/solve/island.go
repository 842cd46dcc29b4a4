package solve

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// findIslands lists the branches that conduct and the nodes that no conducting
// path joins to battery negative. One node of each such island is tied down in the
// matrix so that it stays regular, and its nodes are reported as NaN: against battery
// negative they have no voltage. Between them there is one where a further battery is
// cut off with them; see apart.
func (n *Network) findIslands() {
	for i := range n.group {
		n.group[i] = int32(i)
	}
	n.active = n.active[:0]
	for b := range n.laws {
		if n.conducts(b) {
			n.active = append(n.active, int32(b))
			n.unite(n.from[b], n.to[b])
		}
	}
	n.anchors = n.anchors[:0]
	for i := range n.group {
		root := n.root(int32(i))
		n.floating[i] = root != 0
		if n.floating[i] && root == int32(i) {
			n.anchors = append(n.anchors, root)
		}
	}
}

// apart gives the islands that hold a source; nil = none does.
func (n *Network) apart() *apart {
	var alive []int32
	for _, b := range n.active {
		k := n.plan.circuit.Branches
		if int(b) < len(k) && (k[b].Kind == circuit.BatteryBranch || k[b].Kind == circuit.OutputBranch) && n.floating[n.from[b]] {
			alive = append(alive, n.root(n.from[b]))
		}
	}
	if len(alive) == 0 {
		return nil
	}
	a := &apart{v: slices.Clone(n.v), island: make([]int32, len(n.v))}
	for i := range a.island {
		if a.island[i] = n.root(int32(i)); !slices.Contains(alive, a.island[i]) {
			a.island[i] = -1
		}
	}
	return a
}

// conducts tells whether a branch is there and closed.
func (n *Network) conducts(b int) bool {
	if n.forced[b] != 0 {
		return n.forced[b] > 0
	}
	return n.present[b] && (!n.isContact(b) || n.closed[b])
}

// unite joins two groups; the lower node leads, so node 0 leads its own.
func (n *Network) unite(a, b int32) {
	a, b = n.root(a), n.root(b)
	if a > b {
		a, b = b, a
	}
	n.group[b] = a
}

func (n *Network) root(i int32) int32 {
	for n.group[i] != i {
		n.group[i] = n.group[n.group[i]]
		i = n.group[i]
	}
	return i
}
