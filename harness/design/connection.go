package design

import "gopkg.in/yaml.v3"

// connection is the feeds or returns of one part, or of a relay's coil, before
// their names are looked up.
type connection struct {
	owner Part
	of    where // what is fed: relay "keyed", or its coil
	feeds *[]Feed
	back  bool // a return
	after bool // the feed of a load in series: the load before it is named
	link  bool // the cables between batteries in series
	refs  []Text
	wire  *wireDraft // nil when not given
	// own are the wires of its own of each of refs, where each has one; feedOf has that of each feed.
	own    []*wireDraft
	feedOf []*wireDraft
}

// wireTo is the wire of a reference, by its place among refs.
func (c *connection) wireTo(i int) *wireDraft {
	if i < len(c.own) {
		return c.own[i]
	}
	return c.wire
}

// wireKey is the key of its wire.
func (c *connection) wireKey() string {
	switch {
	case c.back:
		return "return wire"
	case c.link:
		return linkKey
	}
	return "wire"
}

// verb says what it does with what it names.
func (c *connection) verb() string {
	if c.back {
		return "returns to"
	}
	return "is fed by"
}

// connection is the one that fills a list of feeds.
func (r *reader) connection(f field, feeds *[]Feed, back bool) *connection {
	c := r.byFeeds[feeds]
	if c == nil {
		c = &connection{owner: r.current, of: f.where, feeds: feeds, back: back}
		r.byFeeds[feeds] = c
		r.connections = append(r.connections, c)
	}
	return c
}

// feedKeys are the two keys of a supply: the parts that feed it, and the wire.
func feedKeys[X any](to func(*X) *[]Feed) []key[X] {
	return connectionKeys("fed by", "wire", false, to)
}

// eitherKeys are those of a part that stands in a feed or in a return.
func eitherKeys[X any](feeds, returns func(*X) *[]Feed) []key[X] {
	back := returnKeys(returns)
	back[0].Default = "it is in a feed"
	back[0].Doc = "in place of `fed by`, for one that is in a return: where the current goes on, as for a load"
	return append(feedKeys(feeds), back...)
}

// oneSide refuses a part of eitherKeys that says both, and the wire of the side on
// which it does not stand.
func (r *reader) oneSide(f field) {
	switch {
	case !f.has["returns to"]:
		if f.has["return wire"] {
			r.report(r.pos(f.node), f.where.String()+" has a return wire, but does not say where it returns", "returns to")
		}
	case f.has["fed by"]:
		r.report(r.pos(f.node), f.where.String()+" is in a feed and in a return: it says both where it is fed and "+
			"where it returns", "fed by or returns to; a two-pole switch as two of them")
	case f.has["wire"]:
		r.report(r.pos(f.node), f.where.String()+" is in a return, whose wire has another key", "return wire")
	}
}

// chosenInReturn refuses a part of a return that is left to sizing, which chooses none.
func (r *reader) chosenInReturn(f field, auto bool, key string) {
	if auto && f.has["returns to"] {
		r.report(r.pos(f.node), f.where.String()+" is in a return, where sizing chooses nothing", "its "+key)
	}
}

// returnsOf are the returns of a part that can stand in a return as well as in a feed; nil
// for others.
func returnsOf(p Part) *[]Feed {
	switch p := p.(type) {
	case *Fuse:
		return &p.Returns
	case *Relay:
		return &p.Returns
	case *Switch:
		return &p.Returns
	case *Diode:
		return &p.Returns
	case *DroppingResistor:
		return &p.Returns
	}
	return nil
}

// StandsInReturn tells whether a fuse, switch or relay stands in a return.
func StandsInReturn(p Part) bool {
	back := returnsOf(p)
	return back != nil && len(*back) > 0 && !rests(p)
}

// rests tells of a relay that stands in a feed and rests on a return.
func rests(p Part) bool {
	x, relay := p.(*Relay)
	return relay && x.Rests
}

func isGround(p Part) bool {
	_, ground := p.(*Ground)
	return ground
}

// inReturn tells whether a part stands in a return, a ground included.
func (r *reader) inReturn(p Part) bool {
	if isGround(p) {
		return true
	}
	c := r.byFeeds[returnsOf(p)]
	return c != nil && len(c.refs) > 0 && !rests(p)
}

// returnKeys are the two keys of a return.
func returnKeys[X any](to func(*X) *[]Feed) []key[X] {
	return connectionKeys("returns to", "return wire", true, to)
}

// eachWithWire reads a mapping of parts to the wires that come from them or lead to them.
func (r *reader) eachWithWire(c *connection, f field) {
	r.pairs(f.node, f.where, fold, func(name, value *yaml.Node) {
		t, ok := r.sentence(field{where: f.where, key: f.key, node: name}, 2*maxName)
		if !ok {
			return
		}
		w := &wireDraft{}
		w.spec.Pos, w.spec.Own = r.pos(name), t.Value
		c.refs, c.own = append(c.refs, t), append(c.own, w)
		if !isNothing(value) {
			readRecord(r, &wireSection, w, value, where{c.wireKey() + " between " + c.of.String() + " and", t.Value})
		}
	})
	if len(follow(f.node).Content) == 0 {
		r.report(r.pos(f.node), f.String()+" names nothing", f.want.expected())
	}
}

func connectionKeys[X any](name, wire string, back bool, to func(*X) *[]Feed) []key[X] {
	refs := Key{Name: name, Kind: KindFeeds, Example: "main",
		Doc: "what supplies it: a part, `block way`, `relay contact`, or `battery`; a list when several do"}
	spec := Key{Name: wire, Kind: KindRecord, Section: wireSection.Name, Default: "the `wire` section",
		Doc: "the wire that feeds it", Example: "{size: 1.5 mm², colour: YE}"}
	if back {
		refs.Kind, refs.Example = KindReturns, "frame stud"
		refs.Doc = "where its current goes back: a ground, `battery negative`, a fuse, switch or relay in the return, or of a motor that runs either way the other half of its reversing contactor"
		spec.Doc = "the wire of its return"
	}
	return []key[X]{
		{Key: refs, read: func(r *reader, x *X, f field) {
			c := r.connection(f, to(x), back)
			if follow(f.node).Kind == yaml.MappingNode {
				r.eachWithWire(c, f)
				return
			}
			c.refs = r.texts(f, 2*maxName)
		}},
		{Key: spec, read: func(r *reader, x *X, f field) {
			c := r.connection(f, to(x), back)
			c.wire = &wireDraft{}
			c.wire.spec.Pos = r.pos(f.node)
			readRecord(r, &wireSection, c.wire, f.node, f.inside())
		}},
	}
}
