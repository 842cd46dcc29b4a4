package circuit

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
)

// Exclusive is what contacts keep from being on or closed at once, by the state of a switch, of the key, of a condition
// or of a relay, and of the relays that these work. What is not proven to be apart counts as together: what latches, and
// what a delay keeps, may be either. A coil with the voltage of its battery counts as pulled in.
type Exclusive struct {
	c        *Circuit
	controls []*control
	works    []int             // by branch index, of contacts and coils: the control that works it, else free
	bears    map[*Branch][]int // by load, coil and contact: the controls that it hangs on and that keep something apart
	coils    []*Branch         // that move contacts, in branch order
	breaks   bool              // some contact is closed at rest
	base     []int             // by control: the state that leaves nothing off, else free
	states   map[string][]*settled
}

// control is what is set by itself: a switch with its poles, the key, a condition, or a relay with a contact that is
// closed at rest, which has two states whatever works it.
type control struct {
	sw      *design.Switch
	coil    *Branch            // of a relay
	closed  []map[*Branch]bool // by state: the contacts closed there; nil of a relay
	keep    []int              // the states that are gone through
	moves   []*Branch          // all its contacts
	breaks  []*Branch          // contacts closed at rest that hang on it
	reaches map[*Branch]bool   // loads, coils and contacts that hang on it
}

// The states of a relay.
const (
	rests = iota
	pulledIn
)

// Exclusive finds what contacts keep from being on at once.
func (c *Circuit) Exclusive() *Exclusive {
	x := &Exclusive{c: c, works: slices.Repeat([]int{free}, len(c.Branches)), bears: map[*Branch][]int{}, states: map[string][]*settled{}}
	for _, b := range c.Branches {
		if len(c.flow.contacts[b]) > 0 && x.relay(b) != nil {
			x.coils = append(x.coils, b)
		}
		x.breaks = x.breaks || b.Closer != nil && b.Closer.Break != nil
	}
	x.addControls()
	for range x.controls {
		x.base = append(x.base, free)
	}
	for i, k := range x.controls {
		x.spread(k)
		k.keep = x.worth(i)
		if len(k.keep) == 1 {
			x.base[i] = k.keep[0]
			continue
		}
		for b := range k.reaches {
			x.bears[b] = append(x.bears[b], i)
		}
	}
	return x
}

// addControls lists what can be set.
func (x *Exclusive) addControls() {
	of := map[any]*control{}
	add := func(of map[any]*control, what any, states int) *control {
		k := of[what]
		if k == nil {
			k = &control{}
			for range states {
				k.closed = append(k.closed, map[*Branch]bool{})
			}
			of[what], x.controls = k, append(x.controls, k)
		}
		return k
	}
	for _, b := range x.c.Branches {
		k := b.Closer
		switch {
		case k == nil || k.coil() != nil:
		case k.Key != "" && k.Key.Condition():
			on := add(of, k.Key, 2)
			on.moves, on.closed[1][b] = append(on.moves, b), true
		case k.Key != "":
			key := add(of, design.WhenKey, 3)
			key.moves = append(key.moves, b)
			for i, s := range []*design.Situation{{Key: design.KeyOff}, {Key: design.KeyOn}, {Key: design.KeyOn, EngineRPM: 1}} {
				key.closed[i][b] = holds(k.Key, s)
			}
		case k.Switch != nil:
			lead := k.Switch.Lead()
			states := max(2, len(lead.Positions))
			if lead.Positions != nil {
				states = len(lead.Positions)
			}
			hand := add(of, lead, states)
			hand.sw, hand.moves = lead, append(hand.moves, b)
			for i := range states {
				hand.closed[i][b] = lead.Positions == nil && i == 1 || lead.Positions != nil && k.Switch.Gives(lead.Positions[i].Name, k.Output)
			}
		}
	}
	for _, coil := range x.coils {
		if contacts := x.c.flow.contacts[coil]; slices.ContainsFunc(contacts, func(b *Branch) bool { return b.Closer.Break != nil }) {
			x.controls = append(x.controls, &control{coil: coil, moves: contacts})
		}
	}
	for i, k := range x.controls {
		if k.coil != nil {
			x.works[k.coil.Index] = i
			continue
		}
		for _, b := range k.moves {
			x.works[b.Index] = i
		}
	}
}

// spread finds what hangs on a control, along feeds and returns and through the relays that it works.
func (x *Exclusive) spread(k *control) {
	k.reaches = map[*Branch]bool{}
	down, up := map[*Node]bool{}, map[*Node]bool{}
	var queue []*Branch
	take := func(b *Branch) { // what draws, or a contact
		if k.reaches[b] {
			return
		}
		k.reaches[b] = true
		queue = append(queue, x.c.flow.contacts[b]...)
	}
	var feed, back func(n *Node)
	feed = func(n *Node) {
		if down[n] || x.c.IsPost(n) {
			return
		}
		down[n] = true
		if out := x.c.Gives(n); out != nil {
			feed(out)
		}
		for _, b := range n.turns {
			take(b)
		}
		for _, b := range n.Branches {
			switch {
			case b.A != n:
			case b.Load != nil || b.OfCoil():
				take(b)
			case b.Feeds():
				feed(b.B)
			}
		}
	}
	back = func(n *Node) {
		if up[n] || n == x.c.Negative() {
			return
		}
		up[n] = true
		for _, b := range n.Branches {
			switch {
			case b.B == n && (b.Load != nil || b.OfCoil()), b.Load != nil && b.Load.Reverses:
				take(b)
			case b.B == n && b.TakesBack():
				back(b.A)
			}
		}
	}
	if k.coil != nil {
		take(k.coil)
	}
	queue = append(queue, k.moves...)
	for ; len(queue) > 0; queue = queue[1:] {
		b := queue[0]
		if k.reaches[b] {
			continue
		}
		if k.reaches[b] = true; b.Closer.Break != nil {
			k.breaks = append(k.breaks, b)
		}
		if b.Rests() || !b.TakesBack() {
			feed(b.B)
		}
		if b.Rests() {
			feed(b.A)
		}
		if b.TakesBack() {
			back(b.A)
		}
	}
}

// worth are the states of a control that another one does not make needless: one that closes what it closes and more,
// and opens nothing that is live in it, by whatever relays.
func (x *Exclusive) worth(i int) (keep []int) {
	k := x.controls[i]
	if k.coil != nil {
		return []int{rests, pulledIn}
	}
	covers := func(a, b map[*Branch]bool) bool {
		return !slices.ContainsFunc(k.moves, func(c *Branch) bool { return b[c] && !a[c] })
	}
	for s, closed := range k.closed {
		if !slices.ContainsFunc(k.closed, func(other map[*Branch]bool) bool { return covers(other, closed) && !covers(closed, other) }) &&
			!slices.ContainsFunc(k.closed[:s], func(other map[*Branch]bool) bool { return covers(other, closed) }) ||
			x.keepsLive(i, s) {
			keep = append(keep, s)
		}
	}
	return keep
}

// keepsLive tells whether in a state of a control a contact that hangs on it can be closed at rest and live.
func (x *Exclusive) keepsLive(i, state int) bool {
	k := x.controls[i]
	if len(k.breaks) == 0 {
		return false
	}
	at := slices.Repeat([]int{free}, len(x.controls))
	at[i] = state
	s := x.settle(at, false)
	return slices.ContainsFunc(k.breaks, func(b *Branch) bool {
		return s.contact(b).can && (!b.Feeds() || s.can.live[b.A.Index] || s.can.live[b.B.Index])
	})
}

// None tells that nothing is kept from being on at once.
func (x *Exclusive) None() bool { return len(x.bears) == 0 }

// AtOnce are, of some loads and coils, those that can be on at once and are rated for most
// together; of equals those of the first state.
func (x *Exclusive) AtOnce(draws []*Branch) []*Branch {
	off := map[*Branch]bool{}
	for _, group := range x.groups(draws) {
		var of []*Branch
		for _, b := range draws {
			if len(x.bears[b]) > 0 && slices.Contains(group, x.bears[b][0]) {
				of = append(of, b)
			}
		}
		states := x.through(group)
		ever := func(b *Branch) bool { return slices.ContainsFunc(states, func(s *settled) bool { return s.on(b) }) }
		of = slices.DeleteFunc(of, func(b *Branch) bool { return !ever(b) })
		least, leastA := -1, math.Inf(1)
		for i, s := range states {
			sumA := 0.0
			for _, b := range of {
				if !s.on(b) {
					sumA += x.c.DrawA(b)
				}
			}
			if sumA < leastA {
				least, leastA = i, sumA
			}
		}
		for _, b := range of {
			off[b] = !states[least].on(b)
		}
	}
	return slices.DeleteFunc(slices.Clone(draws), func(b *Branch) bool { return off[b] })
}

// Closed are the ways in which some contacts can be closed together, each as a question to any contact of theirs; one
// where nothing keeps any of them apart.
func (x *Exclusive) Closed(contacts []*Branch) (ways []func(*Branch) bool) {
	var on []int
	for _, b := range contacts {
		on = append(on, x.bears[b]...)
	}
	slices.Sort(on)
	for _, s := range x.through(slices.Compact(on)) {
		ways = append(ways, func(b *Branch) bool { return b.Closer == nil || s.contact(b).can })
	}
	return ways
}

// ByPosition are, by state of a switch, the loads and coils that it gives there and leaves off in another, without what
// water or pressure works behind it, and when delays are over; nil of a plain
// switch, which is off and on, that leaves nothing off by a relay.
func (x *Exclusive) ByPosition(sw *design.Switch) [][]*Branch {
	i := slices.IndexFunc(x.controls, func(k *control) bool { return k.sw == sw })
	if i < 0 || sw.Positions == nil && len(x.controls[i].keep) == 1 {
		return nil
	}
	var states []*settled
	for state := range x.controls[i].closed {
		at := slices.Clone(x.base)
		at[i] = state
		states = append(states, x.settle(at, true))
	}
	list := make([][]*Branch, len(states))
	for _, b := range x.c.Branches {
		if b.Load == nil && !b.OfCoil() || b.Load != nil && (b.Load.Load == nil || b.Load.Standby) {
			continue
		}
		for n, s := range states {
			if s.on(b) && slices.ContainsFunc(states, func(o *settled) bool { return !o.on(b) }) {
				list[n] = append(list[n], b)
			}
		}
	}
	if sw.Positions == nil && list[0] == nil {
		return nil
	}
	return list
}

// groups are the controls that bear on some draws, those that bear on the same one together.
func (x *Exclusive) groups(draws []*Branch) (groups [][]int) {
	for _, b := range draws {
		of := slices.Clone(x.bears[b])
		if len(of) == 0 {
			continue
		}
		groups = slices.DeleteFunc(groups, func(g []int) bool {
			meets := slices.ContainsFunc(g, func(h int) bool { return slices.Contains(of, h) })
			if meets {
				of = append(of, g...)
			}
			return meets
		})
		slices.Sort(of)
		groups = append(groups, slices.Compact(of))
	}
	return groups
}

// mostWays is how many ways of setting controls that bear on each other are gone through; where there are more,
// those that bear on most are left free, and keep nothing apart.
const mostWays = 1 << 10

// through are the states of some controls, all others free or as they leave nothing off.
func (x *Exclusive) through(controls []int) (states []*settled) {
	name := fmt.Sprint(controls)
	if states, known := x.states[name]; known {
		return states
	}
	at := slices.Clone(x.base)
	for ways := math.MaxInt; ways > mostWays; {
		ways = 1
		most := 0
		for n, i := range controls {
			if len(x.controls[i].reaches) > len(x.controls[controls[most]].reaches) {
				most = n
			}
			ways = min(ways*len(x.controls[i].keep), 2*mostWays)
		}
		if ways > mostWays {
			controls = slices.Delete(slices.Clone(controls), most, most+1)
		}
	}
	var next func(n int)
	next = func(n int) {
		if n == len(controls) {
			states = append(states, x.settle(slices.Clone(at), false))
			return
		}
		i := controls[n]
		k, found := x.controls[i], len(states)
		for _, state := range k.keep {
			if at[i] = state; k.coil != nil && !x.settle(at, false).stands(k.coil, state) {
				continue
			}
			next(n + 1)
		}
		if at[i] = free; len(states) == found { // it comes to no rest
			next(n + 1)
		}
	}
	next(0)
	x.states[name] = states
	return states
}
