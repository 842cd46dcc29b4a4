package sizing

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Kind is what is chosen.
type Kind string

// The kinds of choices.
const (
	WireSize  Kind = "wire"
	Fuse      Kind = "fuse"
	RelayForm Kind = "relay"
	BlockType Kind = "block"
	RunCover  Kind = "cover"
	CrimpPart Kind = "terminal"
	Plug      Kind = "plug"

	ChargerType Kind = "charger"
)

// noCover is the file's word for a bare run.
const noCover = "none"

// slot is one value left open, with its candidates in ascending order.
type slot struct {
	kind  Kind
	part  string      // name for people: "left lamp, return wire"
	owner design.Part // nil for covers
	pos   problem.Pos
	own   string   // of a wire, see home
	path  []string // of the record in the file: sections, names, list indices
	at    int      // candidate chosen
	lib   *library.Library

	// Wires.
	feeds []design.Feed
	role  circuit.Role
	also  []*slot // wires that take its size, see alike
	sizes []*library.WireSize

	fuses  []fuseCandidate
	mostA  float64 // larger ratings are not for choice; 0 = not known yet, see bound
	way    *design.Way
	block  *design.Block
	fuse   *design.Fuse
	relay  *design.Relay
	forms  []*library.RelayForm
	blocks []*library.BlockType
	run    *design.Run
	covers []*library.Cover // nil = bare
	plug   *design.Plugged
	plugs  []*library.Connector
	// sparkless: it stands in petrol vapour, and some candidate makes no spark there.
	sparkless bool
}

// fuseCandidate is a rating of a type.
type fuseCandidate struct {
	kind   *library.FuseType
	rating *library.FuseRating
	otherG float64 // of a type that is not the usual one, see noteUnable
}

// costG is what a fuse counts in grams of copper: its rating, since a smaller one
// protects more closely, what it breaks, and whether a shop has it.
func (c fuseCandidate) costG() float64 {
	amps := c.rating.RatingA
	switch {
	case amps < leastShopA:
		amps = rareA
	case amps == fewHaveA:
		amps = fewHaveAsA
	}
	return fuseGPerA*amps + fuseGPerKA*c.kind.BreakingA/1000 + c.otherG
}

// thickG is what a wire counts for its thickness.
func (s *slot) thickG(z int) float64 {
	return thickerG * math.Log2(max(s.sizes[z].AreaMm2/handyMm2, 1))
}

// count is how many candidates there are.
func (s *slot) count() int {
	return len(s.sizes) + len(s.fuses) + len(s.forms) + len(s.blocks) + len(s.covers) + len(s.plugs)
}

// set takes a candidate into the design.
func (s *slot) set(i int) {
	s.at = i
	switch s.kind {
	case WireSize:
		for _, x := range s.each() {
			for k := range x.feeds {
				setSize(&x.feeds[k].Wire, s.sizes[i], s.lib)
			}
		}
	case Fuse:
		c := s.fuses[i]
		if s.way != nil {
			s.way.FuseType, s.way.Fuse = c.kind, c.rating
		} else {
			s.fuse.Type, s.fuse.Rating = c.kind, c.rating
		}
	case RelayForm:
		s.relay.Form = s.forms[i]
	case BlockType:
		s.block.Type = s.blocks[i]
	case RunCover:
		s.run.Cover = s.covers[i]
	case Plug:
		s.plug.Plug = s.plugs[i]
	}
}

// setSize gives a wire a size and crimp parts of the kinds asked for.
func setSize(w *design.WireSpec, z *library.WireSize, lib *library.Library) {
	w.Size = z
	if w.FromKind != "" {
		w.FromEnd = lib.TerminalFor(w.FromKind, z.AreaMm2)
	}
	if w.ToKind != "" {
		w.ToEnd = lib.TerminalFor(w.ToKind, z.AreaMm2)
	}
}

// offers tells whether a fuse is small enough to be chosen.
func (s *slot) offers(i int) bool { return s.mostA == 0 || s.fuses[i].rating.RatingA <= s.mostA }

// label is a candidate as the file writes it.
func (s *slot) label(i int) string {
	switch s.kind {
	case WireSize:
		return s.sizes[i].Label
	case Fuse:
		text := quantity.Plain(s.fuses[i].rating.RatingA, quantity.Current)
		return s.fuses[i].kind.Name + " " + text
	case RelayForm:
		return s.forms[i].Name
	case BlockType:
		return s.blocks[i].Name
	case Plug:
		return s.plugs[i].Name
	}
	return coverName(s.covers[i])
}

func coverName(c *library.Cover) string {
	if c == nil {
		return noCover
	}
	return c.Name
}

// given is the candidate that the design has; -1 when it has none of them.
func (s *slot) given() int {
	for i := range s.count() {
		switch {
		case s.kind == WireSize && s.sizes[i] == s.feeds[0].Wire.Size,
			s.kind == Fuse && s.way != nil && s.fuses[i].rating == s.way.Fuse,
			s.kind == Fuse && s.way == nil && s.fuses[i].rating == s.fuse.Rating,
			s.kind == RelayForm && s.forms[i] == s.relay.Form,
			s.kind == BlockType && s.blocks[i] == s.block.Type,
			s.kind == RunCover && s.covers[i] == s.run.Cover,
			s.kind == Plug && s.plugs[i] == s.plug.Plug:
			return i
		}
	}
	return -1
}

// now is the value that the design has, as label gives it; "" when it gives
// figures alone.
func (s *slot) now() string {
	if i := s.given(); i >= 0 {
		return s.label(i)
	}
	return ""
}
