package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// home is where the design gives a wire: the part, and which of its wires.
type home struct {
	owner design.Part
	role  circuit.Role
}

// homeOf is the home of a wire of the circuit.
func homeOf(x *circuit.Wire) home {
	if x.Role == circuit.ReturnWire || x.Role == circuit.CoilReturnWire {
		return home{x.From.Part.Source, x.Role}
	}
	return home{x.To.Part.Source, x.Role}
}

// lead is the feeds or returns of one part; several share a wire of one size.
type lead struct {
	home
	section string // of the file
	feeds   *[]design.Feed
}

// leads are those of every part, in the order of the sections; a part's own
// stand together.
func leads(d *design.Design) []lead {
	var list []lead
	add := func(section string, owner design.Part, role circuit.Role, feeds *[]design.Feed) {
		list = append(list, lead{home{owner, role}, section, feeds})
	}
	for _, x := range d.Fuses {
		add("fuses", x, circuit.FeedWire, &x.FedBy)
	}
	for _, x := range d.Relays {
		add("relays", x, circuit.FeedWire, &x.FedBy)
		add("relays", x, circuit.ReturnWire, &x.Returns)
		add("relays", x, circuit.CoilFeedWire, &x.Coil.FedBy)
		add("relays", x, circuit.CoilReturnWire, &x.Coil.Returns)
	}
	for _, x := range d.Blocks {
		add("blocks", x, circuit.FeedWire, &x.FedBy)
	}
	for _, x := range d.Switches {
		add("switches", x, circuit.FeedWire, &x.FedBy)
	}
	for _, x := range d.Loads {
		add("loads", x, circuit.FeedWire, &x.FedBy)
		add("loads", x, circuit.ReturnWire, &x.Returns)
	}
	for _, x := range d.Grounds {
		add("grounds", x, circuit.ReturnWire, &x.Returns)
	}
	for _, x := range d.Splices {
		add("splices", x, circuit.FeedWire, &x.FedBy)
	}
	return list
}

// path leads to the record of a wire in the file.
func (l *lead) path() []string {
	path := []string{l.section, l.owner.PartName()}
	if l.role == circuit.CoilFeedWire || l.role == circuit.CoilReturnWire {
		path = append(path, "coil")
	}
	if l.section == "grounds" {
		return append(path, "wire")
	}
	return append(path, wireNames[l.role].key)
}

// wireNames are the words and keys of the wires of a part.
var wireNames = map[circuit.Role]struct{ word, key string }{
	circuit.FeedWire:       {"wire", "wire"},
	circuit.ReturnWire:     {"return wire", "return wire"},
	circuit.CoilFeedWire:   {"coil wire", "wire"},
	circuit.CoilReturnWire: {"coil return wire", "return wire"},
}
