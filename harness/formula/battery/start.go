package battery

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/library"
)

// Start is what a start of the engine takes: a long one, of the longest time that
// the starter is on.
type Start struct {
	Starter           string // the design's part, or the library's row
	Own               bool   // a load of the design, on in its situations
	Assumed           bool   // the design neither has nor names one: the library's that fits best
	CurrentA, Seconds float64
	RatedV            float64        // at which it draws CurrentA
	Peak              float64        // what it draws at first, at rest, over CurrentA; 0 = not known
	NeedsV            float64        // the least at which it turns the engine; 0 = not known
	Large             bool           // beside it the battery is usually larger than the design's
	Source            library.Source // of the current; the time is common practice, no source
}

// StartOf is a start by the starter in the design, else by the library's that its charging
// names, else by that whose voltage is nearest, which is for the engine that its title or vehicle speak of, is usual in its practice and goes
// with its battery.
func StartOf(d *design.Design) Start {
	for _, l := range d.Loads {
		if l.Starts() && l.RatedV > 0 {
			return Start{l.Name, true, false, l.PowerW / l.RatedV, l.OnForS.Value, l.RatedV, l.Inrush.PeakRatio, l.NeedsV(), false, l.Type.Source}
		}
	}
	if l := d.Charging.Starter; l != nil {
		named := usualOf(d, l)
		named.Assumed = false
		return named
	}
	for _, lib := range []*library.Library{d.Library, library.Default()} {
		if lib == nil {
			continue
		}
		if l := usualStarter(d, lib); l != nil {
			return usualOf(d, l)
		}
	}
	return Start{}
}

func usualOf(d *design.Design, l *library.LoadType) Start {
	return Start{l.Name, false, true, l.CurrentA, l.OnForS, l.RatedV, l.Inrush.PeakRatio, l.MinV, l.FromAh > d.Battery.CapacityAh.Value, l.Source}
}

// usualStarter is the library's starter that fits a design best; nil when it has none.
func usualStarter(d *design.Design, lib *library.Library) *library.LoadType {
	var best *library.LoadType
	for _, l := range lib.Loads {
		if l.Starter && (best == nil || slices.Compare(starterFit(d, lib, l), starterFit(d, lib, best)) > 0) {
			best = l
		}
	}
	return best
}

// starterFit is how well a starter fits a design, what weighs most first.
func starterFit(d *design.Design, lib *library.Library, l *library.LoadType) []float64 {
	fit := []float64{-math.Abs(l.RatedV - d.NominalV()), said(d, lib, l.Engine), usual(d, lib, l.Practices), l.FromAh}
	if l.FromAh > d.Battery.CapacityAh.Value || d.Charging.Present() && l.FromA > mostA(d) { // too large for the battery, or the alternator
		fit[3] = -1
	}
	return fit
}

// mostA is the most that the charging system gives.
func mostA(d *design.Design) (most float64) {
	for _, x := range d.Charging.Output {
		most = max(most, x.CurrentA.Value)
	}
	return most
}

// said is 1 of the engine that a design speaks of, -1 of another, 0 where it speaks of none.
func said(d *design.Design, lib *library.Library, engine string) float64 {
	switch {
	case engine == "":
		return 0
	case d.Says(engine):
		return 1
	case slices.ContainsFunc(lib.Loads, func(l *library.LoadType) bool { return l.Engine != "" && d.Says(l.Engine) }):
		return -1
	}
	return 0
}

// usual is how usual a part of some practices is in the design's: 1 in one of them, a half
// in one of its builder's own that is afloat as they are, or ashore, 0 elsewhere.
func usual(d *design.Design, lib *library.Library, practices []string) float64 {
	if d.Practice == nil {
		return 0
	}
	if lib.Among(d.Practice, practices) {
		return 1
	}
	for _, name := range practices {
		if p := library.Default().Practice(name); p != nil && p.Afloat == d.Practice.Afloat {
			return 0.5
		}
	}
	return 0
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
