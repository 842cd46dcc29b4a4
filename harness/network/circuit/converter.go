package circuit

import "fusewright/harness/design"

// findConverters finds what each converter feeds: the loads of another voltage than the system's.
func (c *Circuit) findConverters() {
	for _, p := range c.Parts {
		if x, ok := p.Source.(*design.Charger); !ok || p.Kind != Charger || !x.Converts() {
			continue
		}
		if c.flow.converter == nil {
			c.flow.converter = make([]*Part, len(c.Nodes))
		}
		c.convert(p, p.Output().A)
	}
}

func (c *Circuit) convert(p *Part, n *Node) {
	if c.flow.converter[n.Index] != nil {
		return
	}
	c.flow.converter[n.Index] = p
	for _, b := range n.feeds {
		c.convert(p, b.B)
	}
	for _, b := range n.Branches {
		if b.A == n && b.Load != nil && len(b.String) > 0 { // what is in series behind it
			c.convert(p, b.B)
		}
	}
}

// ConverterOf is the converter that feeds a node; nil = none does: it has the system's voltage.
func (c *Circuit) ConverterOf(n *Node) *Part {
	if c.flow.converter == nil {
		return nil
	}
	return c.flow.converter[n.Index]
}

// NominalAt is the nominal voltage of what is fed at a node: the system's, or that of the
// converter which feeds it.
func (c *Circuit) NominalAt(n *Node) float64 {
	if p := c.ConverterOf(n); p != nil {
		return p.Output().OfCharger().Type.Volts
	}
	return c.Design.NominalV()
}

// HighestAt is the highest voltage of ordinary use at a node; see design.HighestV.
func (c *Circuit) HighestAt(n *Node) float64 {
	if p := c.ConverterOf(n); p != nil {
		return p.Output().OfCharger().HeldV()
	}
	return c.Design.HighestV()
}

// Gives is the output of a converter that takes its power at a node; nil = none does.
func (c *Circuit) Gives(n *Node) *Node {
	if c.flow.converter == nil {
		return nil
	}
	for _, t := range n.Terminals {
		if in := t.Part.Converts(); in != nil && in.A == n && in.OfCharger().Converts() {
			return t.Part.Output().A
		}
	}
	return nil
}

// begins tells of the nodes at which feeds begin: the posts of batteries, the outputs of converters.
func (c *Circuit) begins(n *Node) bool {
	if c.IsPost(n) {
		return true
	}
	p := c.ConverterOf(n)
	return p != nil && p.Output().A == n
}
