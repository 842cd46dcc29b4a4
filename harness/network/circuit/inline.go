package circuit

import (
	"fmt"
	"slices"
	"strconv"

	"fusewright/harness/design"
	"fusewright/library"
)

// Inline is a connector of the loom, at whose place the wires that pass are parted. Each
// stays one wire of the network, with the contact's resistance among its ends.
type Inline struct {
	Part  *Part // its Plug says family and housing; it has no terminals, the poles have
	Poles []*Pole
	Sides [2][]*Bundle // the runs at each half
	// Sockets is the side of the half whose contacts are sockets.
	Sockets int
	design  *design.Connector
}

// Pole is a wire's passage through an inline connector.
type Pole struct {
	Inline *Inline
	Wire   *Wire
	Cavity int // from 1, in the order of the wires
	// Near and Far are the terminals of the two halves, as the wire meets them from its From
	// end; Contact is the library's contact there, one resistance for the pair, nil = none fits.
	Near, Far *Terminal
	Contact   *library.Terminal
	// Live tells of a feed that may stay live on its near side when the halves are apart.
	Live bool
	runs [2]*Bundle // before and behind
}

// NearSide is the side of the half that a pole's wire meets first.
func (p *Pole) NearSide() int {
	if slices.Contains(p.Inline.Sides[1], p.runs[0]) {
		return 1
	}
	return 0
}

// Inlines are the inline connectors, in the order of the design.
func (c *Circuit) Inlines() []*Inline { return c.inlines }

// InlineOf is the inline connector that a part is; nil for others.
func (c *Circuit) InlineOf(p *Part) *Inline {
	for _, x := range c.inlines {
		if x.Part == p {
			return x
		}
	}
	return nil
}

// Towards names the places at the other ends of the runs on a side.
func (x *Inline) Towards(side int) (names []string) {
	for _, b := range x.Sides[side] {
		names = append(names, b.Run.Beyond(x.Part.Place).Name)
	}
	return names
}

// addConnectors makes the parts; what passes them is known when the wires are laid.
func (b *builder) addConnectors() {
	b.inlinesAt = map[*design.Place][]*Inline{}
	for _, d := range b.c.Design.Partings {
		x := &Inline{Part: b.part(Connector, d, &d.Common), design: d}
		b.c.inlines = append(b.c.inlines, x)
		b.inlinesAt[d.At] = append(b.inlinesAt[d.At], x)
	}
}

// passing is the connector at a place through which a wire goes; nil = it passes whole, as
// one that is there already does where the connector is new.
func (b *builder) passing(w *Wire, at *design.Place) *Inline {
	var rest *Inline
	for _, x := range b.inlinesAt[at] {
		switch {
		case w.Spec.Fitted && !x.Part.Fitted:
		case len(x.design.Takes) == 0:
			rest = x
		case slices.Contains(x.design.Takes, w.Owner().Source):
			return x
		}
	}
	return rest
}

// passConnectors parts a wire that has its route at the connectors on the way.
func (b *builder) passConnectors(w *Wire) {
	if len(b.inlinesAt) == 0 {
		return
	}
	at := w.From.Part.Place
	for i := 0; i+1 < len(w.Route); i++ {
		at = w.Route[i].Run.Beyond(at)
		x := b.passing(w, at)
		if x == nil {
			continue
		}
		p := &Pole{Inline: x, Wire: w, Cavity: len(x.Poles) + 1, runs: [2]*Bundle{w.Route[i], w.Route[i+1]}}
		if x.design.Plug != nil {
			p.Contact = b.end(nil, x.design.Plug.PinKind, w.Spec.Size)
		}
		x.Poles, w.Poles = append(x.Poles, p), append(w.Poles, p)
		w.EndsOhm += endOhm(p.Contact)
	}
}

// fillConnectors gives connectors their housings and halves, and wires their pieces.
func (b *builder) fillConnectors() {
	for _, x := range b.c.inlines {
		family := x.design.Plug
		x.Part.Plug = &Plug{Family: family, Needed: len(x.Poles), Ways: family.Housing(len(x.Poles))}
		b.halve(x)
		b.c.unplug(x)
		x.turn()
		for _, p := range x.Poles {
			p.Near, p.Far = x.terminal(p, p.NearSide()), x.terminal(p, 1-p.NearSide())
		}
	}
	for _, w := range b.c.Wires {
		b.cutWire(w)
	}
}

// halve shares the runs at a connector out to its two halves: every wire leaves on the
// side on which it did not come.
func (b *builder) halve(x *Inline) {
	side := map[*Bundle]int{}
	for _, first := range x.Poles {
		if _, known := side[first.runs[0]]; !known {
			side[first.runs[0]] = 0
		}
		for again := true; again; {
			again = false
			for _, p := range x.Poles {
				for i, run := range p.runs {
					s, known := side[run]
					other, reached := side[p.runs[1-i]]
					switch {
					case known && !reached:
						side[p.runs[1-i]], again = 1-s, true
					case known && s == other:
						b.report(x.Part.Pos, fmt.Sprintf("connector %q: %s passes it from %s to %s, and others between those and a third run: it has no two halves",
							x.Part.Name, p.Wire.Purpose(), p.runs[0].Run.Name, p.runs[1].Run.Name), "`takes`, and a connector of its own for what branches off")
						return
					}
				}
			}
		}
	}
	for _, bundle := range b.c.Bundles {
		if s, known := side[bundle]; known {
			x.Sides[s] = append(x.Sides[s], bundle)
		}
	}
}

// unplug finds the feeds that may stay live on one side: the battery reaches them without
// passing the connector, with every contact closed.
func (c *Circuit) unplug(x *Inline) {
	parts := map[*Branch]bool{}
	for _, p := range x.Poles {
		parts[p.Wire.Branch] = true
	}
	reached := map[*Node]bool{}
	for _, post := range c.Posts() {
		reached[post] = true
	}
	for queue := slices.Clone(c.Posts()); len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].feeds {
			if !parts[b] && !reached[b.B] {
				reached[b.B] = true
				queue = append(queue, b.B)
			}
		}
	}
	for _, p := range x.Poles {
		p.Live = !p.Wire.Role.Returns() && reached[p.Wire.From.Node]
	}
}

// turn finds the half with the sockets: where the design has them, else where the most
// feeds stay live.
func (x *Inline) turn() {
	from := [2]int{}
	for _, p := range x.Poles {
		if p.Live {
			from[p.NearSide()]++
		}
	}
	if from[1] > from[0] {
		x.Sockets = 1
	}
	for s := range x.Sides {
		for _, bundle := range x.Sides[s] {
			if x.design.Sockets != nil && bundle.Run.Beyond(x.Part.Place) == x.design.Sockets {
				x.Sockets = s
			}
		}
	}
}

// The contacts of the two halves.
const socketMark, pinMark = "socket", "pin"

// terminal is a pole's contact in a half.
func (x *Inline) terminal(p *Pole, side int) *Terminal {
	t := &Terminal{Part: x.Part, Name: strconv.Itoa(p.Cavity), Kind: x.design.Plug.PinKind, Mark: pinMark}
	if side == x.Sockets {
		t.Mark = socketMark
	}
	return t
}

// Mate tells of a terminal of an inline connector in which the mate of the library's contact is.
func (t *Terminal) Mate() bool {
	return t.Part != nil && t.Part.Kind == Connector && t.Part.Plug.Family.Sockets != (t.Mark == socketMark)
}

// cutWire makes the pieces of a wire that connectors part, each with a letter behind its
// number from the From end on. They are cut and labelled; the network has the whole wire.
func (b *builder) cutWire(w *Wire) {
	if len(w.Poles) == 0 || w.Spec.Size == nil {
		return
	}
	routeM := 0.0
	for _, bundle := range w.Route {
		routeM += bundle.Run.LengthM.Value
	}
	at, from, fromEnd := 0, w.From, w.FromEnd
	for i := 0; i <= len(w.Poles); i++ {
		x := *w
		x.Whole, x.Poles, x.Pieces, x.Number = w, nil, nil, w.Number+string(rune('a'+i%26))
		x.From, x.FromEnd, x.To, x.ToEnd = from, fromEnd, w.To, w.ToEnd
		end := len(w.Route)
		if i < len(w.Poles) {
			p := w.Poles[i]
			end = slices.Index(w.Route, p.runs[1])
			x.To, x.ToEnd = p.Near, p.Contact
			from, fromEnd = p.Far, p.Contact
		}
		x.Route = w.Route[at:end]
		x.LengthM = 2 * w.Spec.SlackM.Value
		for _, bundle := range x.Route {
			x.LengthM += bundle.Run.LengthM.Value
		}
		if w.LengthGiven { // shared as the runs are
			x.LengthM = w.LengthM * (x.LengthM - 2*w.Spec.SlackM.Value) / routeM
		}
		x.EndsOhm = endOhm(x.FromEnd) + endOhm(x.ToEnd)
		x.ConductorOhm20 = w.Spec.Size.MaxOhmPerM * x.LengthM
		at = end
		w.Pieces = append(w.Pieces, &x)
	}
}

// Cut lists what a wire is cut in: its pieces, or itself.
func (w *Wire) Cut() []*Wire {
	if len(w.Pieces) > 0 {
		return w.Pieces
	}
	return []*Wire{w}
}

// End is the piece at one end of a wire: itself where no connector parts it.
func (w *Wire) End(from bool) *Wire {
	switch n := len(w.Pieces); {
	case n == 0:
		return w
	case from:
		return w.Pieces[0]
	default:
		return w.Pieces[n-1]
	}
}

// Contacts are the crimp parts that a wire's current goes through: its ends, and one for
// each pair of contacts of an inline connector. Nil = none that fits.
func (w *Wire) Contacts() []*library.Terminal {
	list := []*library.Terminal{w.FromEnd, w.ToEnd}
	for _, p := range w.Poles {
		list = append(list, p.Contact)
	}
	return list
}

// Socket tells of a terminal of an inline connector in the half with the sockets.
func (t *Terminal) Socket() bool { return t.Part.Kind == Connector && t.Mark == socketMark }
