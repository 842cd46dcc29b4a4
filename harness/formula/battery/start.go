package battery

import (
	"math"

	"fusewright/harness/design"
	"fusewright/library"
)

// Start is what a start of the engine takes: a long one, of the longest time that
// the starter is on.
type Start struct {
	CurrentA, Seconds float64
	Source            library.Source // of the current; the time is common practice, no source
}

// StartOf is a start by the starter in the design, else by the library's first.
func StartOf(d *design.Design) Start {
	for _, l := range d.Loads {
		if l.Type != nil && l.Type.Starter && l.RatedV > 0 {
			return Start{l.PowerW / l.RatedV, l.OnForS.Value, l.Type.Source}
		}
	}
	for _, lib := range []*library.Library{d.Library, library.Default()} {
		if lib == nil {
			continue
		}
		for _, l := range lib.Loads {
			if l.Starter {
				return Start{l.CurrentA, l.OnForS, l.Source}
			}
		}
	}
	return Start{}
}

// Ah is the charge of a start.
func (s Start) Ah() float64 { return s.CurrentA * s.Seconds / 3600 }

// ToReturnAh is what has to go into the battery to give back a charge taken from it.
func (b *Battery) ToReturnAh(ah float64) float64 { return ah / b.chem.ChargeEfficiency }

// HoursToReturn is how long a current to spare, in amperes, gives a charge back:
// what the battery takes of it in bulk, C times the chemistry's charging share, at
// its charge efficiency. +Inf without anything to spare. The last per cent of a
// full battery come back slower than that, since it takes less and less.
func (b *Battery) HoursToReturn(ah, spareA float64) float64 {
	if !(spareA > 0) {
		return math.Inf(1)
	}
	return b.ToReturnAh(ah) / math.Min(spareA, b.chem.ChargeShare*b.capacityAh)
}
