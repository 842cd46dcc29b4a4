package design

import (
	"fmt"
	"strings"

	"fusewright/harness/problem"

	"gopkg.in/yaml.v3"
)

// The names that every design has without saying so.
const (
	BatteryName  = "battery"          // the positive post, in feeds
	NegativeName = "battery negative" // the negative post, in returns
)

// common lets the reader reach what all parts share.
func (c *Common) common() *Common { return c }

// partPtr is a pointer to a kind of part.
type partPtr[X any] interface {
	*X
	Part
	common() *Common
}

// partsKey reads the named parts of one kind.
func partsKey[X any, P partPtr[X]](k Key, s *section[X], list func(*Design) *[]*X) key[Design] {
	return namedKey(k, s, func(r *reader, d *Design, name string, n *yaml.Node) *X {
		x := new(X)
		c := P(x).common()
		c.Name, c.Pos = name, r.pos(n)
		if !r.define(s.Name, P(x)) {
			return nil
		}
		r.current = P(x)
		*list(d) = append(*list(d), x)
		return x
	})
}

// define takes a name for a part, or reports why it cannot have it.
func (r *reader) define(kind string, p Part) bool {
	name := fold(p.PartName())
	switch first, taken := r.names[name]; {
	case name == BatteryName || name == NegativeName:
		r.report(p.PartPos(), fmt.Sprintf("%s %s: the name is built in", kind, quoted(p.PartName())),
			"another name")
		return false
	case taken:
		r.add(problem.Problem{Pos: p.PartPos(), Also: &first.pos,
			What: fmt.Sprintf("%s %s: the name is already taken", kind, quoted(p.PartName()))})
		return false
	case len(r.parts) == maxParts:
		r.report(p.PartPos(), fmt.Sprintf("more than %d parts", maxParts), "a design of ordinary size")
		return false
	case len(r.parts) > maxParts:
		return false
	}
	r.names[name] = namedPart{p, p.PartPos()}
	r.parts = append(r.parts, p)
	return true
}

// commonKeys are the keys that every part has.
func commonKeys[X any, P partPtr[X]]() []key[X] {
	return []key[X]{
		placeKey(Key{Name: "at", Doc: "the place where it stands; without it, the wires to it need " +
			"a length", Example: "under seat"},
			func(x *X) **Place { return &P(x).common().At }),
		textKey[X](Key{Name: "label", Doc: "longer wording for drawings and lists",
			Default: "the name", Example: "left auxiliary lamp"}, nil).labelled(func(x *X, s string) { P(x).common().Label = s }),
		textKey(Key{Name: "stays live", Doc: "why it may be live with the key off; the check then " +
			"takes it as meant", Example: `"bilge pump must run unattended"`},
			func(x *X) *Text { return &P(x).common().StaysLive }),
	}
}

// labelled turns a text key into one that keeps the words alone.
func (k key[T]) labelled(to func(*T, string)) key[T] {
	k.read = func(r *reader, t *T, f field) {
		if s, ok := r.sentence(f, maxName); ok {
			to(t, s.Value)
		}
	}
	return k
}

// withCommon puts the keys of all parts behind a kind's own.
func withCommon[X any, P partPtr[X]](own ...key[X]) []key[X] {
	return append(own, commonKeys[X, P]()...)
}

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
	refs := Key{Name: name, Kind: kindFeeds, Example: "main",
		Doc: "what supplies it: a part, `block way`, `relay contact`, or `battery`; a list when several do"}
	spec := Key{Name: wire, Kind: kindRecord, Section: wireSection.Name, Default: "the `wire` section",
		Doc: "the wire that feeds it", Example: "{size: 1.5 mm², colour: YE}"}
	if back {
		refs.Kind, refs.Example = kindReturns, "frame stud"
		refs.Doc = "where its current goes back: a ground or `battery negative`"
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

// resolveConnections looks up the names of all feeds and returns.
func (r *reader) resolveConnections() {
	r.checkOutputNames()
	battery := &BatteryPart{Common{Name: BatteryName, At: r.d.Battery.At, Pos: r.d.Battery.Pos}}
	negative := &NegativePart{Common{Name: NegativeName, At: r.d.Battery.At, Pos: r.d.Battery.Pos}}
	r.names[BatteryName] = namedPart{battery, battery.Pos}
	r.names[NegativeName] = namedPart{negative, negative.Pos}
	if r.unplacedBattery {
		r.unplaced[battery], r.unplaced[negative] = true, true
	}
	for _, c := range r.connections {
		seen := map[string]bool{}
		for _, text := range c.refs {
			ref, ok := r.resolve(c, text)
			if !ok {
				continue
			}
			if id := ref.Part.PartName() + "\x00" + ref.Terminal; seen[id] {
				r.report(text.Pos, fmt.Sprintf("%s is connected to %s twice", c.of, quoted(text.Value)), "")
				continue
			} else {
				seen[id] = true
			}
			*c.feeds = append(*c.feeds, Feed{From: ref})
		}
	}
}

// checkOutputNames reports a part whose name reads like a terminal of another.
func (r *reader) checkOutputNames() {
	for _, p := range r.parts {
		for _, out := range outputs(p) {
			if other, ok := r.names[fold(p.PartName()+" "+out)]; ok && out != "" {
				first := p.PartPos()
				r.add(problem.Problem{Pos: other.pos, Also: &first,
					What: fmt.Sprintf("the name %s also means terminal %s of %s",
						quoted(other.part.PartName()), out, quoted(p.PartName()))})
			}
		}
	}
}

// outputs are the terminals of a part that can feed another; one empty name
// stands for a part with a single output, none for a part that feeds nothing.
func outputs(p Part) []string {
	switch p := p.(type) {
	case *Relay:
		if p.Form != nil && !p.Form.Changeover {
			return []string{"87"}
		}
		return []string{"87", "87a"}
	case *Block:
		names := make([]string, len(p.Ways))
		for i, w := range p.Ways {
			names[i] = w.Number
		}
		return names
	case *Load, *Ground, *NegativePart:
		return nil
	}
	return []string{""}
}

// resolve finds the part and terminal that a feed or return names.
func (r *reader) resolve(c *connection, text Text) (Ref, bool) {
	ref := Ref{Text: text.Value, Pos: text.Pos}
	if found, ok := r.names[fold(text.Value)]; ok {
		ref.Part = found.part
	} else if at := strings.LastIndexByte(text.Value, ' '); at > 0 {
		if found, ok := r.names[fold(text.Value[:at])]; ok {
			ref.Part, ref.Terminal = found.part, text.Value[at+1:]
		}
	}
	switch {
	case ref.Part == nil:
		r.unknown(text.Pos, fmt.Sprintf("%s: nothing is named %s", c.of, quoted(text.Value)),
			text.Value, r.targets(c.back))
		return ref, false
	case c.back:
		return ref, r.checkReturn(c, ref)
	}
	return r.checkFeed(c, ref)
}

// targets are the names that a feed or return could mean.
func (r *reader) targets(back bool) []string {
	var names []string
	if back {
		for _, g := range r.d.Grounds {
			names = append(names, g.Name)
		}
		return append(names, NegativeName)
	}
	for _, p := range r.parts {
		for _, out := range outputs(p) {
			names = append(names, strings.TrimSpace(p.PartName()+" "+out))
		}
		if _, ok := p.(*Relay); ok {
			names = append(names, p.PartName())
		}
	}
	return append(names, BatteryName)
}

// checkReturn accepts grounds and the negative post.
func (r *reader) checkReturn(c *connection, ref Ref) bool {
	switch ref.Part.(type) {
	case *Ground, *NegativePart:
		if ref.Terminal == "" {
			return true
		}
		r.report(ref.Pos, fmt.Sprintf("%s: a ground has no terminals, but %s names one", c.of,
			quoted(ref.Text)), "such as "+ref.Part.PartName())
		return false
	}
	r.report(ref.Pos, fmt.Sprintf("%s returns to %s, which is %s", c.of, quoted(ref.Text),
		kindOf(ref.Part)), oneOf(r.targets(true)))
	return false
}

// checkFeed accepts parts with outputs and gives the terminal its full name.
func (r *reader) checkFeed(c *connection, ref Ref) (Ref, bool) {
	outs := outputs(ref.Part)
	if len(outs) == 0 {
		if b, ok := ref.Part.(*Block); ok {
			r.report(ref.Pos, fmt.Sprintf("%s is fed by block %s, which has no ways", c.of,
				quoted(b.Name)), "a way in the block")
			return ref, false
		}
		r.report(ref.Pos, fmt.Sprintf("%s is fed by %s, which is %s", c.of, quoted(ref.Text),
			kindOf(ref.Part)), "a part that passes current on")
		return ref, false
	}
	relay, isRelay := ref.Part.(*Relay)
	if isRelay && ref.Terminal == "" {
		ref.Terminal = "87"
	}
	for _, out := range outs {
		if out == ref.Terminal {
			return ref, r.checkWay(c, ref)
		}
	}
	switch {
	case ref.Terminal == "":
		r.report(ref.Pos, fmt.Sprintf("%s is fed by block %s, but by which way", c.of,
			quoted(ref.Text)), oneOf(prefixed(ref.Part.PartName(), outs)))
	case isRelay && relay.Form != nil:
		r.report(ref.Pos, fmt.Sprintf("%s: relay %s (%s) has no contact %s", c.of,
			quoted(relay.Name), relay.Form.Name, quoted(ref.Terminal)), oneOf(outs))
	case outs[0] == "":
		r.report(ref.Pos, fmt.Sprintf("%s: %s has a single output, but %s names one", c.of,
			quoted(ref.Part.PartName()), quoted(ref.Text)), ref.Part.PartName())
	default:
		r.unknown(ref.Pos, fmt.Sprintf("%s: %s has no output %s", c.of, quoted(ref.Part.PartName()),
			quoted(ref.Terminal)), "", prefixed(ref.Part.PartName(), outs))
	}
	return ref, false
}

// checkWay refuses a way that is set down as spare.
func (r *reader) checkWay(c *connection, ref Ref) bool {
	b, ok := ref.Part.(*Block)
	if !ok {
		return true
	}
	for _, w := range b.Ways {
		if w.Number == ref.Terminal && w.Spare {
			also := w.Pos
			r.add(problem.Problem{Pos: ref.Pos, Also: &also, Expected: "a way with a fuse, or none",
				What: fmt.Sprintf("%s is fed by %s, which is spare", c.of, quoted(ref.Text))})
			return false
		}
	}
	return true
}

func prefixed(name string, outs []string) []string {
	list := make([]string, len(outs))
	for i, out := range outs {
		list[i] = name + " " + out
	}
	return list
}

// kindOf says what a part is, with its article.
func kindOf(p Part) string {
	switch p.(type) {
	case *Tap:
		return "a tap"
	case *Fuse:
		return "a fuse"
	case *Relay:
		return "a relay"
	case *Block:
		return "a block"
	case *Switch:
		return "a switch"
	case *Load:
		return "a load"
	case *Ground:
		return "a ground"
	case *Splice:
		return "a splice"
	case *NegativePart:
		return "the battery's negative post"
	}
	return "the battery's positive post"
}
