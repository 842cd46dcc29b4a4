package circuit

import (
	"math"
	"slices"

	"fusewright/harness/design"
)

// ResistorSpare is how many times the heat that it makes a resistor is bought for, which else is too
// hot to touch (common practice, no source).
const ResistorSpare = 2.0

// Dropper tells of a resistor that stands in a feed or return as a part of its own.
func (b *Branch) Dropper() bool { return b.Part != nil && b.Part.Kind == Resistor }

// findFans marks the motors with a resistor before or behind them, in some position or always: what a resistor
// slows is a fan or pump (common practice, no source).
func (c *Circuit) findFans() {
	if len(c.Design.Resistors) == 0 {
		return
	}
	for _, b := range c.Branches {
		if b.Load != nil && b.Load.Load != nil && b.Load.turnsAir() && c.BehindDropper(b) {
			b.Load.FanStall = c.StallRatio(b.Load.Load)
		}
	}
}

// turnsAir tells of a motor whose torque may follow its speed. A horn has no speed; what runs either way, for a time at once or starts
// an engine pulls at any speed what hangs on it.
func (l *LoadSpec) turnsAir() bool {
	x := l.Load
	return l.Behaves == design.Motor && x.Sign != design.SignHorn && !l.Reverses && (!x.OnForS.Given() || x.Cycles) &&
		(x.Type == nil || !x.Type.Starter && len(x.Type.Turns) == 0)
}

// HasFans tells whether a motor is taken as a fan.
func (c *Circuit) HasFans() bool {
	return slices.ContainsFunc(c.Branches, func(b *Branch) bool { return b.Load != nil && b.Load.FanStall > 0 })
}

// FanA is what a fan or pump draws at some volts, and its slope in siemens. The torque of its motor, and so the
// current I, follows the square of its speed y, a share of the rated one: the winding takes Ra·I, turning the rest,
// Ra·I rated·y² + (V rated − Ra·I rated)·y = V. Laws of direct-current motors and of fans: from memory.
func FanA(volts, ratedA, ratedV, windingOhm float64) (amps, siemens float64) {
	e := ratedV - windingOhm*ratedA
	root := math.Sqrt(e*e + 4*windingOhm*ratedA*volts)
	y := 2 * volts / (e + root)
	return ratedA * y * y, 2 * ratedA * y / root
}

// WindingOhm is that of a fan that draws so much when it runs: its volts over its current as it stands.
func (l *LoadSpec) WindingOhm(runsA float64) float64 { return l.RatedV / (l.FanStall * runsA) }

// BehindDropper tells whether a resistor stands on some way to a load or back.
func (c *Circuit) BehindDropper(load *Branch) bool {
	u := newUpstream(c)
	u.between(load.A, load.B)
	if load.Load.Reverses {
		_, far := load.Halves()
		u.fed(far)
	}
	on := u.run()
	return slices.ContainsFunc(c.Branches, func(b *Branch) bool { return on[b.Index] && b.Dropper() })
}

// heldBack tells whether every way to a load, or every way back, that some contacts leave leads
// over a resistor.
func (c *Circuit) heldBack(load *Branch, passes func(*Branch) bool) bool {
	if len(c.Design.Resistors) == 0 {
		return false
	}
	over := func(paths []Path) bool {
		paths = slices.DeleteFunc(paths, func(p Path) bool {
			return slices.ContainsFunc(p.Branches, func(b *Branch) bool { return !passes(b) })
		})
		return len(paths) > 0 && !slices.ContainsFunc(paths, func(p Path) bool { return !slices.ContainsFunc(p.Branches, (*Branch).Dropper) })
	}
	feeds, _ := c.FeedPaths(load.A)
	returns, _ := c.ReturnPaths(load.B)
	return over(feeds) || over(returns)
}

// at tells of contacts whether a position of a switch closes them; those of others count as closed.
func at(sw *design.Switch, position string) func(*Branch) bool {
	return func(b *Branch) bool {
		k := b.Closer
		return k == nil || k.Switch == nil || k.Switch.Lead() != sw || k.Switch.Gives(position, k.Output)
	}
}

// OtherPositions are situations like one in which a load is on, in the other positions of a switch that
// give it too, where a resistor holds it back in some.
func (c *Circuit) OtherPositions(like *design.Situation, l *design.Load, load *Branch) (list []*design.Situation) {
	if len(c.Design.Resistors) == 0 {
		return nil
	}
	now, _ := Positions(c, like)
	for _, sw := range c.handles() {
		var others []string
		held := c.heldBack(load, at(sw, now[sw]))
		for _, p := range sw.Positions {
			gives := c.given(like, func(b *Branch) bool { return at(sw, p.Name)(b) })
			if p.Name == now[sw] || !gives.draws(load) || c.given(like, func(b *Branch) bool { return b.Closer.Switch.Lead() != sw }).draws(load) {
				continue
			}
			held = held || c.heldBack(load, at(sw, p.Name))
			others = append(others, p.Name)
		}
		for _, name := range others {
			if !held {
				break
			}
			still, set := *like, design.Setting{Switch: sw, Position: name}
			still.Set = append(slices.DeleteFunc(slices.Clone(still.Set), func(o design.Setting) bool { return o.Switch == sw }), set)
			still.Name += ", " + l.Name + " with " + set.String()
			if slices.ContainsFunc(like.Set, func(o design.Setting) bool { return o.Switch == sw }) {
				still.Name += " in place of " + now[sw]
			}
			list = append(list, &still)
		}
	}
	return list
}
