package corner

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// DropLimit is the share of the system voltage that a load's circuit may lose,
// feed and return together, and whether the design sets it; else it is the
// practice's.
func DropLimit(d *design.Design, critical bool) (limit float64, given bool) {
	q, limit := d.Limits.DropOther, 0.0
	if d.Practice != nil {
		limit = d.Practice.DropOther
	}
	if critical {
		q = d.Limits.DropCritical
		if d.Practice != nil {
			limit = d.Practice.DropCritical
		}
	}
	if q.Given() {
		return q.Value, true
	}
	return limit, false
}

// HeldDrop is the share to which a load's wires are held, at nominal: that of critical loads for what the library calls such on
// boats too, see DropAim.
func HeldDrop(d *design.Design, l *design.Load) (limit float64, given bool) {
	return DropLimit(d, l.Critical || l.TightDrop)
}

// The keys of the practice's aims, see DropAim; AimOwn is the load's own, AimCritical
// the limit of critical loads for what the library calls critical on boats.
const AimLong, AimConverters, AimOwn, AimCritical = "drop aim", "drop aim converters", "", "drop critical"

// shortS is the longest time on of what has no aim: a horn, a winch, a thruster
// (common practice, no source).
const shortS = 5 * 60

// ShortTime tells whether a load is on for a short time at once.
func ShortTime(l *design.Load) bool { return l.OnForS.Given() && l.OnForS.Value <= shortS }

// DropAim is the share of the system voltage that the trade lets the wires of a
// load lose, below the limit, and the key of the practice's value: that of the load
// or its type, the limit of critical loads for what is such on boats, else less for a large load of constant power. Else what is on for a
// short time has none: +Inf.
func DropAim(c *circuit.Circuit, load *circuit.Branch) (share float64, key string) {
	l, p := load.Load.Load, c.Design.Practice
	switch {
	case l != nil && l.DropAim.Given():
		return l.DropAim.Value, AimOwn
	case l != nil && l.TightDrop:
		limit, _ := DropLimit(c.Design, true)
		return limit, AimCritical
	case l == nil || p == nil || l.Duty.Value < 1 || ShortTime(l):
		return math.Inf(1), ""
	case load.Load.Behaves == design.ConstantPower && c.DrawA(load) >= p.ConvertersA*(1-1e-9):
		return p.DropAimConverters, AimConverters
	}
	return p.DropAim, AimLong
}

// FuseBearsA is what a fuse carries for good: the smaller of the practice's share
// of the rating and the maker's share at the ambient of its place, which is
// hotter by aboveK than the design says. The two are not multiplied: the maker's table already gives continuous current. Zero when
// the rating is not known.
func FuseBearsA(d *design.Design, b *circuit.Branch, aboveK float64) float64 {
	if b.Fuse == nil || b.Fuse.Rating == nil {
		return 0
	}
	share := 1.0
	if d.Practice != nil && d.Practice.FuseLoadShare > 0 {
		share = d.Practice.FuseLoadShare
	}
	if maker, known := b.Device(aboveK).Share(); known {
		share = math.Min(share, maker)
	}
	return share * b.Fuse.Rating.RatingA
}

// WorstIn takes a figure over the usable situations that count and gives the one
// whose figure of a kind is greatest (sign 1) or least (sign -1), of equals the
// first by name; situation -1 = none.
func (s *Set) WorstIn(sign float64, by Kind, counts func(situation int) bool,
	figure func(situation int) Value) (v Value, situation int) {
	situation = -1
	for i := range s.Results[Nominal] {
		if !s.Usable(i) || !counts(i) {
			continue
		}
		x := figure(i)
		now, worst := sign*x.Of(by), sign*v.Of(by)
		if situation < 0 || Beyond(now, worst) || !Beyond(worst, now) && s.before(i, situation) {
			v, situation = x, i
		}
	}
	return v, situation
}

func (s *Set) before(i, k int) bool {
	return s.Results[Nominal][i].Solution.Situation.Compare(s.Results[Nominal][k].Solution.Situation) < 0
}

// tie is the share by which figures must differ to count as different: more than
// the rounding of the sums, far less than anybody would act on.
const tie = 1e-9

// Beyond tells whether a figure is greater than another by more than rounding. Of
// situations that are equally bad the first by name is taken, however the last
// digit falls.
func Beyond(a, b float64) bool { return a-b > tie*math.Min(math.Abs(a), math.Abs(b)) }
