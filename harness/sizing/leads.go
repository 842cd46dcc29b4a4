package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// home is where the design gives a wire: the part, and which of its wires.
type home struct {
	owner design.Part
	role  circuit.Role
	own   string // what it comes from or leads to, where each feed has a wire of its own
}

// homeOf is the home of a wire of the circuit.
func homeOf(x *circuit.Wire) home {
	if x.Role == circuit.ReturnWire || x.Role == circuit.CoilReturnWire {
		return home{x.From.Part.Source, x.Role, x.Spec.Own}
	}
	return home{x.To.Part.Source, x.Role, x.Spec.Own}
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
	var apart []*design.Charging
	if d.Charging.Apart() {
		apart = append(apart, &d.Charging)
	}
	var first []*design.BatteryPart
	if len(d.Battery.FedBy) > 0 {
		first = append(first, d.Battery.Post)
	}
	return slices.Concat(leadsOf("fuses", d.Fuses), leadsOf("relays", d.Relays), leadsOf("blocks", d.Blocks),
		leadsOf("switches", d.Switches), leadsOf("diodes", d.Diodes), leadsOf("resistors", d.Resistors), leadsOf("loads", d.Loads), leadsOf("grounds", d.Grounds), leadsOf("splices", d.Splices),
		leadsOf("batteries", d.Batteries), leadsOf("chargers", d.Chargers), leadsOf("charging", apart), leadsOf("battery", first))
}

func leadsOf[P design.Part](section string, parts []P) (list []lead) {
	for _, p := range parts {
		feeds, returns := design.Feeds(p), design.Returns(p)
		for i, roles := range [][2]circuit.Role{{circuit.FeedWire, circuit.ReturnWire}, {circuit.CoilFeedWire, circuit.CoilReturnWire}} {
			if i < len(feeds) {
				list = append(list, leadsTo(p, roles[0], section, feeds[i])...)
			}
			if i < len(returns) {
				list = append(list, leadsTo(p, roles[1], section, returns[i])...)
			}
		}
	}
	return list
}

// leadsTo are the feeds or returns of a part: together, or each by itself where each has a wire
// of its own.
func leadsTo(p design.Part, role circuit.Role, section string, feeds *[]design.Feed) (list []lead) {
	if len(*feeds) == 0 || (*feeds)[0].Wire.Own == "" {
		return []lead{{home{owner: p, role: role}, section, feeds}}
	}
	for i := 0; i < len(*feeds); {
		own, n := (*feeds)[i].Wire.Own, i
		for n < len(*feeds) && (*feeds)[n].Wire.Own == own {
			n++
		}
		some := (*feeds)[i:n:n]
		list, i = append(list, lead{home{p, role, own}, section, &some}), n
	}
	return list
}

// path leads to the record of a wire in the file.
func (l *lead) path() []string {
	path := []string{l.section}
	if l.section != "charging" && l.section != "battery" { // a record, not one of several
		path = append(path, l.owner.PartName())
	}
	if l.role == circuit.CoilFeedWire || l.role == circuit.CoilReturnWire {
		path = append(path, "coil")
	}
	if l.own != "" {
		return append(path, wireNames[l.role].from, l.own)
	}
	if l.section == "grounds" {
		return append(path, "wire")
	}
	return append(path, wireNames[l.role].key)
}

// wireNames are the words and keys of the wires of a part, and the keys of what they come from
// or lead to.
var wireNames = map[circuit.Role]struct{ word, key, from string }{
	circuit.FeedWire:       {"wire", "wire", "fed by"},
	circuit.ReturnWire:     {"return wire", "return wire", "returns to"},
	circuit.CoilFeedWire:   {"coil wire", "wire", "fed by"},
	circuit.CoilReturnWire: {"coil return wire", "return wire", "returns to"},
}
