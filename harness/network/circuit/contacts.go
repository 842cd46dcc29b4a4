package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// holds tells whether what is live at a state of the key, or with a condition, is live in
// a situation.
func holds(when design.When, s *design.Situation) bool {
	switch when {
	case design.WhenAlways:
		return true
	case design.WhenKey:
		return s.Key == design.KeyOn
	case design.WhenRunning:
		return Running(s)
	}
	return slices.Contains(s.With, when)
}

// keyOff tells whether a situation of the design has a condition with the key off.
func keyOff(d *design.Design, when design.When) bool {
	return when.Condition() && slices.ContainsFunc(d.Situations, func(s *design.Situation) bool {
		return s.Key == design.KeyOff && slices.Contains(s.With, when)
	})
}

// Running tells whether the engine turns in a situation; it does not with the
// key off.
func Running(s *design.Situation) bool { return s.Key == design.KeyOn && s.EngineRPM > 0 }

// Contacts tells, by branch index, which contacts a situation closes before any
// relay has moved: key contacts by the key and engine; manual switches when the
// situation closes them or a load that is on needs them, over its own feeds and
// returns or those of the coils of relays that it needs, but for those left open, all poles together; of several feeds
// only those whose last switch the situation closes, if it closes any (otherFeeds); not those past a resistor that it
// does not close and does without (leftOpen); of switches
// with positions the outputs given, see Positions; the own switches of loads that
// are on; standby contacts of those that are not. Relay contacts stand at rest:
// make contacts open, break contacts closed; package solve moves them, but for those of
// relays that latch, closed as the situation or a load that is on has them.
// Branches that are no contacts are false.
func Contacts(c *Circuit, s *design.Situation) []bool {
	on := make(map[*design.Load]bool, len(s.On))
	for _, l := range s.On {
		on[l] = true
	}
	byHand := make(map[*design.Switch]bool, len(s.Closed))
	for _, w := range s.Closed {
		byHand[w.Lead()] = true
	}
	at, _ := Positions(c, s)
	passes := func(b *Branch) bool {
		k := b.Closer
		return k == nil || k.Output == "" || k.Switch.Gives(at[k.Switch.Lead()], k.Output)
	}
	shut, left := c.otherFeeds(s), c.leftOpen(s)
	needed := c.neededFor(on, s.Reversed, func(b *Branch) bool { return passes(b) && !shut[b] && !left[b] })
	var live []bool // nil = no switch has positions, by which a way may be dead
	if len(at) > 0 {
		live = c.given(s, passes).live
	}
	latched := map[*design.Relay]bool{}
	for _, r := range s.Held {
		latched[r] = true
	}
	for _, b := range c.Branches {
		if k := b.Closer; needed[b.Index] && k != nil && k.Latch != nil && k.Break == nil {
			latched[k.Latch] = true
		}
		if needed[b.Index] && b.Closer != nil && b.Closer.Switch != nil && (live == nil || live[b.A.Index] || b.Returns()) {
			byHand[b.Closer.Switch.Lead()] = true
		}
	}
	closed := make([]bool, len(c.Branches))
	for i, b := range c.Branches {
		k := b.Closer
		if k == nil {
			continue
		}
		switch {
		case k.Latch != nil:
			closed[i] = latched[k.Latch] == (k.Break == nil)
		case k.Break != nil:
			closed[i] = true
		case k.Key != "":
			closed[i] = holds(k.Key, s)
		case k.Output != "":
			closed[i] = k.Switch.Gives(at[k.Switch.Lead()], k.Output)
		case k.Switch != nil:
			closed[i] = byHand[k.Switch.Lead()] && !slices.Contains(s.Open, k.Switch.Lead())
		case k.OwnSwitch != nil:
			closed[i] = on[k.OwnSwitch]
		case k.Standby != nil:
			closed[i] = !on[k.Standby]
		}
	}
	return closed
}

// neededFor is Needed of the loads that are on; motors that run the other way round are fed
// by the half that turns them. No way leads over what does not pass.
func (c *Circuit) neededFor(on map[*design.Load]bool, reversed []*design.Load, passes func(*Branch) bool) []bool {
	u := newUpstream(c)
	u.coils, u.passes = true, passes
	for _, b := range c.Branches {
		if b.Load == nil || b.Load.Load == nil || !on[b.Load.Load] {
			continue
		}
		hot, cold := b.A, b.B
		if b.Load.Reverses && slices.Contains(reversed, b.Load.Load) {
			cold, hot = b.Halves()
		}
		u.between(hot, cold)
	}
	return u.run()
}

// Present tells, by branch index, which load branches a situation lets draw
// when they have voltage: accessories (their contacts decide) unless their plug is pulled, the
// machine's own loads by the key and engine, or in the situations they name. Branches that are no loads are
// false.
func Present(c *Circuit, s *design.Situation) []bool {
	out := make([]bool, len(c.Branches))
	for i, b := range c.Branches {
		if b.Load == nil {
			continue
		}
		if v := b.Load.Vehicle; v != nil {
			out[i] = draws(v, s)
			continue
		}
		out[i] = b.Load.Load == nil || !slices.Contains(s.Unplugged, b.Load.Load)
	}
	return out
}

// draws tells whether one of the machine's own loads draws in a situation.
func draws(v *design.VehicleLoad, s *design.Situation) bool {
	if len(v.In) > 0 || len(v.While) > 0 {
		return slices.Contains(v.In, s) || s.As != nil && slices.Contains(v.In, s.As) ||
			slices.ContainsFunc(v.While, func(w design.When) bool { return holds(w, s) })
	}
	return holds(v.When, s)
}
