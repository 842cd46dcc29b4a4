package circuit

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// draft is a wire before it has its number.
type draft struct {
	from, to *Terminal
	role     Role
	feed     design.Feed
	number   string
}

// addWires makes the wires of all feeds and returns in the order of their numbers
// and gives each its branch.
func (b *builder) addWires() {
	slices.SortStableFunc(b.drafts, func(x, y draft) int {
		return design.Number{Label: x.number}.Compare(design.Number{Label: y.number})
	})
	for i := range b.drafts {
		b.addWire(&b.drafts[i])
	}
	b.joints()
}

// draftWires lists the wires in design order, behind the links of batteries in series.
func (b *builder) draftWires() {
	for _, p := range b.c.Parts {
		switch src := p.Source.(type) {
		case *design.BatteryPart:
			b.feeds(p, "+", FeedWire, src.Store.FedBy)
		case *design.Bank:
			b.feeds(p, "+", FeedWire, src.FedBy)
			b.returns(p, "-", ReturnWire, src.Returns)
		case *design.Charging:
			b.feeds(p, "B+", FeedWire, src.FedBy)
			b.returns(p, "B-", ReturnWire, src.Returns)
		case *design.Fuse:
			b.feeds(p, "in", FeedWire, src.FedBy)
			b.returns(p, "out", ReturnWire, src.Returns)
		case *design.Relay:
			if in := p.Inlet(); in != nil {
				b.feeds(p, in.Name, FeedWire, src.FedBy)
			}
			back := "87a"
			if p.InReturn {
				back = "30"
			}
			b.returns(p, back, ReturnWire, src.Returns)
			b.feeds(p, "86", CoilFeedWire, src.Coil.FedBy)
			b.returns(p, "85", CoilReturnWire, src.Coil.Returns)
		case *design.Block:
			b.feeds(p, "in", FeedWire, src.FedBy)
		case *design.Switch:
			b.feeds(p, "in", FeedWire, src.FedBy)
			b.returns(p, "out", ReturnWire, src.Returns)
		case *design.Diode:
			b.feeds(p, "in", FeedWire, src.FedBy)
			b.returns(p, "out", ReturnWire, src.Returns)
		case *design.DroppingResistor:
			b.feeds(p, "in", FeedWire, src.FedBy)
			b.returns(p, "out", ReturnWire, src.Returns)
		case *design.Charger:
			b.feeds(p, "+", FeedWire, src.FedBy)
			b.returns(p, "-", ReturnWire, src.Returns)
		case *design.Splice:
			b.feeds(p, "1", FeedWire, src.FedBy)
		case *design.Load:
			b.feeds(p, "+", FeedWire, src.FedBy)
			b.returns(p, "-", ReturnWire, src.Returns)
		case *design.Ground:
			b.returns(p, "31", ReturnWire, src.Returns)
		}
	}
}

func (b *builder) feeds(p *Part, to string, role Role, list []design.Feed) {
	for _, f := range list {
		if from := b.other(p, f.From); from != nil {
			b.drafts = append(b.drafts, draft{from: from, to: p.Terminal(to), role: role, feed: f})
		}
	}
}

func (b *builder) returns(p *Part, from string, role Role, list []design.Feed) {
	for _, f := range list {
		if to := b.other(p, f.From); to != nil {
			b.drafts = append(b.drafts, draft{from: p.Terminal(from), to: to, role: role, feed: f})
		}
	}
}

// other is the terminal that a reference names.
func (b *builder) other(p *Part, ref design.Ref) *Terminal {
	var t *Terminal
	switch src := ref.Part.(type) {
	case nil:
	case *design.BatteryPart:
		t = b.battery.Terminal("+")
	case *design.NegativePart:
		t = b.battery.Terminal("-")
	default:
		if q := b.parts[src]; q != nil {
			t = q.outlet(ref.Terminal)
			if q.InReturn && ref.Terminal == "" {
				t = q.named(partKinds[q.Kind].in) // the side of the load
			}
		}
	}
	if t == nil {
		b.report(ref.Pos, fmt.Sprintf("%s %q is connected to %q, which the circuit does not have",
			p.Kind, p.Name, ref.Text), "a part and one of its outputs")
	}
	return t
}

// wireOrder counts the wires as one would follow them with a finger: from the
// battery outward along the feeds, each branch to its end before the next, in
// design order; then from the taps; then whatever nothing feeds; then the
// returns in design order. A wire added at the end of a branch leaves the
// numbers before it alone.
func (b *builder) wireOrder() []int {
	out := make([][]int, len(b.c.Nodes)) // feed wires by the node they leave
	for i, w := range b.drafts {
		if w.role == FeedWire || w.role == CoilFeedWire {
			out[w.from.Node.Index] = append(out[w.from.Node.Index], i)
		}
	}
	order := make([]int, 0, len(b.drafts))
	seen := make([]bool, len(b.c.Nodes))
	follow := func(start *Node) {
		stack := []int{} // drafts to number next, the top first
		reach := func(n *Node) {
			var next []int
			for _, n := range onward(n) {
				if !seen[n.Index] {
					seen[n.Index] = true
					next = append(next, out[n.Index]...)
				}
			}
			for i := len(next) - 1; i >= 0; i-- {
				stack = append(stack, next[i])
			}
		}
		reach(start)
		for len(stack) > 0 {
			i := stack[len(stack)-1]
			stack = stack[:len(stack)-1]
			order = append(order, i)
			reach(b.drafts[i].to.Node)
		}
	}
	follow(b.c.Nodes[1])
	for _, p := range b.c.Parts {
		if p.Kind == Tap {
			follow(p.Terminals[0].Node)
		}
	}
	for _, w := range b.drafts { // parts that nothing feeds, and what they feed
		follow(w.from.Node)
	}
	for i, w := range b.drafts {
		if w.role == ReturnWire || w.role == CoilReturnWire {
			order = append(order, i)
		}
	}
	for i, w := range b.drafts {
		if w.role == LinkWire {
			order = append(order, i)
		}
	}
	return order
}

// onward is a node and those that the parts at it pass its current on to: the
// output of a fuse, the contacts of a relay, the ways of a block.
func onward(n *Node) []*Node {
	nodes := []*Node{n}
	for _, t := range n.Terminals {
		switch {
		case t.Part.Kind == Load && t.Name == "+" && t.Part.Source.(*design.Load).Next != nil:
			nodes = append(nodes, t.Part.Terminal("-").Node)
		case t.Part.Kind == Fuse && t.Name == "in",
			(t.Part.Kind == Switch || t.Part.Kind == Diode || t.Part.Kind == Resistor) && t.Name == "in",
			t.Part.Kind == Charger && t.Name == "+",
			t.Part.Kind == Relay && t == t.Part.Inlet(),
			t.Part.Kind == Block && t.Name == "in":
			for _, out := range t.Part.Terminals {
				if out.Node != n && out.Name != "86" && out.Name != "85" && out.Name != "-" {
					nodes = append(nodes, out.Node)
				}
			}
		}
	}
	return nodes
}

// addWire makes a numbered wire; its length comes later.
func (b *builder) addWire(d *draft) {
	w := &Wire{Index: len(b.c.Wires), Number: d.number, Role: d.role, From: d.from, To: d.to, Spec: d.feed.Wire,
		Pos: d.feed.From.Pos}
	w.FromEnd = b.end(w.Spec.FromEnd, d.from.Kind, w.Spec.Size)
	w.ToEnd = b.end(w.Spec.ToEnd, d.to.Kind, w.Spec.Size)
	w.EndsOhm = endOhm(w.FromEnd) + endOhm(w.ToEnd)
	b.c.Wires = append(b.c.Wires, w)
	d.from.Wires = append(d.from.Wires, w)
	d.to.Wires = append(d.to.Wires, w)
	w.Branch = b.join(WireBranch, d.from.Node, d.to.Node, 0)
	w.Branch.Wire, w.Branch.Name = w, w.Number
	if w.FromEnd == nil || w.ToEnd == nil {
		w.Branch.Assumed = "resistance of an end without a fitting crimp part"
	}
}

// end is the crimp part for a wire's end: the one given, else the library's
// first of the terminal's kind whose barrel takes the conductor; nil when the
// kind is not known or none fits.
func (b *builder) end(given *library.Terminal, kind string, size *library.WireSize) *library.Terminal {
	if given != nil {
		return given
	}
	if kind == "" || size == nil || b.lib == nil {
		return nil
	}
	key := crimp{kind, size.AreaMm2}
	t, ok := b.crimps[key]
	if !ok {
		t = b.lib.TerminalFor(kind, size.AreaMm2)
		b.crimps[key] = t
	}
	return t
}

// crimp is what a crimp part is looked up by.
type crimp struct {
	kind    string
	areaMm2 float64
}

func endOhm(t *library.Terminal) float64 {
	if t == nil {
		return EndOhm
	}
	return t.ContactOhm
}
