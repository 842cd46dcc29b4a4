package whatif

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/study/budget"
)

// Figure is a figure before and after.
type Figure struct {
	About, What string // "left lamp", "lost on the way, worst"
	Note        string // what it is held against: "allowed 360 mV"
	Ref         string // of the part or wire
	Was, Now    float64
	Limit       float64 // above which it is too much; +Inf = none
	Dim         quantity.Dimension
	Better      int // +1 = it moved away from risk, -1 towards it, 0 = that says nothing
	Always      bool
}

const (
	// leastShare of a figure is what its change is at least to be listed; mostFigures of
	// a kind are, those that changed most; of balances mostBalances.
	leastShare                = 0.005
	mostFigures, mostBalances = 4, 24
)

// change is how far a figure moved, as a share; +Inf from or to nothing.
func (f Figure) change() float64 {
	if f.Was == f.Now || math.IsNaN(f.Was) && math.IsNaN(f.Now) {
		return 0
	}
	return math.Abs(f.Now-f.Was) / math.Max(math.Min(math.Abs(f.Was), math.Abs(f.Now)), 1e-9)
}

// moved tells whether a figure's change is worth a line: a share by two in a hundred of the whole,
// what a load has or loses by a hundredth, all else by leastShare.
func (f Figure) moved() bool {
	switch f.Dim {
	case quantity.Share:
		return math.Abs(f.Now-f.Was) >= 0.02
	case quantity.Voltage:
		return f.change() >= 0.01
	}
	return f.change() >= leastShare
}

// merged makes one figure of those of several loads that are alike.
func merged(list []Figure) (out []Figure) {
	for _, f := range list {
		if i := slices.IndexFunc(out, func(o Figure) bool {
			return f.Dim == quantity.Voltage && o.What == f.What && o.Note == f.Note && math.Abs(o.Was-f.Was) < 1e-3 && math.Abs(o.Now-f.Now) < 1e-3
		}); i >= 0 {
			out[i].About += ", " + f.About
			continue
		}
		out = append(out, f)
	}
	return out
}

// figures gathers what moved.
func (o *Outcome) figures(was, now *harness.Review) {
	for i, list := range [][]Figure{balances(was, now), drops(was, now), lowest(was, now), fuses(was, now), wires(was, now)} {
		most := mostFigures
		if i == 0 {
			most = mostBalances
		}
		list = merged(slices.DeleteFunc(list, func(f Figure) bool { return !f.Always && !f.moved() }))
		slices.SortStableFunc(list, func(a, b Figure) int { return cmp.Compare(b.change(), a.change()) })
		o.Figures = append(o.Figures, list[:min(len(list), most)]...)
	}
	copperWas, copperNow := o.CopperG()
	o.Figures = append(o.Figures, Figure{About: "copper in the loom", Limit: math.Inf(1), Was: copperWas, Now: copperNow, Dim: quantity.Mass, Always: true})
}

// better tells which way a figure moved, where more of it is worse (sign 1) or better (-1).
func better(was, now float64, sign int) int {
	switch {
	case now > was:
		return -sign
	case now < was:
		return sign
	}
	return 0
}

// loads are the load branches of a review by name.
func loads(r *harness.Review) map[string]*circuit.Branch {
	list := map[string]*circuit.Branch{}
	for _, b := range r.Circuit.Branches {
		if b.Load != nil && b.Load.Load != nil && !b.Load.Standby {
			list[b.Load.Load.Name] = b
		}
	}
	return list
}

// perLoad compares a figure of each load that is in both.
func perLoad(was, now *harness.Review, what string, sign int, figure func(*harness.Review, *circuit.Branch) (float64, bool), limit func(*design.Load) float64) (list []Figure) {
	before := loads(was)
	for _, l := range now.Design.Loads {
		old, is := before[l.Name]
		b := loads(now)[l.Name]
		if !is || b == nil {
			continue
		}
		x, known := figure(was, old)
		y, also := figure(now, b)
		if known && also {
			f := Figure{About: l.Name, What: what, Note: "at nominal", Ref: b.Part.Ref, Was: x, Now: y, Limit: limit(l), Dim: quantity.Voltage, Better: better(x, y, sign)}
			if !math.IsInf(f.Limit, 1) {
				f.Note = "allowed " + quantity.Format(f.Limit, quantity.Voltage)
			}
			list = append(list, f)
		}
	}
	return list
}

func on(r *harness.Review, b *circuit.Branch) func(int) bool {
	return func(i int) bool { return r.Corners.Solution(i).LoadOn[b.Index] }
}

func drops(was, now *harness.Review) []Figure {
	return perLoad(was, now, "lost on the way, at worst", 1, func(r *harness.Review, b *circuit.Branch) (float64, bool) {
		v, at := r.Corners.WorstIn(1, corner.AtWorst, on(r, b), func(i int) corner.Value { return r.Corners.Drop(i, b) })
		return v.Corner, at >= 0
	}, func(l *design.Load) float64 {
		limit, _ := corner.DropLimit(now.Design, l.Critical)
		return limit * now.Design.NominalV()
	})
}

func lowest(was, now *harness.Review) []Figure {
	return perLoad(was, now, "lowest volts", -1, func(r *harness.Review, b *circuit.Branch) (float64, bool) {
		v, at := r.Corners.WorstIn(-1, corner.AtNominal, on(r, b), func(i int) corner.Value { return r.Corners.LoadV(i, b) })
		return v.Nominal, at >= 0
	}, func(*design.Load) float64 { return math.Inf(1) })
}

func balances(was, now *harness.Review) (list []Figure) {
	before := map[string]*budget.Line{}
	for _, l := range slices.Concat(was.Budget.Lines, was.Budget.KeyOff) {
		before[l.Situation.Name] = l
	}
	for _, l := range slices.Concat(now.Budget.Lines, now.Budget.KeyOff) {
		old := before[l.Situation.Name]
		if old == nil || !old.Usable || !l.Usable {
			continue
		}
		if l.Situation.EngineRPM == 0 {
			list = append(list, Figure{About: "out of the battery, " + l.Situation.Name, Limit: math.Inf(1), Was: old.BatteryA, Now: l.BatteryA, Dim: quantity.Current,
				Better: better(old.BatteryA, l.BatteryA, 1)})
		} else {
			list = append(list, Figure{About: "spare, " + l.Situation.Name, Limit: math.Inf(1), Was: old.SpareA, Now: l.SpareA, Dim: quantity.Current,
				Better: better(old.SpareA, l.SpareA, -1)})
		}
		if !math.IsInf(old.BatteryHours, 1) || !math.IsInf(l.BatteryHours, 1) {
			list = append(list, Figure{About: "battery covers " + l.Situation.Name + " for", Limit: math.Inf(1), Was: 3600 * old.BatteryHours, Now: 3600 * l.BatteryHours, Dim: quantity.Duration,
				Better: better(old.BatteryHours, l.BatteryHours, -1)})
		}
	}
	return append(list, Figure{About: "engine still starts, " + now.Design.Spoken().Parked, Limit: math.Inf(1), Was: 86400 * was.Budget.StandbyDays, Now: 86400 * now.Budget.StandbyDays,
		Dim: quantity.Duration, Better: better(was.Budget.StandbyDays, now.Budget.StandbyDays, -1)})
}

// most is the greatest nominal current of a branch over the situations.
func most(r *harness.Review, b *circuit.Branch) float64 {
	v, _ := r.Corners.WorstIn(1, corner.AtNominal, func(int) bool { return true }, func(i int) corner.Value { return r.Corners.Amps(i, b) })
	return v.Nominal
}

func fuses(was, now *harness.Review) []Figure {
	return perBranch(was, now, "of what the fuse bears, at most", func(r *harness.Review, b *circuit.Branch) (string, float64) {
		if may := corner.FuseBearsA(r.Design, b, 0); may > 0 {
			return b.Way(), may
		}
		return "", 0
	})
}

func wires(was, now *harness.Review) []Figure {
	return perBranch(was, now, "of what the wire may carry, at most", func(r *harness.Review, b *circuit.Branch) (string, float64) {
		if b.Wire == nil || !r.Corners.Model.Wires[b.Wire.Index].Known {
			return "", 0
		}
		return b.Wire.From.Part.Name + ":" + b.Wire.From.Name + " to " + b.Wire.To.Part.Name + ":" + b.Wire.To.Name, r.Corners.Model.Wires[b.Wire.Index].AllowedA
	})
}

func perBranch(was, now *harness.Review, what string, of func(*harness.Review, *circuit.Branch) (string, float64)) (list []Figure) {
	before := map[string]float64{}
	for _, b := range was.Circuit.Branches {
		if name, may := of(was, b); may > 0 {
			before[name] = most(was, b) / may
		}
	}
	for _, b := range now.Circuit.Branches {
		name, may := of(now, b)
		old, is := before[name]
		if !(may > 0) || !is {
			continue
		}
		about, ref := name, ""
		if b.Wire != nil {
			ref, about = b.Wire.Number, b.Wire.Number+", "+b.Wire.Purpose()
		} else if b.Fuse != nil {
			ref, about = b.Fuse.Ref, b.Fuse.Ref+", "+name
		}
		share := most(now, b) / may
		list = append(list, Figure{About: about, What: what, Ref: ref, Was: old, Now: share, Limit: 1, Dim: quantity.Share, Better: better(old, share, 1)})
	}
	return list
}
