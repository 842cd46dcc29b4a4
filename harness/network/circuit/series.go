package circuit

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// FlowsOn tells of a load whose current flows on through another in series with it.
func (b *Branch) FlowsOn() bool {
	return b.Load != nil && b.Load.Load != nil && b.Load.Load.Next != nil
}

// Follows tells of a load that takes its current from another in series with it.
func (b *Branch) Follows() bool {
	return b.Load != nil && b.Load.Load != nil && b.Load.Load.Before != nil
}

// InSeries tells whether two branches are loads of one string.
func (b *Branch) InSeries(other *Branch) bool { return slices.Contains(b.String, other) }

// leastStall is how many times its running current a motor draws at the least when it
// stands: a smaller starting current is that of a soft start, which says nothing of a
// blocked motor. From memory: small brushed motors stall at two to three times.
const leastStall = 2.0

// StallRatio is the current of a motor that stands over its running current.
func (c *Circuit) StallRatio(l *design.Load) float64 {
	if l.Inrush.PeakRatio >= leastStall && !l.StartAssumed {
		return l.Inrush.PeakRatio
	}
	lib := c.Design.Library
	if lib == nil {
		lib = library.Default()
	}
	if row := lib.Tolerance("stalled motor"); row != nil {
		return row.Value
	}
	return 1
}

// StalledA is the current of a motor that is held fast; in series as much as the others let through.
func (c *Circuit) StalledA(b *Branch) float64 {
	ratio := c.StallRatio(b.Load.Load)
	if len(b.String) == 0 {
		return ratio * c.DrawA(b)
	}
	ohm := 0.0
	for _, x := range b.String {
		if x == b {
			ohm += x.Load.ratedOhm() / ratio
		} else {
			ohm += x.Load.ratedOhm()
		}
	}
	return c.NominalAt(b.String[0].A) / ohm
}

// ratedOhm is its voltage over its current, both as rated.
func (l *LoadSpec) ratedOhm() float64 { return l.RatedV * l.RatedV / l.PowerW }

// TakesBack tells whether a branch takes current back to battery negative, over the loads in
// series with another too.
func (b *Branch) TakesBack() bool { return b.Returns() || b.BehindLoad() }

// BehindLoad tells of what carries the current of a load in series from the load before
// it: the wire between them, its lead and its own contacts, and itself where a third follows.
func (b *Branch) BehindLoad() bool {
	if b.Wire != nil {
		l, ok := b.Wire.From.Part.Source.(*design.Load)
		return ok && l.Next != nil && b.Wire.From.Name == "-" && b.Wire.Role == FeedWire
	}
	if b.Part == nil {
		return false
	}
	l, ok := b.Part.Source.(*design.Load)
	return ok && l.Before != nil
}

// addStrings sums up the loads in series: what flows through each string at the nominal voltage,
// each load as a resistor of its rated current, but no less than its motor takes.
func (b *builder) addStrings() {
	for _, first := range b.c.Design.Loads {
		if first.Before != nil || first.Next == nil {
			continue
		}
		var string []*Branch
		ohm, motorA := 0.0, math.Inf(1)
		for _, l := range first.InSeries() {
			for _, x := range b.parts[l].Branches {
				if x.Load != nil && !x.Load.Standby {
					string = append(string, x)
					ohm += x.Load.ratedOhm()
					if x.Load.Behaves == design.Motor {
						motorA = math.Min(motorA, x.Load.RatedA())
					}
				}
			}
		}
		a := b.c.Design.NominalOf(first) / ohm
		if !math.IsInf(motorA, 1) {
			a = math.Max(a, motorA)
		}
		for _, x := range string {
			x.Load.StringA, x.String = a, string
		}
	}
}
