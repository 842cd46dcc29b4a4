package circuit

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
)

// Unmet is a switch no position of which gives what a situation has on. Of a position that
// the situation says, it is what that one does not give and another does.
type Unmet struct {
	Switch *design.Switch
	Loads  []*Branch // on, given in some position of it, and not in the one it is in; in branch order
}

// Positions tells in which position each switch that has several is: the one that the
// situation says; else, of those that give all that is on and is given by the switch, the one
// that puts the least else on, then the one that resistors hold fewest loads back in, then the one with the fewest outputs, then the first of its
// handle. Where no position gives all, it is one that gives the most, and the switch is
// listed as unmet, unless the situation has everything on.
func Positions(c *Circuit, s *design.Situation) (at map[*design.Switch]string, unmet []Unmet) {
	at = map[*design.Switch]string{}
	for _, sw := range c.handles() {
		p, loads := c.positionOf(sw, s)
		at[sw] = p
		if len(loads) > 0 && !s.All {
			unmet = append(unmet, Unmet{sw, loads})
		}
	}
	return at, unmet
}

// handles are the switches with positions, without those that are poles of others.
func (c *Circuit) handles() (list []*design.Switch) {
	for _, p := range c.Parts {
		if s, ok := p.Source.(*design.Switch); ok && s.Positions != nil && s.Pole == nil {
			list = append(list, s)
		}
	}
	return list
}

// givenAt is all that what a switch gives in a position depends on, but for feeds that a situation shuts.
type givenAt struct {
	sw         *design.Switch
	position   string
	unattended bool
	when       string // the key, the engine and the conditions
}

// positionOf chooses the position of one switch, and lists what is on and not given there.
func (c *Circuit) positionOf(sw *design.Switch, s *design.Situation) (position string, unmet []*Branch) {
	// over every other contact that may be closed, or, unattended, without those that water
	// or pressure works
	shut := c.otherFeeds(s)
	when := fmt.Sprint(s.Key, Running(s), s.With)
	given := func(position string, unattended bool) reached {
		find := func() reached {
			return c.given(s, func(b *Branch) bool {
				k := b.Closer
				if shut[b] {
					return false
				}
				if k.Switch.Lead() == sw {
					return k.Switch.Gives(position, k.Output)
				}
				return !unattended || !k.Switch.WorksAlone()
			})
		}
		if shut != nil || c.flow.given == nil { // nil: put together by hand
			return find()
		}
		key := givenAt{sw, position, unattended, when}
		if known, ok := c.flow.given.Load(key); ok {
			return known.(reached)
		}
		r := find()
		c.flow.given.Store(key, r)
		return r
	}
	without := given("", false)
	best, score := 0, [4]int{}
	missing := make([][]*Branch, len(sw.Positions))
	on, own := map[*Branch]bool{}, []*Branch{}
	alone := slices.ContainsFunc(c.Design.Switches, (*design.Switch).WorksAlone)
	live := make([]reached, len(sw.Positions))
	for i, p := range sw.Positions {
		live[i] = given(p.Name, false)
		for _, b := range c.Branches {
			if b.Load != nil && b.Load.Load != nil && !b.Load.Standby && live[i].drawsAs(s, b) && !without.drawsAs(s, b) && !on[b] {
				on[b] = true
				own = append(own, b)
			}
		}
	}
	slices.SortFunc(own, func(a, b *Branch) int { return a.Index - b.Index })
	for i, p := range sw.Positions {
		unattended := live[i]
		if alone {
			unattended = given(p.Name, true)
		}
		now := [4]int{0, 0, 0, len(p.Outputs)}
		for _, b := range own {
			switch listed := slices.Contains(s.On, b.Load.Load); {
			case listed && !live[i].drawsAs(s, b):
				missing[i] = append(missing[i], b)
				now[0]++
			case listed && c.heldBack(b, at(sw, p.Name)):
				now[2]++
			case !listed && unattended.drawsAs(s, b):
				now[1]++
			}
		}
		if i == 0 || slices.Compare(now[:], score[:]) < 0 {
			best, score = i, now
		}
	}
	for _, set := range s.Set {
		if set.Switch == sw {
			best = slices.IndexFunc(sw.Positions, func(p *design.Position) bool { return p.Name == set.Position })
		}
	}
	return sw.Positions[best].Name, missing[best]
}

// reached is what contacts let current through to, by node index: what is live, and what open
// contacts part from battery negative; parted is nil where none stands in a return.
type reached struct{ live, parted []bool }

// draws tells whether what draws is live and has its way back.
func (r reached) draws(b *Branch) bool {
	return r.live[b.A.Index] && (r.parted == nil || !r.parted[b.B.Index])
}

// drawsAs is draws of a load as a situation has it on: a motor that runs either way, the way round that it does there.
func (r reached) drawsAs(s *design.Situation, b *Branch) bool {
	if !b.Load.Reverses {
		return r.draws(b)
	}
	near, far := b.Halves()
	if slices.Contains(s.Reversed, b.Load.Load) {
		near = far
	}
	return r.draws(b) && r.live[near.Index]
}

// given tells what the batteries can feed with the key as the situation has
// it, over those contacts of switches that pass tells of and every other that may close.
func (c *Circuit) given(s *design.Situation, pass func(*Branch) bool) reached {
	seen := make([]bool, len(c.Nodes))
	r := reached{seen, c.shutOff(func(b *Branch) bool { return b.Closer.Switch == nil || pass(b) })}
	var stack []*Node
	visit := func(n *Node) {
		if !seen[n.Index] {
			seen[n.Index], stack = true, append(stack, n)
		}
	}
	passes := func(b *Branch) bool {
		k := b.Closer
		switch {
		case k == nil:
			return true
		case k.Coil != nil:
			return r.draws(k.Coil)
		case k.Key != "":
			return holds(k.Key, s)
		case k.Switch == nil:
			return true
		}
		return pass(b)
	}
	for _, post := range c.Posts() {
		visit(post)
	}
	for len(stack) > 0 {
		n := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, b := range n.feeds {
			if b.Passes(n) && passes(b) {
				visit(b.B)
			}
		}
		for _, b := range n.Branches { // a coil that is live closes what was passed by
			for _, contact := range c.flow.contacts[b] {
				if b.A == n && r.draws(b) && contact.Closer.Coil == b && contact.Feeds() && seen[contact.A.Index] {
					visit(contact.B)
				}
			}
		}
		for _, b := range n.turns {
			visit(b.A)
		}
	}
	return r
}
