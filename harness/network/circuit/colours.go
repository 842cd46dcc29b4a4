package circuit

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// mostColoursMm2 is the thickest wire that is sold in all colours and with tracers, in mm²
// (common practice, no source): thicker feeds have that of what serves several, returns
// their own.
const mostColoursMm2 = 6

// leastContrast is what base and tracer must differ by, as a ratio of luminances, to be
// told apart on a print in black and white (our choice).
const leastContrast = 1.5

// colourWires gives the wires that the design leaves to it their colours, so that few reels do: by what they serve, all
// of one function alike, and all returns alike. What tells them apart is their number; a tracer does where two could be
// exchanged by mistake, at the ends of one part or in one parting of the loom. Feeds of one potential share one colour. A wire whose
// colour stands in `numbers` of the design keeps it, and the others of its potential share it. Wires are taken in their order, so that
// one more at the end leaves the others alone.
func (b *builder) colourWires() {
	if b.lib == nil || b.c.Design.Practice == nil || !slices.ContainsFunc(b.c.Wires, func(w *Wire) bool { return w.Spec.ColourAuto }) {
		return
	}
	code := b.lib.ColourCode(b.c.Design.Practice.Afloat)
	if code == nil {
		return
	}
	p := &palette{code: code, lib: b.lib, taken: map[meetKey]*Node{}, serves: map[*Node]string{}, switched: map[*Node]bool{}, pairs: map[string][]design.Colour{}}
	for _, w := range b.c.Wires {
		switch colour, held := b.colours[w.Number]; {
		case !w.Spec.ColourAuto:
			p.give(w.Spec.Colour, w)
		case held && (colour.Tracer == nil || !thick(w)):
			p.give(colour, w)
			w.colourHeld = true
		}
	}
	for _, of := range [][]Role{{FeedWire, CoilFeedWire}, {ReturnWire}, {CoilReturnWire}} {
		for _, s := range p.strands(b.c.Wires, of) {
			if colour, held := s.held(); held {
				p.give(colour, s.open()...)
			} else {
				p.give(p.choose(s), s.open()...)
			}
		}
	}
}

// thick tells of wires that are not sold in all colours.
func thick(w *Wire) bool { return w.Spec.Size != nil && w.Spec.Size.AreaMm2 > mostColoursMm2 }

// held is the colour that the first wire of a strand keeps, where the others are sold in it.
func (s *strand) held() (colour design.Colour, ok bool) {
	i := slices.IndexFunc(s.wires, func(w *Wire) bool { return w.colourHeld })
	if i < 0 {
		return colour, false
	}
	colour = s.wires[i].Spec.Colour
	return colour, colour.Tracer == nil || !slices.ContainsFunc(s.wires, thick)
}

// open are the wires of a strand that keep no colour.
func (s *strand) open() (list []*Wire) {
	for _, w := range s.wires {
		if !w.colourHeld {
			list = append(list, w)
		}
	}
	return list
}

// palette is the colours as they are given out.
type palette struct {
	code     *library.ColourCode
	lib      *library.Library
	taken    map[meetKey]*Node // the potential that has a colour there
	serves   map[*Node]string
	switched map[*Node]bool
	pairs    map[string][]design.Colour
}

// meetKey is a colour where wires could be exchanged.
type meetKey struct {
	at   any // *Part, the *design.Switch of several poles, or the *Inline that parts the loom
	code string
}

// strand is wires that get one colour.
type strand struct {
	wires []*Wire
	back  bool
}

func (p *palette) give(c design.Colour, wires ...*Wire) {
	for _, w := range wires {
		w.Spec.Colour = c
		for _, at := range p.meets(w) {
			key := meetKey{at, c.Code()}
			if _, taken := p.taken[key]; !taken {
				p.taken[key] = w.potential()
			}
		}
	}
}

// potential is the node whose other wires can stand for a wire: of a feed where it begins, of a return where it ends,
// of those that no contact parts from ground nil.
func (w *Wire) potential() *Node {
	switch {
	case !w.Role.Returns():
		return w.From.Node
	case w.To.Part.Kind == Switch || w.To.Part.Kind == Relay:
		return w.To.Node
	}
	return nil
}

// meets are the parts and partings at which a wire could be exchanged for another.
func (p *palette) meets(w *Wire) (list []any) {
	for _, t := range []*Terminal{w.From, w.To} {
		if at := t.Part.confuses(); at != nil {
			list = append(list, at)
		}
	}
	for _, x := range w.Poles {
		list = append(list, x.Inline)
	}
	return list
}

// confuses is what of a part tells wires of one colour apart no more, nil where their places do or an exchange does no harm: the ways of a
// block, the two ends of a fuse or of a plain contact.
func (p *Part) confuses() any {
	switch src := p.Source.(type) {
	case *design.Switch:
		if src.Lead().Positions != nil {
			return src.Lead()
		}
	case *design.Relay:
		if t := p.Terminal("87a"); src.Rests || t != nil && len(t.Wires) > 0 {
			return p
		}
	case *design.Diode, *design.Charger:
		return p
	}
	return nil
}

// strands are the wires left open of some roles: feeds by their potential, returns by where they go.
func (p *palette) strands(wires []*Wire, of []Role) (list []*strand) {
	at := map[*Node]*strand{}
	for _, w := range wires {
		if !w.Spec.ColourAuto || !slices.Contains(of, w.Role) {
			continue
		}
		key := w.From.Node
		if w.Role.Returns() {
			key = w.To.Node
		}
		s := at[key]
		if s == nil {
			s = &strand{back: w.Role.Returns()}
			at[key], list = s, append(list, s)
		}
		s.wires = append(s.wires, w)
		if !s.back && w.To.Part.Kind == Splice {
			at[w.To.Node] = s
		}
	}
	return list
}

// choose is the first colour of a strand's order that none of another potential has where it could be exchanged for that.
// Past the last the first of all is used again, and the wires say so.
func (p *palette) choose(s *strand) design.Colour {
	order := p.order(s)
	for _, c := range order {
		if p.free(c.Code(), s.wires) {
			return c
		}
	}
	for _, w := range s.open() {
		w.ColourShared = len(order) > 1
	}
	return order[0]
}

// order is the colours that a strand may have, the best first.
func (p *palette) order(s *strand) (list []design.Colour) {
	thick := slices.ContainsFunc(s.wires, thick)
	switch {
	case s.back && thick:
		return []design.Colour{{Base: p.lib.Colour(p.code.Returns)}}
	case s.back:
		return p.feeds(p.code.Returns)
	case thick:
		return []design.Colour{{Base: p.lib.Colour(p.code.Base("several"))}}
	}
	own := p.code.Base(p.servesOf(s))
	list = slices.Clone(p.feeds(own))
	for _, x := range p.code.Circuits {
		if x.Colour != own {
			list = append(list, p.feeds(x.Colour)...)
		}
	}
	return list
}

// feeds are a base colour alone and with each tracer, found once.
func (p *palette) feeds(code string) []design.Colour {
	list, known := p.pairs[code]
	if known {
		return list
	}
	base := p.lib.Colour(code)
	list = []design.Colour{{Base: base}}
	for _, t := range p.code.Tracers {
		list = p.with(list, base, p.lib.Colour(t))
	}
	p.pairs[code] = list
	return list
}

// with adds a base and tracer that can be told apart and mean nothing else.
func (p *palette) with(list []design.Colour, base, tracer *library.Colour) []design.Colour {
	c := design.Colour{Base: base, Tracer: tracer}
	if base == nil || tracer == nil || contrast(base, tracer) < leastContrast || slices.Contains(p.code.Reserved, c.Code()) {
		return list
	}
	return append(list, c)
}

func (p *palette) free(code string, wires []*Wire) bool {
	for _, w := range wires {
		for _, at := range p.meets(w) {
			if other, taken := p.taken[meetKey{at, code}]; taken && other != w.potential() {
				return false
			}
		}
	}
	return true
}

// contrast is the ratio of two colours' luminances, the lighter over the darker, as
// WCAG 2 defines it; 1 to 21.
func contrast(a, b *library.Colour) float64 {
	x, y := luminance(a)+0.05, luminance(b)+0.05
	return max(x, y) / min(x, y)
}

func luminance(c *library.Colour) float64 {
	sum := 0.0
	for i, weight := range [3]float64{0.2126, 0.7152, 0.0722} {
		v := float64(c.RGB[i]) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += weight * v
	}
	return sum
}

// servesOf is what a strand of feeds serves, in the words of library.CircuitColour.
func (p *palette) servesOf(s *strand) string {
	what := ""
	for _, w := range s.wires {
		if w.From.Part.Kind == Battery {
			return "source"
		}
		what = both(what, p.servedAt(w.To))
	}
	if what != "control" && what != "several" && p.code.Has("switched") && p.isSwitched(s.wires[0].From.Node) {
		return "switched"
	}
	return what
}

// isSwitched tells whether a hand, the key or a relay switches what a node feeds, and that alone: behind a main switch it is not.
func (p *palette) isSwitched(n *Node) bool {
	if known, met := p.switched[n]; met {
		return known
	}
	p.switched[n] = false // while it is looked at
	for _, b := range n.fedBy {
		if b.Kind == ContactBranch && b.Part != nil && slices.ContainsFunc(n.Terminals, func(t *Terminal) bool { return p.servedAt(t) != "several" }) || p.isSwitched(b.A) {
			p.switched[n] = true
		}
	}
	return p.switched[n]
}

// servedAt is what is fed at a terminal and beyond.
func (p *palette) servedAt(t *Terminal) string {
	if hot, _, ok := t.Part.Draws(); ok && hot == t {
		return servedBy(t.Part)
	}
	if what, known := p.serves[t.Node]; known {
		return what
	}
	p.serves[t.Node] = "" // while it is looked at
	what := ""
	for _, n := range onward(t.Node) {
		for _, at := range n.Terminals {
			for _, w := range at.Wires {
				if w.From == at && !w.Role.Returns() {
					what = both(what, p.servedAt(w.To))
				}
			}
		}
	}
	p.serves[t.Node] = what
	return what
}

// both is what two serve together; "" = nothing.
func both(a, b string) string {
	switch {
	case a == "", a == b:
		return b
	case b == "":
		return a
	}
	return "several"
}

// servedBy is a load, or a relay's coil.
func servedBy(p *Part) string {
	l, ok := p.Source.(*design.Load)
	switch {
	case !ok:
		return "control"
	case l.Type != nil && l.Type.MustBurn:
		return "navigation lamp"
	case l.Sign == design.SignLamp || l.Sign == design.SignLED:
		return "lamp"
	case l.Sign == "":
		return "other"
	}
	return string(l.Sign)
}
