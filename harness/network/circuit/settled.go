package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// settled is what is closed and live with some controls set and the rest free: at most, and for certain. What is
// live at most counts current backwards through conductors, but not through loads.
type settled struct {
	x         *Exclusive
	at        []int    // by control: its state; free = any
	pulled    []bounds // by branch index: of coils
	can, must reached
	// atRest leaves out what only time or a pulse keeps: what water or pressure works stays open, delays are over.
	atRest bool
}

// bounds tell of a contact or a coil what it may be, and what it must be.
type bounds struct{ can, must bool }

const free = -1

// settle finds the bounds: from anything may be, each round knows more of the coils, until nothing new is known.
func (x *Exclusive) settle(at []int, atRest bool) *settled {
	s := &settled{x: x, at: at, pulled: make([]bounds, len(x.c.Branches)), atRest: atRest}
	for _, coil := range x.coils {
		s.pulled[coil.Index] = bounds{can: true}
	}
	for {
		s.can = x.reach(func(b *Branch) bool { return s.contact(b).can }, false)
		if x.breaks {
			s.must = x.reach(func(b *Branch) bool { return s.contact(b).must }, true)
		}
		changed := false
		for _, coil := range x.coils {
			now := s.coil(coil)
			changed = changed || now != s.pulled[coil.Index]
			s.pulled[coil.Index] = now
		}
		if !changed {
			return s
		}
	}
}

// state is the state of the control that works a contact or a coil; free = none is set.
func (s *settled) state(b *Branch) (control, state int) {
	if i := s.x.works[b.Index]; i != free {
		return i, s.at[i]
	}
	return 0, free
}

// contact tells whether a contact may be and must be closed.
func (s *settled) contact(b *Branch) bounds {
	k := b.Closer
	if coil := k.coil(); coil != nil {
		p := s.pulled[coil.Index]
		if k.Break != nil {
			p = bounds{!p.must, !p.can}
		}
		return p
	}
	if s.atRest && k.Switch != nil && k.Switch.WorksAlone() {
		return bounds{}
	}
	if i, at := s.state(b); at != free {
		closed := s.x.controls[i].closed[at][b]
		return bounds{closed, closed}
	}
	return bounds{can: true}
}

// coil tells whether a relay may have and must have pulled in.
func (s *settled) coil(coil *Branch) bounds {
	if _, at := s.state(coil); at != free {
		return bounds{at == pulledIn, at == pulledIn}
	}
	r, live := s.x.relay(coil), s.energised(coil)
	switch {
	case r.Latches:
		return bounds{can: true}
	case coil.Senses():
		return bounds{can: live.can}
	}
	return bounds{live.can || !s.atRest && r.OffDelayS.Given(), live.must && (s.atRest || !r.OnDelayS.Given())}
}

// energised tells whether a coil may have and must have supply.
func (s *settled) energised(coil *Branch) bounds {
	return bounds{s.can.draws(coil), s.x.breaks && s.must.draws(coil)}
}

// stands tells whether a relay can be in the state that it is set to.
func (s *settled) stands(coil *Branch, state int) bool {
	was := s.at
	s.at = slices.Clone(was)
	s.at[s.x.works[coil.Index]] = free
	p := s.coil(coil)
	s.at = was
	return state == pulledIn && p.can || state != pulledIn && !p.must
}

// on tells whether a load or coil can draw.
func (s *settled) on(b *Branch) bool {
	if b.Load != nil && b.Load.Reverses {
		near, far := b.Halves()
		back := func(n *Node) bool { return s.can.parted == nil || !s.can.parted[n.Index] }
		return s.can.live[near.Index] && back(far) || s.can.live[far.Index] && back(near)
	}
	if b.OfCoil() {
		coil := b.Part.Coil()
		if r := s.x.relay(coil); r != nil && !r.Latches && !r.OnDelayS.Given() && !coil.Senses() {
			if _, at := s.state(coil); at == rests {
				return false
			}
		}
	}
	return s.can.draws(b)
}

// reach is what closed contacts let current through to; with sure, what has the voltage of a battery for certain:
// not behind resistors, chargers or converters.
func (x *Exclusive) reach(closed func(*Branch) bool, sure bool) reached {
	r := reached{make([]bool, len(x.c.Nodes)), x.c.shutOff(closed)}
	var stack []*Node
	visit := func(n *Node) {
		if !r.live[n.Index] {
			r.live[n.Index], stack = true, append(stack, n)
		}
	}
	for _, post := range x.c.Posts() {
		visit(post)
	}
	for _, n := range x.c.flow.limited {
		if !sure && x.c.ConverterOf(n) == nil {
			visit(n)
		}
	}
	for len(stack) > 0 {
		n := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if out := x.c.Gives(n); out != nil && !sure {
			visit(out)
		}
		for _, b := range n.Branches {
			if !b.Conductor() || b.Returns() || b.Rests() || !b.Passes(n) || b.Kind == ContactBranch && !closed(b) ||
				sure && b.Kind == ResistorBranch && !b.OfLead() {
				continue
			}
			visit(b.A)
			visit(b.B)
		}
	}
	return r
}

// relay is the relay of a coil; nil = it is of none.
func (x *Exclusive) relay(coil *Branch) *design.Relay {
	if coil == nil || coil.Part == nil {
		return nil
	}
	r, _ := coil.Part.Source.(*design.Relay)
	return r
}
