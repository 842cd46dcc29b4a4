// Package labels is what is written at the parts and wires of one drawing, and the
// room that takes.
package labels

import (
	"cmp"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/schematic/solved"
	"fusewright/render/symbol"
)

// Labels is the manner of one drawing: what is written at parts and wires, and
// the room it takes.
type Labels struct {
	Design   *design.Design
	Circuit  *circuit.Circuit
	Wiring   *parts.Wiring
	Set      symbol.Set
	Signs    *sign.Signs
	Study    *solved.Values // nil on the usual drawing
	Lengths  string         // "ft", else metres
	Stacked  bool           // wire labels in two lines, for narrow paper
	Outlined bool           // frames round the places
	Detached bool           // coils and contacts of relays apart
}

// New is the manner of the design's sheet; set and relays may be "" or nil.
func New(c *circuit.Circuit, set symbol.Set, relays string, signs *sign.Signs) *Labels {
	of := c.Design
	if of == nil {
		of = &design.Design{}
	}
	l := &Labels{Design: of, Circuit: c, Wiring: parts.WiringOf(c), Set: set, Signs: signs, Lengths: of.Sheet.Lengths,
		Outlined: of.Sheet.PlaceBoxes, Detached: cmp.Or(relays, of.Sheet.Relays) == "detached"}
	if l.Set == nil {
		l.Set = symbol.SetByName(of.Sheet.Symbols)
	}
	return l
}
