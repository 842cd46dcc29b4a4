package circuit

// Posts are the nodes of the posts of a battery, between which its branch drives; of batteries in
// series its links lie between too.
func (b *Branch) Posts() (plus, minus *Node) {
	if b.Part != nil {
		if t := b.Part.Terminal("-"); t != nil {
			return b.A, t.Node
		}
	}
	return b.A, b.B
}

// LinkWires are the cables between batteries in series that a part is; none of others.
func (p *Part) LinkWires() (list []*Wire) {
	for _, t := range p.Terminals {
		for _, w := range t.Wires {
			if w.Role == LinkWire && w.To == t {
				list = append(list, w)
			}
		}
	}
	return list
}

// LinkOhm is the resistance of the links of a battery, at 20 °C.
func (b *Branch) LinkOhm() (ohm float64) {
	if b.Part != nil {
		for _, w := range b.Part.LinkWires() {
			ohm += w.Branch.Ohm
		}
	}
	return ohm
}
