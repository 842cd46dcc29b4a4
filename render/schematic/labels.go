package schematic

import (
	"cmp"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/symbol"
)

// labels is the manner of one drawing: what is written at parts and wires, and
// the room it takes.
type labels struct {
	design   *design.Design
	circuit  *circuit.Circuit
	wiring   *wiring
	set      symbol.Set
	signs    *flags
	study    *study // nil on the usual drawing
	lengths  string // "ft", else metres
	stacked  bool   // wire labels in two lines, for narrow paper
	outlined bool   // frames round the places
	detached bool   // coils and contacts of relays apart
}

// newLabels is the manner of the design's sheet; set and relays may be "" or nil.
func newLabels(c *circuit.Circuit, set symbol.Set, relays string, signs *flags) *labels {
	of := c.Design
	if of == nil {
		of = &design.Design{}
	}
	l := &labels{design: of, circuit: c, wiring: wiringOf(c), set: set, signs: signs, lengths: of.Sheet.Lengths,
		outlined: of.Sheet.PlaceBoxes, detached: cmp.Or(relays, of.Sheet.Relays) == "detached"}
	if l.set == nil {
		l.set = symbol.SetByName(of.Sheet.Symbols)
	}
	return l
}
