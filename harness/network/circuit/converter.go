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
		if in := t.Part.Converter(); in != nil && in.A == n {
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

// Converter is the load that a converter is to what feeds it; nil of others, chargers too.
func (p *Part) Converter() *Branch {
	if in := p.Converts(); in != nil && in.OfCharger().Converts() {
		return in
	}
	return nil
}

// SourceA is what the current of a load is to the system's battery: behind a converter what that takes
// for it, at nominal volts.
func (c *Circuit) SourceA(fed *Branch, amps float64) float64 {
	if p := c.ConverterOf(fed.A); p != nil {
		t := p.Output().OfCharger().Type
		return amps * t.Volts / (t.InputV * t.Efficiency)
	}
	return amps
}
