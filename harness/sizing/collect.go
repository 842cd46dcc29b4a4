package sizing

import (
	"strconv"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Open tells whether a design leaves anything to be chosen. It is quick.
func Open(d *design.Design) bool { return len(collect(d)) > 0 || endsOpen(d) }

// endsOpen tells whether a design asks for crimp parts by `auto`.
func endsOpen(d *design.Design) bool {
	for _, list := range everyWire(d) {
		for _, f := range list {
			if f.Wire.FromAuto || f.Wire.ToAuto {
				return true
			}
		}
	}
	return false
}

// collector gathers the slots of a design in the order of its sections.
type collector struct {
	d     *design.Design
	slots []*slot
}

// collect lists everything left open.
func collect(d *design.Design) []*slot {
	c := &collector{d: d}
	for i, r := range d.Runs {
		if r.CoverAuto {
			c.add(&slot{kind: RunCover, part: r.Name, pos: r.Pos, run: r, covers: covers(d, r),
				path: []string{"runs", strconv.Itoa(i)}})
		}
	}
	fewCovers(d, c.slots)
	for _, x := range d.Fuses {
		if x.TypeAuto || x.RatingAuto {
			c.add(&slot{kind: Fuse, part: x.Name, owner: x, pos: x.Pos, fuse: x,
				fuses: fuseCandidates(d, x), path: []string{"fuses", x.Name}})
		}
		c.wire("fuses", x, circuit.FeedWire, x.FedBy)
	}
	for _, x := range d.Relays {
		c.relay(x)
	}
	for _, x := range d.Blocks {
		c.block(x)
	}
	for _, x := range d.Switches {
		c.plug("switches", x)
		c.wire("switches", x, circuit.FeedWire, x.FedBy)
	}
	for _, x := range d.Loads {
		c.plug("loads", x)
		c.wire("loads", x, circuit.FeedWire, x.FedBy)
		c.wire("loads", x, circuit.ReturnWire, x.Returns)
	}
	for _, x := range d.Grounds {
		c.wire("grounds", x, circuit.ReturnWire, x.Returns)
	}
	for _, x := range d.Splices {
		c.wire("splices", x, circuit.FeedWire, x.FedBy)
	}
	return c.slots
}

func (c *collector) add(s *slot) {
	s.lib = c.d.Library
	if s.count() > 0 {
		c.slots = append(c.slots, s)
	}
}

func (c *collector) relay(x *design.Relay) {
	if x.FormAuto {
		c.add(&slot{kind: RelayForm, part: x.Name, owner: x, pos: x.Pos, relay: x,
			forms: forms(c.d, x), path: []string{"relays", x.Name}})
	}
	c.wire("relays", x, circuit.FeedWire, x.FedBy)
	c.wire("relays", x, circuit.CoilFeedWire, x.Coil.FedBy)
	c.wire("relays", x, circuit.CoilReturnWire, x.Coil.Returns)
}

func (c *collector) block(x *design.Block) {
	if x.TypeAuto {
		c.add(&slot{kind: BlockType, part: x.Name, owner: x, pos: x.Pos, block: x,
			blocks: blockTypes(c.d, x), path: []string{"blocks", x.Name}})
	}
	for _, w := range x.Ways {
		if w.FuseAuto {
			c.add(&slot{kind: Fuse, part: x.Name + " " + w.Number, owner: x, pos: w.Pos, way: w, block: x,
				fuses: ratingsOf(w.FuseType), path: []string{"blocks", x.Name, "ways", w.Number}})
		}
	}
	c.wire("blocks", x, circuit.FeedWire, x.FedBy)
}

// plug adds the connector family of a part.
func (c *collector) plug(section string, owner design.Pluggable) {
	p := owner.PlugSpec()
	if p.PlugAuto {
		c.add(&slot{kind: Plug, part: owner.PartName(), owner: owner, pos: owner.PartPos(), plug: p,
			plugs: families(c.d, p), path: []string{section, owner.PartName()}})
	}
}

// wireNames are the words and keys of the wires of a part.
var wireNames = map[circuit.Role]struct{ word, key string }{
	circuit.FeedWire:       {"wire", "wire"},
	circuit.ReturnWire:     {"return wire", "return wire"},
	circuit.CoilFeedWire:   {"coil wire", "wire"},
	circuit.CoilReturnWire: {"coil return wire", "return wire"},
}

// wire adds the wire of a feed or return. Several feeds of one part share it.
func (c *collector) wire(section string, owner design.Part, role circuit.Role, feeds []design.Feed) {
	if len(feeds) == 0 || !feeds[0].Wire.SizeAuto || feeds[0].Wire.Type == nil {
		return
	}
	names := wireNames[role]
	path := []string{section, owner.PartName()}
	if role == circuit.CoilFeedWire || role == circuit.CoilReturnWire {
		path = append(path, "coil")
	}
	key := names.key
	if section == "grounds" {
		key = "wire"
	}
	w := feeds[0].Wire
	c.add(&slot{kind: WireSize, part: owner.PartName() + ", " + names.word, owner: owner, pos: w.Pos,
		feeds: feeds, role: role, sizes: w.Type.Sizes, path: append(path, key)})
}

// fuseCandidates are the ratings of the type given, or of every fuse type, the
// usual one first; a rating given narrows them to it.
func fuseCandidates(d *design.Design, x *design.Fuse) []fuseCandidate {
	var list []fuseCandidate
	types := []*library.FuseType{x.Type}
	if x.TypeAuto {
		for _, t := range d.Library.FuseTypes {
			if t.Kind == "fuse" && t != x.Type {
				types = append(types, t)
			}
		}
	}
	for _, t := range types {
		for _, c := range ratingsOf(t) {
			if x.RatingAuto || x.Rating != nil && c.rating.RatingA == x.Rating.RatingA {
				list = append(list, c)
			}
		}
	}
	return list
}

func ratingsOf(t *library.FuseType) []fuseCandidate {
	if t == nil {
		return nil
	}
	list := make([]fuseCandidate, len(t.Ratings))
	for i, r := range t.Ratings {
		list[i] = fuseCandidate{t, r}
	}
	return list
}

// forms are the relay forms with a coil that may stay live on the system and the
// contacts in use, weakest contact first.
func forms(d *design.Design, x *design.Relay) []*library.RelayForm {
	var list []*library.RelayForm
	for _, f := range d.Library.RelayForms {
		if f.CoilV == d.SystemV.Value && f.Changeover == usesBreak(d, x) && f.CoilOnS == 0 {
			list = append(list, f)
		}
	}
	if len(list) == 0 && x.Form != nil {
		list = append(list, x.Form)
	}
	return ascending(list, func(f *library.RelayForm) float64 { return f.MakeA })
}

// usesBreak tells whether anything hangs on a relay's break contact.
func usesBreak(d *design.Design, x *design.Relay) bool {
	for _, list := range allFeeds(d) {
		for _, f := range list {
			if f.From.Part == design.Part(x) && f.From.Terminal == "87a" {
				return true
			}
		}
	}
	return false
}

// allFeeds are the feeds of every part.
func allFeeds(d *design.Design) [][]design.Feed {
	var out [][]design.Feed
	for _, x := range d.Fuses {
		out = append(out, x.FedBy)
	}
	for _, x := range d.Relays {
		out = append(out, x.FedBy, x.Coil.FedBy)
	}
	for _, x := range d.Blocks {
		out = append(out, x.FedBy)
	}
	for _, x := range d.Switches {
		out = append(out, x.FedBy)
	}
	for _, x := range d.Loads {
		out = append(out, x.FedBy)
	}
	for _, x := range d.Splices {
		out = append(out, x.FedBy)
	}
	return out
}

// everyWire are the feeds and returns of every part.
func everyWire(d *design.Design) [][]design.Feed {
	out := allFeeds(d)
	for _, x := range d.Relays {
		out = append(out, x.Coil.Returns)
	}
	for _, x := range d.Loads {
		out = append(out, x.Returns)
	}
	for _, x := range d.Grounds {
		out = append(out, x.Returns)
	}
	return out
}

// blockTypes are the blocks with ways enough that take the fuses of the ways;
// those sealed as the place asks first, then by ways and total current.
func blockTypes(d *design.Design, x *design.Block) []*library.BlockType {
	fused := false
	var given *library.FuseType
	for _, w := range x.Ways {
		fused = fused || w.Fuse != nil || w.FuseAuto
		if !w.TypeAuto && w.FuseType != nil {
			given = w.FuseType
		}
	}
	wet := x.At != nil && x.At.Wet
	var list []*library.BlockType
	for _, t := range d.Library.Blocks {
		takes := d.Library.FuseType(t.FuseType)
		if t.Ways < len(x.Ways) || fused != (takes != nil) || given != nil && takes != given {
			continue
		}
		list = append(list, t)
	}
	return ascending(list, func(t *library.BlockType) float64 {
		rank := float64(t.Ways)*1e4 + t.TotalA
		if t.Sealed != wet {
			rank += 1e7
		}
		return rank
	})
}

// families are the connector families of the contacts that the ends of the
// wires ask for, smallest current first.
func families(d *design.Design, p *design.Plugged) []*library.Connector {
	var list []*library.Connector
	for _, f := range d.Library.Connectors {
		if p.PlugKind == "" || p.PlugKind == f.PinKind {
			list = append(list, f)
		}
	}
	return ascending(list, func(f *library.Connector) float64 { return f.MaxA })
}
