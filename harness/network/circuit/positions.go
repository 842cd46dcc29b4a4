package circuit

import (
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

// positionOf chooses the position of one switch, and lists what is on and not given there.
func (c *Circuit) positionOf(sw *design.Switch, s *design.Situation) (position string, unmet []*Branch) {
	// over every other contact that may be closed, or, unattended, without those that water
	// or pressure works
	shut := c.otherFeeds(s)
	given := func(position string, unattended bool) reached {
		return c.given(s, nil, func(b *Branch) bool {
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
// it, over those contacts of switches that pass tells of and every other that may close, but
// for those open.
func (c *Circuit) given(s *design.Situation, open []*Branch, pass func(*Branch) bool) reached {
	return c.live(s, open, false, pass)
}

// live is given; with late, contacts that stay closed without their coil count as closed by what was before.
func (c *Circuit) live(s *design.Situation, open []*Branch, late bool, pass func(*Branch) bool) reached {
	seen := make([]bool, len(c.Nodes))
	r := reached{seen, c.shutOff(func(b *Branch) bool { return !slices.Contains(open, b) && (b.Closer.Switch == nil || pass(b)) })}
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
		case slices.Contains(open, b):
			return false
		case k.Coil != nil:
			return r.draws(k.Coil) || late && b.staysClosed()
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
				if b.A == n && r.draws(b) && contact.Closer.Coil == b && contact.Feeds() && !slices.Contains(open, contact) && seen[contact.A.Index] {
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

// staysClosed tells of a contact that a coil without supply may leave closed: of a relay that latches, or with an off delay.
func (b *Branch) staysClosed() bool {
	r, _ := b.Part.Source.(*design.Relay)
	return b.Closer.Latch != nil || r != nil && r.OffDelayS.Given()
}

// ByPosition are, by position of a switch that has several, the loads and coils that it gives
// there and leaves off in another, without what water or pressure works behind it. Everything
// else that may be closed with the key on counts as closed. A relay that it works changes over
// with it. A plain switch is off and on, and is one such where a relay changes over with it; nil where none does.
func (c *Circuit) ByPosition(sw *design.Switch) [][]*Branch {
	if sw.Positions == nil && !slices.ContainsFunc(c.Branches, func(b *Branch) bool { return b.Closer != nil && b.Closer.Break != nil }) {
		return nil
	}
	states := c.byPosition(sw, false, nil)
	open := c.changedOver(states)
	switch {
	case open != nil:
		states = c.byPosition(sw, false, open)
	case sw.Positions == nil:
		return nil
	}
	list := make([][]*Branch, len(states))
	for i := range states {
		for _, b := range c.Branches {
			if states[i][b] && slices.ContainsFunc(states, func(s drawn) bool { return !s[b] }) {
				list[i] = append(list[i], b)
			}
		}
	}
	return list
}

// changedOver are, by state, the contacts that relays which change over open there and not in all states: those closed
// at rest, and in a return the others too, which nothing else parts; nil where none do.
func (c *Circuit) changedOver(states []drawn) (open [][]*Branch) {
	for _, b := range c.Branches {
		k := b.Closer
		if k == nil || k.Latch != nil || !b.changesOver() && (k.Coil == nil || b.Feeds() || !slices.ContainsFunc(c.flow.contacts[k.Coil], (*Branch).changesOver)) {
			continue
		}
		opens := func(s drawn) bool { return k.Break != nil && s[k.Break] || k.Coil != nil && !s[k.Coil] }
		if !slices.ContainsFunc(states, opens) || !slices.ContainsFunc(states, func(s drawn) bool { return !opens(s) }) {
			continue
		}
		if open == nil {
			open = make([][]*Branch, len(states))
		}
		for i, s := range states {
			if opens(s) {
				open[i] = append(open[i], b)
			}
		}
	}
	return open
}

// changesOver tells of a contact that is closed while its coil is not energised, but for the grounded one of a motor that
// runs either way, which the other relay's stands against.
func (b *Branch) changesOver() bool {
	r, _ := b.Part.Source.(*design.Relay)
	return b.Closer.Break != nil && (b.Feeds() || r == nil || !r.Rests)
}
