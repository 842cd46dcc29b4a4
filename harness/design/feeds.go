package design

// Feeds are the lists of what feeds a part: its own first, then those of its coil.
func Feeds(p Part) []*[]Feed {
	switch x := p.(type) {
	case *Fuse:
		return []*[]Feed{&x.FedBy}
	case *Relay:
		return []*[]Feed{&x.FedBy, &x.Coil.FedBy}
	case *Block:
		return []*[]Feed{&x.FedBy}
	case *Switch:
		return []*[]Feed{&x.FedBy}
	case *Load:
		return []*[]Feed{&x.FedBy}
	case *Splice:
		return []*[]Feed{&x.FedBy}
	}
	return nil
}

// Returns is the list of what a part returns to; nil when it has none. A relay's is
// that of its coil.
func Returns(p Part) *[]Feed {
	switch x := p.(type) {
	case *Relay:
		return &x.Coil.Returns
	case *Load:
		return &x.Returns
	case *Ground:
		return &x.Returns
	}
	return nil
}
