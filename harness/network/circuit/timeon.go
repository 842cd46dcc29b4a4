package circuit

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// TimeOn is how long at a time the current of a wire flows, and how often.
type TimeOn struct {
	bundle.Cycle         // zero = for good
	SteadyA      float64 // of its current, what may flow for good or in no such cycle
	UsedA        float64 // all of its current by the rated draws
}

// steadyOver is how much more than rated a load may draw: by its tolerance, and a
// resistor at the charging voltage (common practice, no source).
const steadyOver = 1.25

// Covers tells that a load is on no longer and no more often.
func (t TimeOn) Covers(l *design.Load) bool { return t.Timed() && cycleOf(l).within(t.Cycle) }

// Timed tells that not all of a wire's current flows for good.
func (t TimeOn) Timed() bool { return t.OnS > 0 }

// pulse is what a wire in a place may carry the more for it.
func (t TimeOn) pulse(w conductor.Insulated, ambientC, limitC float64) bundle.Pulse {
	if !t.Timed() {
		return bundle.Pulse{}
	}
	return bundle.Pulse{Gain: bundle.GainOf(w, ambientC, limitC, t.Cycle), SteadyA: t.SteadyA, UsedA: t.UsedA}
}

// timed is a load that is on for a time, and the situations in which it is on.
type timed struct {
	bundle.Cycle
	in map[*design.Situation]bool
}

// cycleOf is when a load is on; nil where its time on or its period is not known.
func cycleOf(l *design.Load) *timed {
	if l == nil || !l.OnForS.Given() || !(l.EveryS.Value > l.OnForS.Value) {
		return nil
	}
	return &timed{bundle.Cycle{OnS: l.OnForS.Value, EveryS: l.EveryS.Value}, map[*design.Situation]bool{}}
}

// within tells that what has a cycle is on no longer and no more often than another.
func (t *timed) within(c bundle.Cycle) bool {
	return t != nil && t.OnS <= c.OnS && t.EveryS >= c.EveryS
}

// timeWires finds how long at a time wires and fuses carry their currents. One of
// several loads goes by the cycle of one of them, the one that leaves least mean
// heat; the loads that are on longer or more often than that count as on for good.
func (c *Circuit) timeWires() {
	use := c.newUse()
	loads := use.timedLoads()
	if len(loads) == 0 {
		return
	}
	totalA, steadyA := use.most(nil), map[bundle.Cycle][]float64{}
	through := make([][]*timed, len(c.Branches))
	for _, b := range c.Branches {
		t := loads[b]
		if t == nil {
			continue
		}
		for _, x := range use.way(b) {
			through[x.Index] = append(through[x.Index], t)
		}
		if steadyA[t.Cycle] == nil {
			steadyA[t.Cycle] = use.most(func(b *Branch) bool { return loads[b].within(t.Cycle) })
		}
	}
	for i, b := range c.Branches {
		if b.Wire == nil && b.Fuse == nil {
			continue
		}
		least := totalA[i] * totalA[i]
		for _, t := range through[i] {
			on := TimeOn{together(through[i], t.Cycle), math.Min(totalA[i], steadyOver*steadyA[t.Cycle][i]), totalA[i]}
			squared := on.SteadyA * on.SteadyA
			if mean := squared + (totalA[i]*totalA[i]-squared)*on.OnS/on.EveryS; mean < least {
				least, b.TimeOn = mean, on
			}
		}
	}
}

// timedLoads are the accessories whose time on and period are known, by branch.
func (u *use) timedLoads() map[*Branch]*timed {
	loads := map[*Branch]*timed{}
	for _, b := range u.c.Branches {
		if b.Load == nil || b.Load.Standby {
			continue
		}
		if t := cycleOf(b.Load.Load); t != nil {
			loads[b] = t
		}
	}
	if len(loads) == 0 {
		return nil
	}
	for _, s := range u.c.Design.Situations {
		on := isOn(s)
		for b, t := range loads {
			t.in[s] = u.draws(b, on, s)
		}
	}
	return loads
}

// together is the cycle of all loads within one: its own where a situation has them
// all on at once, else one after the other.
func together(loads []*timed, c bundle.Cycle) bundle.Cycle {
	sum, common := 0.0, map[*design.Situation]int{}
	n, most := 0, 0
	for _, t := range loads {
		if !t.within(c) {
			continue
		}
		n++
		sum += t.OnS
		for s, on := range t.in {
			if on {
				common[s]++
				most = max(most, common[s])
			}
		}
	}
	if most < n {
		c.OnS = math.Min(c.EveryS, sum)
	}
	return c
}

// FuseShare is the share of its rating that a fuse may carry of what hangs on it, when it
// may carry a share of what is on for good: of what is on for less than three hours the
// rating bears all (NFPA 70 210.20(A): 125 % of the continuous and 100 % of the other
// load), as long as the mean heat over its cycle is no more than that of the share.
func (c *Circuit) FuseShare(draws []*Branch, share float64) float64 {
	sumA, asksA := 0.0, 0.0
	for _, b := range draws {
		a, on := c.DrawA(b), 1.0
		if b.Load != nil && b.Load.Load != nil {
			on = b.Load.Load.HeatShare()
		}
		sumA += a
		asksA += a * math.Max(1, math.Sqrt(on)/share)
	}
	if share > 0 && sumA > 0 {
		return sumA / asksA
	}
	return share
}
