package circuit

import (
	"math"
	"slices"

	"fusewright/harness/design"
)

// Exclusive is what contacts keep from being on at once: switches with positions, and relays
// that change over.
type Exclusive struct {
	c       *Circuit
	handles [][]drawn         // by handle and the state that it can be in: the draws that are off there and on in another
	of      map[*Branch][]int // handles that bear on a draw
}

type drawn map[*Branch]bool

// Exclusive finds what contacts keep from being on at once. What is live by two handles
// together counts as on where each of them alone lets it be: sums are too large at the most.
func (c *Circuit) Exclusive() *Exclusive {
	x := &Exclusive{c: c, of: map[*Branch][]int{}}
	for _, sw := range c.handles() {
		x.add(c.byPosition(sw, true, nil))
	}
	for _, coil := range c.Branches {
		contacts := c.flow.contacts[coil]
		if slices.ContainsFunc(contacts, (*Branch).changesOver) {
			x.add(c.byState(coil, contacts))
		}
	}
	return x
}

// None tells that nothing is kept from being on at once.
func (x *Exclusive) None() bool { return len(x.of) == 0 }

// add takes a handle by what is on in each of its states.
func (x *Exclusive) add(states []drawn) {
	off, at := make([]drawn, len(states)), len(x.handles)
	for i := range states {
		off[i] = drawn{}
		for _, other := range states {
			for b := range other {
				if states[i][b] {
					continue
				}
				if off[i][b] = true; !slices.Contains(x.of[b], at) {
					x.of[b] = append(x.of[b], at)
				}
			}
		}
	}
	x.handles = append(x.handles, off)
}

// byPosition is what can draw in each position of a switch, of a plain one off and on, everything else that may be
// closed with the key on closed, but for what is open there (nil = nothing); and without what water or pressure
// works and what relays keep on from another position, unless all.
func (c *Circuit) byPosition(sw *design.Switch, all bool, open [][]*Branch) (states []drawn) {
	n := len(sw.Positions)
	if sw.Positions == nil {
		n = 2
	}
	for i := range n {
		var shut []*Branch
		if open != nil {
			shut = open[i]
		}
		states = append(states, c.drawing(c.live(c.anyUse(), shut, all, func(b *Branch) bool {
			switch k := b.Closer; {
			case k.Switch.Lead() != sw:
				return all || !k.Switch.WorksAlone()
			case sw.Positions == nil:
				return i == 1
			default:
				return k.Switch.Gives(sw.Positions[i].Name, k.Output)
			}
		})))
	}
	return states
}

// OpenByPosition are, by switch with several positions and by position, the contacts that are open there and closed in
// another: its own, and those of relays whose coil it gives, but for what stays closed.
func (c *Circuit) OpenByPosition() (list [][]map[*Branch]bool) {
	for _, sw := range c.handles() {
		closed := make([]map[*Branch]bool, len(sw.Positions))
		ever := map[*Branch]bool{}
		for i, p := range sw.Positions {
			gives := at(sw, p.Name)
			now := c.live(c.anyUse(), nil, true, gives)
			closed[i] = map[*Branch]bool{}
			for _, b := range c.Branches {
				if k := b.Closer; k != nil && gives(b) && (k.Coil == nil || now.draws(k.Coil) || b.staysClosed()) {
					closed[i][b], ever[b] = true, true
				}
			}
		}
		open := make([]map[*Branch]bool, len(closed))
		for i := range closed {
			open[i] = map[*Branch]bool{}
			for b := range ever {
				open[i][b] = !closed[i][b]
			}
		}
		list = append(list, open)
	}
	return list
}

// byState is what can draw with a relay at rest and with it pulled in; at rest its coil does
// not, but for one that stays as a pulse left it.
func (c *Circuit) byState(coil *Branch, contacts []*Branch) (states []drawn) {
	for _, rests := range []bool{true, false} {
		var open []*Branch
		for _, b := range contacts {
			if rests != (b.Closer.Break != nil) {
				open = append(open, b)
			}
		}
		on := c.drawing(c.live(c.anyUse(), open, true, func(*Branch) bool { return true }))
		if rests && contacts[0].Closer.Latch == nil {
			delete(on, coil)
		}
		states = append(states, on)
	}
	return states
}

// anyUse is a state in which whatever the key, the engine and conditions give is live.
func (c *Circuit) anyUse() *design.Situation {
	return &design.Situation{Key: design.KeyOn, EngineRPM: 1, With: c.Design.Conditions}
}

// drawing are the accessories and coils that draw.
func (c *Circuit) drawing(r reached) drawn {
	on := drawn{}
	for _, b := range c.Branches {
		if (b.Load != nil && b.Load.Load != nil && !b.Load.Standby || b.OfCoil()) && r.draws(b) {
			on[b] = true
		}
	}
	return on
}

// AtOnce are, of some loads and coils, those that can be on at once and are rated for most
// together; of equals those of the first state.
func (x *Exclusive) AtOnce(draws []*Branch) []*Branch {
	off := drawn{}
	for _, handles := range x.groups(draws) {
		for b := range x.leastOff(handles, draws) {
			off[b] = true
		}
	}
	return off.without(draws)
}

// groups are the handles that bear on some draws, those that bear on the same one together.
func (x *Exclusive) groups(draws []*Branch) (groups [][]int) {
	for _, b := range draws {
		of := slices.Clone(x.of[b])
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

// mostWays is how many ways of setting handles that bear on each other are gone through; of
// more, nothing is left out.
const mostWays = 1 << 10

// leastOff are the draws that some handles leave off, set so that these are rated for least.
func (x *Exclusive) leastOff(handles []int, draws []*Branch) (least drawn) {
	ways := 1
	for _, h := range handles {
		if ways *= len(x.handles[h]); ways > mostWays {
			return nil
		}
	}
	leastA := math.Inf(1)
	for way := range ways {
		off, sumA := drawn{}, 0.0
		for _, h := range handles {
			state := x.handles[h][way%len(x.handles[h])]
			way /= len(x.handles[h])
			for _, b := range draws {
				if state[b] && !off[b] {
					off[b], sumA = true, sumA+x.c.DrawA(b)
				}
			}
		}
		if sumA < leastA {
			least, leastA = off, sumA
		}
	}
	return least
}

func (d drawn) without(draws []*Branch) []*Branch {
	if len(d) == 0 {
		return draws
	}
	return slices.DeleteFunc(slices.Clone(draws), func(b *Branch) bool { return d[b] })
}
