package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// other is the node at the far side of a branch.
func other(b *circuit.Branch, n *circuit.Node) *circuit.Node {
	if b.A == n {
		return b.B
	}
	return b.A
}

// flood marks the nodes joined to start through branches that admit lets
// through, in either direction; of diodes in theirs.
func (f *facts) flood(start *circuit.Node, admit func(*circuit.Branch) bool) []bool {
	return f.floodBy([]*circuit.Node{start}, passing(admit))
}

func passing(admit func(*circuit.Branch) bool) func(*circuit.Branch, *circuit.Node) bool {
	return func(b *circuit.Branch, from *circuit.Node) bool { return b.Passes(from) && admit(b) }
}

// floodBy is flood from several nodes, by the node from which a branch is met too.
func (f *facts) floodBy(start []*circuit.Node, admit func(*circuit.Branch, *circuit.Node) bool) []bool {
	reached := make([]bool, len(f.c.Nodes))
	for _, n := range start {
		reached[n.Index] = true
	}
	queue := slices.Clone(start)
	for len(queue) > 0 {
		n := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for _, b := range n.Branches {
			m := other(b, n)
			if m == nil || reached[m.Index] || !admit(b, n) {
				continue
			}
			reached[m.Index] = true
			queue = append(queue, m)
		}
		if out := f.c.Gives(n); out != nil && !reached[out.Index] {
			reached[out.Index] = true
			queue = append(queue, out)
		}
	}
	return reached
}

// below visits the branches downstream of a node, each node once: wires from
// source to load and metal inside parts in its A to B direction. Visit returns
// false to stop at a branch.
func (f *facts) below(start *circuit.Node, visit func(*circuit.Branch) bool) {
	f.markNumber++
	f.mark[start.Index] = f.markNumber
	queue := []*circuit.Node{start}
	for len(queue) > 0 {
		n := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for _, b := range n.Branches {
			if b.A != n || b.Kind == circuit.BatteryBranch || b.Kind == circuit.ChargerBranch ||
				!visit(b) || !b.Feeds() || f.mark[b.B.Index] == f.markNumber {
				continue
			}
			f.mark[b.B.Index] = f.markNumber
			queue = append(queue, b.B)
		}
		for _, b := range n.Turns() {
			visit(b)
		}
	}
}

// drawsBelow lists the branches that draw downstream of a node: accessories
// and relay coils; of loads in series the first, whose current is that of all.
func (f *facts) drawsBelow(start *circuit.Node) []*circuit.Branch {
	var list []*circuit.Branch
	f.below(start, func(b *circuit.Branch) bool {
		if b.Load != nil && !b.Load.Standby && !slices.ContainsFunc(list, b.InSeries) || f.coils[b] != nil {
			list = append(list, b)
		}
		return true
	})
	slices.SortFunc(list, func(a, b *circuit.Branch) int { return a.Index - b.Index })
	return slices.Compact(list) // a motor that runs either way is met from both ends
}

// drawsOf lists what draws through a fuse or contact: what is below it, or of one that
// stands in a return what returns through it; of a contact that a motor rests on, the motor.
func (f *facts) drawsOf(b *circuit.Branch) []*circuit.Branch {
	switch {
	case b.Rests():
		return f.drawsBelow(b.A)
	case b.Returns():
		return f.c.DrawsBack(b)
	}
	return f.drawsBelow(b.B)
}

// names lists part names of branches without repeats, by the alphabet.
func names(branches []*circuit.Branch) []string {
	var list []string
	for _, b := range branches {
		if b.Part != nil {
			list = append(list, b.Part.Name)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}
