package circuit

import "fusewright/harness/design"

// branchKind is what everything downstream goes by; package solve has the laws.
type branchKind struct {
	name string
	// feeds tells whether a branch carries current outward from the source, A to B;
	// returns, whether it takes current back, A to B. Nil = none does.
	feeds, returns func(*Branch) bool
}

// branchKinds has a row for each kind of branch.
var branchKinds = [BranchKinds]branchKind{
	WireBranch:    {"wire", func(b *Branch) bool { return !b.Wire.Role.Returns() && b.Wire.Role != LinkWire }, func(b *Branch) bool { return b.Wire.Role.Returns() }},
	ContactBranch: {"contact", inFeed, inReturn},
	FuseBranch:    {"fuse", inFeed, inReturn},
	ResistorBranch: {"resistor", func(b *Branch) bool {
		return b.Part != nil && b.Part.Kind == Block || b.OfLead() || b.Dropper() && inFeed(b)
	},
		func(b *Branch) bool { return b.Part != nil && b.Part.Kind == Ground || b.Dropper() && inReturn(b) }},
	DiodeBranch:   {"diode", inFeed, inReturn},
	LoadBranch:    {"load", (*Branch).FlowsOn, nil},
	BatteryBranch: {"battery", nil, nil},
	ChargerBranch: {"charging", nil, nil},
	OutputBranch:  {"charger output", nil, nil},
}

// inReturn tells of what stands in a return, and of the contact on which a half of a
// reversing contactor rests.
func inReturn(b *Branch) bool { return b.Part != nil && b.Part.InReturn || b.Rests() }

func inFeed(b *Branch) bool { return !inReturn(b) }

// Rests tells of the contact on which a half of a reversing contactor rests: it takes
// current back.
func (b *Branch) Rests() bool {
	return b.Closer != nil && b.Closer.Break != nil && b.Part != nil && b.Part.rests()
}

// rests tells of a half of a reversing contactor.
func (p *Part) rests() bool {
	r, ok := p.Source.(*design.Relay)
	return ok && r.Rests
}

// String is the word for a kind of branch.
func (k BranchKind) String() string { return branchKinds[k].name }

// Feeds tells whether a branch carries current outward from the source, A to B:
// feed wires, fuses and contacts that stand in a feed, links of blocks, leads of accessories. Loads, coils, returns, frame
// paths and sources do not.
func (b *Branch) Feeds() bool {
	f := branchKinds[b.Kind].feeds
	return f != nil && f(b)
}

// Returns tells whether a branch takes current back to battery negative, A to
// B: return wires, frame paths, and the fuses and contacts that stand in a return.
func (b *Branch) Returns() bool {
	f := branchKinds[b.Kind].returns
	return f != nil && f(b)
}

// Conductor tells whether a branch joins its nodes to one conductor (contacts:
// when closed), unlike loads, coils, suppressors and sources.
func (b *Branch) Conductor() bool { return b.Kind != LoadBranch && (b.Feeds() || b.Returns()) }

// Passes tells whether current can flow through a branch away from one of its ends: a
// diode passes it one way.
func (b *Branch) Passes(from *Node) bool {
	return b.Diode == nil || b.Diode.Reversed == (from == b.B)
}

// OfCoil tells whether a branch is a relay's coil or its suppressor.
func (b *Branch) OfCoil() bool {
	return b.Kind == ResistorBranch && b.Part != nil && b.Part.Kind == Relay
}

// OfLead tells whether a branch is the lead that an accessory comes with.
func (b *Branch) OfLead() bool {
	return b.Kind == ResistorBranch && b.Part != nil && b.Part.Kind == Load
}

// IsCoil tells whether a branch is a relay's coil.
func (b *Branch) IsCoil() bool { return b.OfCoil() && b == b.Part.Coil() }

// Senses tells of the coil of a relay that closes by the voltage of its own feed, which only
// charging brings.
func (b *Branch) Senses() bool {
	if b.Part == nil || !b.IsCoil() {
		return false
	}
	r, ok := b.Part.Source.(*design.Relay)
	return ok && r.Form != nil && r.Form.Senses
}

// Returns tells whether a wire of the role brings current back.
func (r Role) Returns() bool { return r == ReturnWire || r == CoilReturnWire }

// partKind is what a kind of part is like. Terminals go by name; "" = it has none
// such.
type partKind struct {
	in, out   string // where it takes its feed, and what a feed or return from it means
	hot, back string // ends of what draws in it
	end       string // kind of its terminals when the type is not known; "" = always known
}

// first stands for the first terminal, whatever its name; way for the only way of
// a block that has no more.
const first, way = "first", "way"

// partKinds has a row for each kind of part. Fuses and relays always have a type;
// vehicle loads take no wire of the design, nor connectors, which part wires.
var partKinds = map[Kind]partKind{
	Battery:      {in: "+", out: "+", end: PostEnd},
	Bank:         {in: "+", out: "+", end: PostEnd},
	Generator:    {in: "B+", out: "B+", end: PostEnd},
	VehicleLoads: {},
	Tap:          {out: "out", end: LeadEnd},
	Fuse:         {in: "in", out: "out"},
	Relay:        {in: "30", out: "87", hot: "86", back: "85"},
	Block:        {in: "in", out: way, end: WayEnd},
	Switch:       {in: "in", out: "out", end: LeadEnd},
	Diode:        {in: "in", out: "out"},
	Resistor:     {in: "in", out: "out", end: LeadEnd},
	Charger:      {in: "+", out: "out", hot: "+", back: "-", end: LeadEnd},
	Load:         {in: "+", out: "+", hot: "+", back: "-", end: LeadEnd},
	Ground:       {out: first, end: GroundEnd},
	Connector:    {},
	Splice:       {in: first, out: first, end: LeadEnd},
}

// named is a terminal of a row; nil when the part has none such.
func (p *Part) named(name string) *Terminal {
	switch at := p.Terminals; {
	case name == first && len(at) > 0:
		return at[0]
	case name == way && len(at) == 2:
		return at[1]
	case name == first, name == way:
		return nil
	}
	return p.Terminal(name)
}

// Inlet is the terminal at which a part takes its feed, of a relay that of its
// contacts; nil for parts that take none, as those in a return.
func (p *Part) Inlet() *Terminal {
	switch {
	case p.InReturn:
		return nil
	case p.rests():
		return p.Terminal("87")
	}
	return p.named(partKinds[p.Kind].in)
}

// outlet is the terminal that a feed or return from a part means; nil when the
// part has no such terminal.
func (p *Part) outlet(name string) *Terminal {
	if name != "" {
		return p.Terminal(name)
	}
	return p.named(partKinds[p.Kind].out)
}

// Draws are the two ends of what draws in a part, an accessory or a relay's coil;
// ok is false for parts in which nothing does.
func (p *Part) Draws() (hot, back *Terminal, ok bool) {
	k := partKinds[p.Kind]
	if coil := p.Coil(); coil != nil && coil.Senses() {
		return nil, nil, false // milliamperes of electronics
	}
	hot, back = p.Terminal(k.hot), p.Terminal(k.back)
	return hot, back, hot != nil && back != nil
}

// usualEnd is the kind of a part's terminal when its type is not known; "" where
// it always is.
func usualEnd(kind Kind, terminal string) string {
	if kind == Block && terminal == "in" {
		return BusEnd
	}
	return partKinds[kind].end
}
