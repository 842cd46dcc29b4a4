package design

// connection is the feeds or returns of one part, or of a relay's coil, before
// their names are looked up.
type connection struct {
	owner Part
	of    where // what is fed: relay "keyed", or its coil
	feeds *[]Feed
	back  bool // a return
	refs  []Text
	wire  *wireDraft // nil when not given
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

// returnKeys are the two keys of a return.
func returnKeys[X any](to func(*X) *[]Feed) []key[X] {
	return connectionKeys("returns to", "return wire", true, to)
}

func connectionKeys[X any](name, wire string, back bool, to func(*X) *[]Feed) []key[X] {
	refs := Key{Name: name, Kind: KindFeeds, Example: "main",
		Doc: "what supplies it: a part, `block way`, `relay contact`, or `battery`; a list when several do"}
	spec := Key{Name: wire, Kind: KindRecord, Section: wireSection.Name, Default: "the `wire` section",
		Doc: "the wire that feeds it", Example: "{size: 1.5 mm², colour: YE}"}
	if back {
		refs.Kind, refs.Example = KindReturns, "frame stud"
		refs.Doc = "where its current goes back: a ground or `battery negative`; of a motor that runs either way, the other half of its reversing contactor"
		spec.Doc = "the wire of its return"
	}
	return []key[X]{
		{Key: refs, read: func(r *reader, x *X, f field) {
			r.connection(f, to(x), back).refs = r.texts(f, 2*maxName)
		}},
		{Key: spec, read: func(r *reader, x *X, f field) {
			c := r.connection(f, to(x), back)
			c.wire = &wireDraft{}
			c.wire.spec.Pos = r.pos(f.node)
			readRecord(r, &wireSection, c.wire, f.node, f.inside())
		}},
	}
}
