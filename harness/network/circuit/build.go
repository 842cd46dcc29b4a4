package circuit

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// Build makes the network of a design that read without problems. The error is
// a problem.List: wires without a size, wires between places that no run joins
// and without a length, feeds of parts that are not in the design, circuits
// that feed themselves. The circuit is nil then. The time grows with the number
// of wires, plus the number of places times the number of runs.
func Build(d *design.Design) (*Circuit, error) {
	if d.Library == nil {
		return BuildBy(d, nil)
	}
	return BuildBy(d, conductor.NewRater(d.Library, d.Practice))
}

// BuildBy is Build with a rater of the design's library and practice that remembers
// from circuit to circuit; nil without a library.
func BuildBy(d *design.Design, rater *conductor.Rater) (*Circuit, error) {
	b := &builder{c: &Circuit{Design: d}, lib: d.Library, parts: map[design.Part]*Part{},
		crimps: map[crimp]*library.Terminal{}, colours: map[string]design.Colour{}}
	b.addParts()
	b.draftWires()
	b.number()
	b.addWires()
	b.fillPlugs()
	b.c.Link()
	b.c.findFans()
	b.checkLoops()
	b.layWires()
	b.colourWires() // before wires are cut in pieces of their colour
	b.fillConnectors()
	b.loadBundles()
	b.c.timeWires()
	if rater != nil {
		b.c.groupWires(rater)
	}
	if err := b.problems.Err(); err != nil {
		return nil, err
	}
	return b.c, nil
}

// checkLoops reports parts that feed themselves.
func (b *builder) checkLoops() {
	if len(b.c.flow.looped) == 0 {
		return
	}
	reported := map[*Part]bool{}
	for _, n := range b.c.flow.looped {
		for _, t := range n.Terminals {
			if !reported[t.Part] {
				reported[t.Part] = true
				b.report(t.Part.Pos, fmt.Sprintf("%s %q is in a circuit that feeds itself", t.Part.Kind,
					t.Part.Name), "a feed that comes from the source")
			}
		}
	}
}

func (b *builder) report(pos problem.Pos, what, expected string) {
	b.problems.Add(problem.Problem{Pos: pos, What: what, Expected: expected})
}

// node makes a new point of one potential.
func (b *builder) node(name string) *Node {
	n := &Node{Index: len(b.c.Nodes), Name: name}
	b.c.Nodes = append(b.c.Nodes, n)
	return n
}

// terminal adds a terminal to a part, on a node that it shares or, when n is
// nil, on one of its own. An empty kind is the usual one for the part.
func (b *builder) terminal(p *Part, name, kind string, n *Node) *Terminal {
	if n == nil {
		n = b.node("")
	}
	t := &Terminal{Part: p, Name: name, Node: n, Kind: kind}
	if kind == "" {
		t.Kind = usualEnd(p.Kind, name)
		t.KindAssumed = t.Kind != ""
	}
	p.Terminals = append(p.Terminals, t)
	n.Terminals = append(n.Terminals, t)
	return t
}

// branch adds an element of a part between two nodes.
func (b *builder) branch(p *Part, kind BranchKind, from, to *Node, ohm float64) *Branch {
	if kind != LoadBranch {
		ohm = max(ohm, LeastOhm)
	}
	br := b.join(kind, from, to, ohm)
	br.Part = p
	p.Branches = append(p.Branches, br)
	return br
}

// join adds an element between two nodes.
func (b *builder) join(kind BranchKind, from, to *Node, ohm float64) *Branch {
	br := &Branch{Index: len(b.c.Branches), Kind: kind, A: from, B: to, Ohm: ohm}
	b.c.Branches = append(b.c.Branches, br)
	from.Branches = append(from.Branches, br)
	to.Branches = append(to.Branches, br)
	return br
}
