package design

// Feeds are the lists of what feeds a part: its own first, then those of its coil.
func Feeds(p Part) []*[]Feed {
	switch x := p.(type) {
	case *BatteryPart:
		return []*[]Feed{&x.Store.FedBy}
	case *Bank:
		return []*[]Feed{&x.FedBy}
	case *Fuse:
		return []*[]Feed{&x.FedBy}
	case *Relay:
		return []*[]Feed{&x.FedBy, &x.Coil.FedBy}
	case *Block:
		return []*[]Feed{&x.FedBy}
	case *Switch:
		return []*[]Feed{&x.FedBy}
	case *Diode:
		return []*[]Feed{&x.FedBy}
	case *DroppingResistor:
		return []*[]Feed{&x.FedBy}
	case *Charger:
		return []*[]Feed{&x.FedBy}
	case *Load:
		return []*[]Feed{&x.FedBy}
	case *Charging:
		return []*[]Feed{&x.FedBy}
	case *Splice:
		return []*[]Feed{&x.FedBy}
	}
	return nil
}

// Returns are the lists of what a part returns to: its own first, then those of its coil.
func Returns(p Part) []*[]Feed {
	switch x := p.(type) {
	case *Bank:
		return []*[]Feed{&x.Returns}
	case *Fuse:
		return []*[]Feed{&x.Returns}
	case *Relay:
		return []*[]Feed{&x.Returns, &x.Coil.Returns}
	case *Switch:
		return []*[]Feed{&x.Returns}
	case *Diode:
		return []*[]Feed{&x.Returns}
	case *DroppingResistor:
		return []*[]Feed{&x.Returns}
	case *Charger:
		return []*[]Feed{&x.Returns}
	case *Load:
		return []*[]Feed{&x.Returns}
	case *Charging:
		return []*[]Feed{&x.Returns}
	case *Ground:
		return []*[]Feed{&x.Returns}
	}
	return nil
}
