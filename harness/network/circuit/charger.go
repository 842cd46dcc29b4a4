package circuit

import "fusewright/harness/design"

// addCharger makes the output of a charger and, of one that another battery feeds, the load
// that it is to that battery. Between the two there is no way for current: package solve
// makes the one follow the other. What the charger draws for itself hangs at its input, or
// else at what it charges.
func (b *builder) addCharger(x *design.Charger) {
	p := b.part(Charger, x, &x.Common)
	var in *Terminal
	if x.FromBattery() {
		in = b.terminal(p, "+", x.Type.End, nil)
	}
	out := b.terminal(p, "out", x.Type.End, nil)
	minus := b.c.Nodes[0]
	if len(x.Returns) > 0 {
		minus = nil
	}
	minus = b.terminal(p, "-", x.Type.End, minus).Node
	b.branch(p, OutputBranch, out.Node, minus, ChargerOhm).Assumed = "regulation of a charger"
	own := out.Node
	spec := LoadSpec{Behaves: design.ConstantPower, PowerW: x.Input.PowerW, RatedV: x.Input.RatedV, Duty: 1, Load: x.Input}
	if in != nil {
		own = in.Node
		b.branch(p, LoadBranch, in.Node, minus, 0).Load = &spec
	}
	if a := x.Input.StandbyA.Value; a > 0 {
		b.branch(p, LoadBranch, own, minus, 0).Load = &LoadSpec{Behaves: design.Resistor, PowerW: a * spec.RatedV, RatedV: spec.RatedV,
			Duty: 1, Load: x.Input, Standby: true}
	}
}

// OfCharger is the charger of which a branch is the input or output; nil = of none.
func (b *Branch) OfCharger() *design.Charger {
	if b.Part == nil || b.Part.Kind != Charger {
		return nil
	}
	x, _ := b.Part.Source.(*design.Charger)
	return x
}

// Output is the output of a charger; nil of other parts.
func (p *Part) Output() *Branch {
	if p.Kind != Charger {
		return nil
	}
	return p.Branches[0]
}

// Converts is the load that a charger is to the battery that feeds it; nil of others.
func (p *Part) Converts() *Branch {
	if p.Kind == Charger && len(p.Branches) > 1 && !p.Branches[1].Load.Standby {
		return p.Branches[1]
	}
	return nil
}

// charged is the post that a charger's output leads to first; nil when it leads to none.
func (c *Circuit) charged(n *Node) *Node {
	seen := map[*Node]bool{n: true}
	for queue := []*Node{n}; len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].feeds {
			if seen[b.B] {
				continue
			}
			if c.flow.source[b.B.Index] {
				return b.B
			}
			seen[b.B] = true
			queue = append(queue, b.B)
		}
	}
	return nil
}

// Charged is the further battery that a charger's output leads to first; nil when it leads to
// none.
func (c *Circuit) Charged(charger *Part) *design.Bank {
	post := c.charged(charger.Output().A)
	if post == nil {
		return nil
	}
	for _, t := range post.Terminals {
		if bank, ok := t.Part.Source.(*design.Bank); ok {
			return bank
		}
	}
	return nil
}
