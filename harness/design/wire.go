package design

import (
	"fmt"
	"regexp"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// WireSpec is what the design says of a wire; the reader fills what is left
// out from the defaults, so that Type, Size and Colour are set on every wire
// (Size stays nil only when the library has none, which is a problem).
type WireSpec struct {
	Type   *library.WireType
	Size   *library.WireSize
	Colour Colour
	// ColourAuto tells that the colour is left to package circuit: Colour is the usual one
	// until then.
	ColourAuto bool
	LengthM    Quantity // given length, else from the runs
	SlackM     Quantity // allowance per end
	Fitted     bool     // already there: neither cut nor bought
	// Parallel is how many equal conductors lie side by side, this one among them; 0 = it is alone.
	Parallel int
	Sheathed bool              // inside a sheath or conduit from end to end
	FromEnd  *library.Terminal // nil = by the part's terminal and the size
	ToEnd    *library.Terminal
	// SizeAuto tells that neither the wire nor the defaults give a size: Size is
	// then the practice's smallest until package sizing chooses. FromKind and
	// ToKind are the kinds of crimp parts asked for where no part is named.
	SizeAuto         bool
	FromKind, ToKind string
	// TypeAuto tells that neither names an insulation: Type is then the practice's usual
	// one until sizing chooses.
	TypeAuto bool
	// FromAuto and ToAuto tell that the design asks for a crimp part to be chosen.
	FromAuto, ToAuto bool
	// Own is what it comes from or leads to, as written, where each feed or return of its part has
	// a wire of its own.
	Own string
	Pos problem.Pos
}

// Colour is one or two colours: base and tracer.
type Colour struct {
	Base, Tracer *library.Colour // Tracer nil for one colour
}

// Code is the IEC 60757 code, such as "BK" or "YERD".
func (c Colour) Code() string {
	switch {
	case c.Base == nil:
		return ""
	case c.Tracer == nil:
		return c.Base.Code
	}
	return c.Base.Code + c.Tracer.Code
}

// wireDraft is a wire as the file describes it, before defaults.
type wireDraft struct {
	spec      WireSpec
	size      Text // label of the library, such as "1.5 mm²"
	auto      bool // size: auto
	hasColour bool
	returns   *Colour // of the defaults: colour of returns
	// returnsAuto: the defaults leave the colours of returns open.
	returnsAuto bool
	sizes       string // of the defaults: "all" or "shop"
	from, to    Text   // kinds of terminals asked for: "ring M6"
	fitted      *bool  // already there; nil = not said
	ownType     bool   // its insulation is not the defaults'
	// Where a crimp part of an end is named.
	fromPos, toPos problem.Pos
}

// MostParallel is how many wires side by side the format takes: more than that no terminal does.
const MostParallel = 4

// count is how many wires a connection makes of each part that it names.
func (w *wireDraft) count() int {
	if w == nil {
		return 1
	}
	return max(1, w.spec.Parallel)
}

// DefaultSlackM is the allowance per end when the design gives none: enough to
// cut an end off and crimp again (common practice, no source).
const DefaultSlackM = 0.05

// Default colours: red feeds and black returns (common practice, no source;
// IEC 60757 gives the codes).
const defaultFeedColour, defaultReturnColour = "RD", "BK"

var wireSection = section[wireDraft]{
	Section: Section{Name: "wire", Shape: KindRecord,
		Doc:     "One wire of a feed or return. What is left out comes from the `wire` section of the design.",
		Short:   "its size, or `auto`",
		Example: "wire: {size: 1.5 mm², colour: YERD, ends: {to: ring M6}}\n"},
	short: func(r *reader, w *wireDraft, f field) bool {
		if isNothing(f.node) {
			return false
		}
		f.key = "size"
		r.wireSize(w, f)
		return true
	},
	keys: append(wireKeys(),
		quantityKey(Key{Name: "length", Unit: quantity.Length, Min: 1e-3, Max: 200,
			Doc:     "length of the finished wire from terminal to terminal, slack included, when the runs do not give it; papers print the length to cut, which adds both strips, trimming and half the permitted over-length",
			Default: "the shortest way through the runs, and the slack of both ends"},
			func(w *wireDraft) *Quantity { return &w.spec.LengthM }),
		yesKey(Key{Name: "sheathed", Default: "no", Example: "yes",
			Doc: "inside a sheath or conduit from end to end; allows more wire before the first fuse in some practices"},
			func(w *wireDraft) *bool { return &w.spec.Sheathed }),
		numberKey(Key{Name: "parallel", Min: 2, Max: MostParallel, Default: "one", Example: "2", Whole: true,
			Doc: "so many equal wires side by side, of this size and length between the same terminals, that share the current; each is cut, crimped and labelled by itself"},
			func(w *wireDraft, n float64) { w.spec.Parallel = int(n) }),
		fittedWireKey(),
		recordKey(Key{Name: "ends", Doc: "crimp parts of its ends", Default: "by part and size",
			Example: "{from: ring M6, to: tab 6.3}"}, &endsSection,
			func(_ *reader, w *wireDraft, _ field) *wireDraft { return w })),
}

var wireDefaultsSection = section[wireDraft]{
	Section: Section{Name: "wire defaults", Shape: KindRecord,
		Doc:     "What holds for every wire that does not say otherwise.",
		Example: "wire: {insulation: ISO 6722 thin wall class B, size: 1 mm², colour: RD, return colour: BK}\n"},
	keys: append(wireKeys(),
		orAuto(key[wireDraft]{Key: Key{Name: "return colour", Kind: KindText, Default: defaultReturnColour + ", `auto` with `colour: auto`",
			Doc: "colour of returns: IEC 60757 code; `auto` is that of all returns, black", Example: "BK"},
			read: func(r *reader, w *wireDraft, f field) {
				if c, ok := r.colour(f); ok {
					w.returns = &c
				}
			}}, func(w *wireDraft) { w.returnsAuto = true }),
		choiceKey(Key{Name: "sizes", Choices: []string{"shop", "all"}, Default: "shop", Example: "all",
			Doc: "which conductor sizes sizing chooses from: those that a shop has by the metre, or all of the wire type"},
			func(w *wireDraft) *string { return &w.sizes })),
}

var endsSection = section[wireDraft]{
	Section: Section{Name: "ends", Shape: KindRecord,
		Doc:     "The crimp parts of a wire: `from` is the end towards the source, or, of a return, towards the load.",
		Example: "ends: {from: ring M6, to: tab 6.3}\n"},
	keys: []key[wireDraft]{
		endKey("from", func(w *wireDraft) (**library.Terminal, *Text) { return &w.spec.FromEnd, &w.from }),
		endKey("to", func(w *wireDraft) (**library.Terminal, *Text) { return &w.spec.ToEnd, &w.to }),
	},
}

// endKey reads a terminal's name or its kind; of a kind, the one that takes the
// wire is chosen when its size is known.
func endKey(name string, to func(*wireDraft) (**library.Terminal, *Text)) key[wireDraft] {
	k := Key{Name: name, Kind: KindLibrary, Library: "terminals", Example: "ring M6",
		Choices: []string{autoWord}, Default: "`auto`",
		Doc: "crimp part of this end: its name, or its kind alone; `auto` goes by the part and the size"}
	return key[wireDraft]{Key: k, read: func(r *reader, w *wireDraft, f field) {
		s, ok := r.sentence(f, maxName)
		if !ok {
			return
		}
		part, kind := to(w)
		if fold(s.Value) == autoWord {
			if name == "from" {
				w.spec.FromAuto = true
			} else {
				w.spec.ToAuto = true
			}
			return
		}
		if *part = lookup(r, "terminals", s.Value, r.lib.Terminal); *part != nil {
			if name == "from" {
				w.fromPos = s.Pos
			} else {
				w.toPos = s.Pos
			}
			return
		}
		kinds := r.lib.TerminalKinds()
		for _, k := range kinds {
			if fold(k) == fold(s.Value) {
				*kind = Text{k, s.Pos}
				return
			}
		}
		r.unknown(s.Pos, fmt.Sprintf("%s: the library has no %s", f, quoted(s.Value)), s.Value,
			append(kinds, r.lib.Names("terminals")...))
	}}
}

// chooseEnds finds the terminals of the kinds asked for that take the wire.
func (r *reader) chooseEnds(w *wireDraft, at where) {
	size := w.spec.Size
	for _, end := range []struct {
		kind Text
		to   **library.Terminal
		keep *string
	}{{w.from, &w.spec.FromEnd, &w.spec.FromKind}, {w.to, &w.spec.ToEnd, &w.spec.ToKind}} {
		if !end.kind.Given() || size == nil {
			continue
		}
		*end.keep = end.kind.Value
		*end.to = r.lib.TerminalFor(end.kind.Value, size.AreaMm2)
		if *end.to == nil && !w.spec.SizeAuto {
			r.report(end.kind.Pos, fmt.Sprintf("%s: no %s of the library takes %s", at,
				quoted(end.kind.Value), size.Label), "another kind of terminal, or another size")
		}
	}
}

// wireKeys are the keys that wires and the defaults of wires share.
func wireKeys() []key[wireDraft] {
	return []key[wireDraft]{
		{Key: Key{Name: "size", Kind: KindQuantity, Unit: quantity.Area, Example: "16 AWG",
			Choices: []string{autoWord}, Default: "`auto`",
			Doc: "conductor size, as the wire type has it; `auto` is chosen by sizing"},
			read: func(r *reader, w *wireDraft, f field) { r.wireSize(w, f) }},
		orAuto(key[wireDraft]{Key: Key{Name: "colour", Kind: KindText, Default: defaultFeedColour,
			Doc: "IEC 60757 code of one colour or of base and tracer, or the English names; `auto` is by what " +
				"the circuit serves, after the practice's colours in the library, with a tracer only where wires could be exchanged", Example: "YERD"},
			read: func(r *reader, w *wireDraft, f field) { w.spec.Colour, w.hasColour = r.colour(f) }},
			func(w *wireDraft) { w.spec.ColourAuto = true }),
		libraryKey(Key{Name: "insulation", Library: "wire types", Doc: "wire type; of wires of open size in a hot place sizing chooses a better one",
			Default: "by practice", Example: "ISO 6722 thin wall class B"},
			(*library.Library).WireType, func(w *wireDraft) **library.WireType { return &w.spec.Type }),
		quantityKey(Key{Name: "slack", Unit: quantity.Length, Min: 0, Max: 20,
			Doc:     "allowance at each end, on top of the runs",
			Default: quantity.Plain(DefaultSlackM, quantity.Length), Example: "60 mm"},
			func(w *wireDraft) *Quantity { return &w.spec.SlackM }),
	}
}

// wireSize reads a size to the library's spelling.
func (r *reader) wireSize(w *wireDraft, f field) {
	if isAuto(f.node) {
		w.auto = true
		return
	}
	s, ok := r.scalar(f, "a conductor size")
	if !ok {
		return
	}
	label, err := quantity.SizeLabel(s)
	if err != nil {
		r.add(quantityProblem(r.pos(f.node), f, err))
		return
	}
	if area, _ := quantity.Parse(label, quantity.Area); area < 0.01 || area > 500 { // own label parses
		r.report(r.pos(f.node), fmt.Sprintf("%s: %s is out of range", f, quoted(s)), "0.01 mm² to 500 mm²")
		return
	}
	w.size = Text{label, r.pos(f.node)}
}

// colour reads a colour code or the names of one or two colours.
func (r *reader) colour(f field) (Colour, bool) {
	s, ok := r.scalar(f, "a colour code, such as RD or YERD")
	if !ok {
		return Colour{}, false
	}
	c := lookup(r, "colours", s, func(s string) *Colour {
		base, tracer := r.lib.ColourPair(s)
		return &Colour{base, tracer}
	})
	if c.Base == nil {
		r.unknown(r.pos(f.node), fmt.Sprintf("%s: the library has no colour %s", f, quoted(s)), s,
			r.lib.Names("colours"))
		return Colour{}, false
	}
	return *c, true
}

// fillWires gives every wire its type, size, colour and slack.
func (r *reader) fillWires() {
	def := &r.defaults
	if def.spec.Type == nil {
		def.spec.Type, def.spec.TypeAuto = r.defaultWireType(), true
	}
	if !def.hasColour {
		def.spec.Colour.Base = r.lib.Colour(defaultFeedColour)
	}
	if def.returns == nil {
		def.returns = &Colour{Base: r.lib.Colour(defaultReturnColour)}
		def.returnsAuto = def.returnsAuto || def.spec.ColourAuto
	}
	if !def.spec.SlackM.Given() {
		def.spec.SlackM.Value = DefaultSlackM
	}
	r.chooseSize(def, where{kind: "wire"}, &wireDraft{})
	r.d.Wire, r.d.AllSizes = def.spec, def.sizes == "all"
	for _, c := range r.connections {
		if len(*c.feeds) > 0 {
			r.fillWire(c)
		}
	}
}

// fillWire completes the wire of one connection, or those of each of its feeds, and gives it to them.
func (r *reader) fillWire(c *connection) {
	def := &r.defaults
	shared := c.wire
	if shared == nil {
		shared = &wireDraft{}
	}
	r.complete(c, shared, def)
	done := map[*wireDraft]bool{}
	for i := range *c.feeds {
		f, w := &(*c.feeds)[i], c.feedOf[i]
		if w == nil || w.spec.Own == "" {
			w = shared
		} else if !done[w] {
			done[w] = true
			r.complete(c, w, shared)
		}
		f.Wire = w.spec
		if f.Wire.Pos.Line == 0 {
			f.Wire.Pos = f.From.Pos
		}
	}
}

// complete fills in what a wire leaves out from another.
func (r *reader) complete(c *connection, w, def *wireDraft) {
	name := c.wireKey()
	own := w.spec.Type != nil
	if w.ownType = own || def.ownType; !own {
		w.spec.Type, w.spec.TypeAuto = def.spec.Type, def.spec.TypeAuto
	}
	if !w.hasColour {
		w.spec.Colour, w.spec.ColourAuto = def.spec.Colour, w.spec.ColourAuto || def.spec.ColourAuto && (!c.back || def != &r.defaults)
		if c.back && def == &r.defaults {
			w.spec.Colour, w.spec.ColourAuto = *def.returns, w.spec.ColourAuto || def.returnsAuto
		}
	}
	if !w.spec.SlackM.Given() {
		w.spec.SlackM = def.spec.SlackM
	}
	at := where{name + " of " + c.of.kind, c.of.name}
	if w.size.Given() || w.auto || (own && w.spec.Type != def.spec.Type) {
		r.chooseSize(w, at, def)
	} else {
		w.spec.Size, w.spec.SizeAuto = def.spec.Size, def.spec.SizeAuto
	}
	w.spec.Sheathed = w.spec.Sheathed || w.spec.Type != nil && w.spec.Type.Cores > 0
	if def != &r.defaults { // of several feeds with wires of their own
		if !w.spec.LengthM.Given() {
			w.spec.LengthM = def.spec.LengthM
		}
		w.spec.Sheathed = w.spec.Sheathed || def.spec.Sheathed
	}
	r.chooseEnds(w, at)
}

// chooseSize finds the size of a wire in its type: the one given, else the
// default's. One left open has the practice's smallest until sizing chooses.
func (r *reader) chooseSize(w *wireDraft, at where, def *wireDraft) {
	t := w.spec.Type
	if t == nil {
		return // reported already
	}
	size := w.size
	if !size.Given() && !w.auto {
		size = def.size
	}
	if w.spec.SizeAuto = !size.Given(); w.spec.SizeAuto {
		least := 0.0
		if r.d.Practice != nil {
			least = r.d.Practice.MinMm2
		}
		if w.spec.Size = t.SizeFor(least); w.spec.Size == nil {
			r.report(w.spec.Pos, fmt.Sprintf("%s: %s has no size of %s or more", at, t.Name,
				quantity.Plain(least, quantity.Area)), oneOf(t.SizeLabels()))
		}
		return
	}
	w.spec.Size = lookup(r, "sizes of "+t.Name, size.Value, t.Size)
	if w.spec.Size == nil {
		pos := size.Pos
		if !w.size.Given() {
			pos = w.spec.Pos
		}
		r.noSize(t, size.Value, pos, at, !w.ownType && w != &r.defaults)
	}
}

// sizeless is a size that the usual insulation of a design's wires lacks.
type sizeless struct {
	kind *library.WireType
	size string
}

// noSize reports a size that an insulation lacks: where another like the usual one, which all
// wires share, has it, once where that is chosen.
func (r *reader) noSize(t *library.WireType, size string, pos problem.Pos, at where, usual bool) {
	what, expected := fmt.Sprintf("%s: %s has no size %s", at, quoted(t.Name), size), oneOf(t.SizeLabels())
	if like := r.alikeWith(t, size); like != nil {
		if usual && r.sizeless[sizeless{t, size}] {
			return
		}
		if r.sizeless == nil {
			r.sizeless = map[sizeless]bool{}
		}
		r.sizeless[sizeless{t, size}] = true
		expected = fmt.Sprintf("insulation %s, which has it, or %s", quoted(like.Name), expected)
		if usual && r.defaults.spec.Pos.Line > 0 {
			pos, what = r.defaults.spec.Pos, fmt.Sprintf("wire: %s has no size %s, as %s has", quoted(t.Name), size, at)
		}
	}
	r.report(pos, what, expected)
}

// alikeWith is an insulation of the same material and class that has a size; nil = there is none.
func (r *reader) alikeWith(t *library.WireType, size string) *library.WireType {
	for _, x := range r.lib.WireTypes {
		if x.Material == t.Material && x.ClassC == t.ClassC && x.Tinned == t.Tinned && x.Cores == t.Cores && x.Size(size) != nil {
			return x
		}
	}
	return nil
}

// defaultWireType is the wire type of a design that names none.
func (r *reader) defaultWireType() *library.WireType {
	if r.d.Practice == nil {
		return nil // reported already
	}
	if t := r.lib.WireType(r.d.Practice.UsualWire); t != nil {
		return t
	}
	if len(r.connections) > 0 {
		pos := r.defaults.spec.Pos
		pos.File = r.file
		r.report(pos, fmt.Sprintf("wire: no usual insulation for the practice %s",
			quoted(r.d.Practice.Name)), oneOf(r.lib.Names("wire types")))
	}
	return nil
}

// aluminium is why a wire of it, plain or clad with copper, is refused; "" = it is none. Common
// practice, no source; 33 CFR 183.425(a) asks for copper on boats (two sources).
func aluminium(name string) string {
	if !aluminiumWord.MatchString(name) {
		return ""
	}
	return "it loses 1.6 times the volts of copper of its size, and under a crimp or screw made for copper it creeps, oxidises and heats"
}

var aluminiumWord = regexp.MustCompile(`(?i)\balumini?um\b|\bCCA\b|\bcopper[ -]clad\b`)
