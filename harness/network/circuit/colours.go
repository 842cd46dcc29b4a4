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

// colourWires gives the wires that the design leaves to it their colours: feeds of one
// potential share one, by what they serve; a return has the returns' colour, and its
// circuit's as tracer. Circuits of one colour that meet at a place or in a run get
// different tracers. A wire whose colour stands in `numbers` of the design keeps it, and
// the others of its potential share it. Wires are taken in their order, so that one more
// at the end leaves the others alone.
func (b *builder) colourWires() {
	if b.lib == nil || b.c.Design.Practice == nil || !slices.ContainsFunc(b.c.Wires, func(w *Wire) bool { return w.Spec.ColourAuto }) {
		return
	}
	code := b.lib.ColourCode(b.c.Design.Practice.Afloat)
	if code == nil {
		return
	}
	p := &palette{code: code, lib: b.lib, taken: map[meetKey]bool{}, serves: map[*Node]string{}, fed: map[*library.Colour]bool{},
		pairs: map[string][]design.Colour{}}
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
	code   *library.ColourCode
	lib    *library.Library
	taken  map[meetKey]bool
	serves map[*Node]string
	fed    map[*library.Colour]bool // base colours of feeds
	pairs  map[string][]design.Colour
}

// meetKey is a colour at a place or in a run.
type meetKey struct {
	at   any // *design.Place or *Bundle
	code string
}

// strand is wires that get one colour.
type strand struct {
	wires []*Wire
	back  bool
	mark  *library.Colour // of the return of a load or coil: the base colour of its feed
}

func (p *palette) give(c design.Colour, wires ...*Wire) {
	for _, w := range wires {
		w.Spec.Colour = c
		if !w.Role.Returns() {
			p.fed[c.Base] = true
		}
		for _, at := range meets(w) {
			p.taken[meetKey{at, c.Code()}] = true
		}
	}
}

// meets are the places and runs that a wire is seen at.
func meets(w *Wire) (list []any) {
	for _, t := range []*Terminal{w.From, w.To} {
		if t.Part.Place != nil {
			list = append(list, t.Part.Place)
		}
	}
	for _, b := range w.Route {
		list = append(list, b)
	}
	return list
}

// strands are the wires left open of some roles: feeds by their potential, returns by that
// of their load's feed and by where they go.
func (p *palette) strands(wires []*Wire, of []Role) (list []*strand) {
	type home struct{ hot, to *Node }
	at := map[home]*strand{}
	for _, w := range wires {
		if !w.Spec.ColourAuto || !slices.Contains(of, w.Role) {
			continue
		}
		key, mark := home{hot: w.From.Node}, (*library.Colour)(nil)
		if hot := w.drawsAt(); hot != nil {
			key, mark = home{hot.From.Node, w.To.Node}, hot.Spec.Colour.Base
		}
		s := at[key]
		if s == nil {
			s = &strand{back: w.Role.Returns(), mark: mark}
			at[key], list = s, append(list, s)
		}
		s.wires = append(s.wires, w)
		if !s.back && w.To.Part.Kind == Splice {
			at[home{hot: w.To.Node}] = s
		}
	}
	return list
}

// drawsAt is the feed of the load or coil whose return a wire is; nil of other wires.
func (w *Wire) drawsAt() *Wire {
	hot, back, ok := w.From.Part.Draws()
	if !ok || !w.Role.Returns() || back != w.From || len(hot.Wires) == 0 {
		return nil
	}
	return hot.Wires[0]
}

// choose is the first colour of a strand's order that none has where it goes: at its
// places and in its runs, or, when all are given out there, in its runs alone. Past that
// the first of all is used again, and the wires say so.
func (p *palette) choose(s *strand) design.Colour {
	order := p.order(s)
	for _, runsOnly := range []bool{false, true} {
		for _, c := range order {
			if p.free(c.Code(), s.wires, runsOnly) {
				return c
			}
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
	case s.back && (thick || s.mark == nil):
		return []design.Colour{{Base: p.lib.Colour(p.code.Returns)}}
	case s.back:
		return p.backs(s.mark)
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

// backs are the returns' colour with the circuit's as tracer, then with those that would
// name no other circuit.
func (p *palette) backs(mark *library.Colour) []design.Colour {
	base := p.lib.Colour(p.code.Returns)
	list := p.with(nil, base, mark)
	for _, t := range p.code.Tracers {
		if c := p.lib.Colour(t); !p.fed[c] {
			list = p.with(list, base, c)
		}
	}
	return append(list, design.Colour{Base: base})
}

// with adds a base and tracer that can be told apart and mean nothing else.
func (p *palette) with(list []design.Colour, base, tracer *library.Colour) []design.Colour {
	c := design.Colour{Base: base, Tracer: tracer}
	if base == nil || tracer == nil || contrast(base, tracer) < leastContrast || slices.Contains(p.code.Reserved, c.Code()) {
		return list
	}
	return append(list, c)
}

func (p *palette) free(code string, wires []*Wire, runsOnly bool) bool {
	for _, w := range wires {
		for _, at := range meets(w) {
			if _, place := at.(*design.Place); !(place && runsOnly) && p.taken[meetKey{at, code}] {
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
	return what
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
