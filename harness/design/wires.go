package design

// WireCount is how many wires a design has: one for each feed and each return.
func (d *Design) WireCount() (n int) {
	n = len(d.Charging.FedBy) + len(d.Charging.Returns) + len(d.Battery.FedBy)
	for _, x := range d.Fuses {
		n += len(x.FedBy) + len(x.Returns)
	}
	for _, x := range d.Relays {
		n += len(x.FedBy) + len(x.Returns) + len(x.Coil.FedBy) + len(x.Coil.Returns)
	}
	for _, x := range d.Blocks {
		n += len(x.FedBy)
	}
	for _, x := range d.Switches {
		n += len(x.FedBy) + len(x.Returns)
	}
	for _, x := range d.Splices {
		n += len(x.FedBy)
	}
	for _, x := range d.Loads {
		n += len(x.FedBy) + len(x.Returns)
	}
	for _, x := range d.Grounds {
		n += len(x.Returns)
	}
	return n
}
