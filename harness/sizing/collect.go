package sizing

import (
	"slices"
	"sort"
	"strconv"

	"fusewright/harness/design"
	"fusewright/library"
)

// endsOpen tells whether a design asks for crimp parts by `auto`.
func endsOpen(d *design.Design) bool {
	return slices.ContainsFunc(leads(d), func(l lead) bool {
		return slices.ContainsFunc(*l.feeds, func(f design.Feed) bool { return f.Wire.FromAuto || f.Wire.ToAuto })
	})
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
	var last design.Part
	for _, l := range leads(d) {
		if l.owner != last {
			c.own(l)
			last = l.owner
		}
		c.wire(l)
	}
	for _, x := range d.Partings {
		c.own(lead{home: home{owner: x}, section: "partings"})
	}
	return c.slots
}

// collectAnew is collect with the usual types of fuses first, whatever was chosen before.
func collectAnew(d *design.Design) []*slot {
	for _, x := range d.Fuses {
		x.LeaveOpen(d.Library)
	}
	return collect(d)
}

func (c *collector) add(s *slot) {
	s.lib = c.d.Library
	if s.count() > 0 {
		c.slots = append(c.slots, s)
	}
}

// own adds what a part itself leaves open.
func (c *collector) own(l lead) {
	at := slot{part: l.owner.PartName(), owner: l.owner, pos: l.owner.PartPos(),
		path: []string{l.section, l.owner.PartName()}}
	switch x := l.owner.(type) {
	case *design.Fuse:
		if x.TypeAuto || x.RatingAuto {
			at.kind, at.fuse, at.fuses = Fuse, x, fuseCandidates(c.d, x)
			c.add(&at)
		}
	case *design.Relay:
		if x.FormAuto {
			at.kind, at.relay, at.forms = RelayForm, x, forms(c.d, x)
			c.add(&at)
		}
	case *design.Block:
		if x.TypeAuto {
			at.kind, at.block, at.blocks = BlockType, x, blockTypes(c.d, x)
			c.add(&at)
		}
		for _, w := range x.Ways {
			if w.FuseAuto {
				c.add(&slot{kind: Fuse, part: x.Name + " " + w.Number, owner: x, pos: w.Pos, way: w, block: x,
					fuses: ratingsOf(w.FuseType), path: append(slices.Clone(at.path), "ways", w.Number)})
			}
		}
	case design.Pluggable:
		if p := x.PlugSpec(); p.PlugAuto {
			at.kind, at.plug, at.plugs = Plug, p, families(c.d, p)
			c.add(&at)
		}
	}
}

// wire adds the wire of a feed or return. Several feeds of one part share it.
func (c *collector) wire(l lead) {
	feeds := *l.feeds
	if len(feeds) == 0 || !feeds[0].Wire.SizeAuto || feeds[0].Wire.Type == nil {
		return
	}
	w := feeds[0].Wire
	sizes := w.Type.Sizes
	if !c.d.AllSizes {
		sizes = w.Type.ShopSizes()
	}
	if c.d.Afloat() && !w.Sheathed { // whatever little it carries, a wire of a coil as well
		sizes = slices.DeleteFunc(slices.Clone(sizes), func(z *library.WireSize) bool { return z.AreaMm2 < 0.995*c.d.Practice.MinMm2 })
	}
	name := l.owner.PartName() + ", " + wireNames[l.role].word
	if l.own != "" {
		name += " at " + l.own
	}
	c.add(&slot{kind: WireSize, part: name, own: l.own, owner: l.owner, pos: w.Pos,
		feeds: feeds, role: l.role, sizes: sizes, path: l.path()})
}

// fuseCandidates are the ratings of the type given, or of every fuse type, the
// usual one first; a rating given narrows them to it.
func fuseCandidates(d *design.Design, x *design.Fuse) []fuseCandidate {
	var list []fuseCandidate
	types := []*library.FuseType{x.Type}
	if x.TypeAuto {
		for _, t := range d.Library.FuseTypes {
			if t.Kind == "fuse" && t != x.Type && (!t.Afloat || d.Practice != nil && d.Practice.Afloat) {
				types = append(types, t)
			}
		}
	}
	for _, t := range types {
		for _, c := range ratingsOf(t) {
			if t != types[0] {
				c.otherG = otherTypeG
			}
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
		list[i] = fuseCandidate{kind: t, rating: r}
	}
	return list
}

// forms are the relay forms with a coil that may stay live on the system and the
// contacts in use, reversing or sensing ones for one that is, weakest contact first.
func forms(d *design.Design, x *design.Relay) []*library.RelayForm {
	var list []*library.RelayForm
	reversing, senses := x.Form != nil && x.Form.Reversing, x.Form != nil && x.Form.Senses
	coilV, breaks := d.CoilV(x), usesBreak(d, x)
	for _, f := range d.Library.RelayForms {
		if f.CoilV == coilV && (f.Changeover == breaks || reversing) && f.Reversing == reversing && f.Bistable == x.Latches && f.Senses == senses && (f.CoilOnS == 0 || x.Latches) {
			list = append(list, f)
		}
	}
	if len(list) == 0 && x.Form != nil {
		list = append(list, x.Form)
	}
	return ascending(list, func(f *library.RelayForm) float64 { return f.MakeA })
}

// usesBreak tells whether anything hangs on a relay's break contact, or rests on it.
func usesBreak(d *design.Design, x *design.Relay) bool {
	return x.Rests || slices.ContainsFunc(leads(d), func(l lead) bool {
		return slices.ContainsFunc(*l.feeds, func(f design.Feed) bool {
			return f.From.Part == design.Part(x) && f.From.Terminal == "87a"
		})
	})
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
		if t.Ways < x.Needs() || fused != (takes != nil) || given != nil && takes != given {
			continue
		}
		list = append(list, t)
	}
	list = ratedFor(d, list)
	return ascending(list, func(t *library.BlockType) float64 {
		rank := float64(t.Ways)*1e4 + t.TotalA
		if t.Sealed != wet {
			rank += 1e7
		}
		return rank
	})
}

// ratedFor leaves out blocks whose fuses are not rated for the system's voltage, while there
// are others.
func ratedFor(d *design.Design, list []*library.BlockType) []*library.BlockType {
	rated := slices.DeleteFunc(slices.Clone(list), func(t *library.BlockType) bool {
		f := d.Library.FuseType(t.FuseType)
		return f != nil && f.MaxV > 0 && f.MaxV < d.HighestV()
	})
	if len(rated) == 0 {
		return list
	}
	return rated
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

// ascending sorts by a figure and leaves equal ones in their order.
func ascending[T any](list []T, by func(T) float64) []T {
	sort.SliceStable(list, func(i, j int) bool { return by(list[i]) < by(list[j]) })
	return list
}
