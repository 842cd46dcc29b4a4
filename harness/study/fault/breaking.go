package fault

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
)

// BreaksA is the greatest short in amperes that a fuse with none before it is good for:
// the breaking capacity of its type at the system's voltage, or +Inf where that is not
// known, or is as much as the table of boats asks of it. Behind another fuse the first one limits the
// short. Study and rules judge by it alike.
func BreaksA(c *circuit.Circuit, b *circuit.Branch) float64 {
	if b.Fuse == nil || b.Fuse.Type == nil || b.Fuse.Type.BreakingA <= 0 {
		return math.Inf(1)
	}
	breaks := b.Fuse.Type.BreakingAt(c.Design.NominalV())
	if breaks >= mustBreakA(c, b) {
		return math.Inf(1)
	}
	return breaks
}

// mustBreakA is what the standard of boats asks of a device by its battery's
// cold-cranking current, without bound where it says nothing: more of a main device,
// which feeds others.
func mustBreakA(c *circuit.Circuit, b *circuit.Branch) float64 {
	d := c.Design
	bank := battery.Of(d)
	if d.Practice == nil || !d.Practice.Afloat || bank == nil || bank.CrankingA() == 0 {
		return math.Inf(1)
	}
	row := d.Library.InterruptingFor(bank.CrankingA())
	main := slices.ContainsFunc(c.BelowBranch(b).Branches, func(x *circuit.Branch) bool { return x.Kind == circuit.FuseBranch })
	switch {
	case row == nil:
		return math.Inf(1)
	case main:
		return row.MainA
	}
	return row.BranchA
}

// The ratio within which a fault current is not known better: the battery's resistance
// decides it, and differs by more between two of a type. A small device's own resistance and
// contacts limit the current more than the study's new ones do (common practice, no source).
const (
	roughly      = 1.1
	smallRoughly = 1.5
	smallA       = 30.0 // up to which a device is small
)

// Near is how many times its capacity a short may be and still near it.
func Near(b *circuit.Branch) float64 {
	if b.Fuse.Rating != nil && b.Fuse.Rating.RatingA <= smallA {
		return smallRoughly
	}
	return roughly
}

// TrustedA is the greatest short of which nothing is said: what a fuse with none before it is good for, and of
// a fuse-link of a vehicle that is behind no lithium house pack what is near that, since the short is the strongest
// there may be, and factories fit such.
func TrustedA(c *circuit.Circuit, b *circuit.Branch) float64 {
	breaks := BreaksA(c, b)
	if math.IsInf(breaks, 1) || b.Fuse.Type.Kind != "fuse" || c.Design.Afloat() || HousePack(c, b) {
		return breaks
	}
	return breaks * Near(b)
}

// HousePack tells whether the battery at an end of a fuse drives a short as a lithium house pack does: by its
// resistance where the design gives it, which is then no more than the least pack's, else
// by its capacity.
func HousePack(c *circuit.Circuit, fuse *circuit.Branch) bool {
	if isPack(c, fuse.A) {
		return true
	}
	return c.IsPost(fuse.B) && isPack(c, fuse.B) || slices.ContainsFunc(fuse.B.FeedsOn(), func(b *circuit.Branch) bool {
		return c.IsPost(b.B) && isPack(c, b.B)
	})
}

// isPack tells whether the battery that feeds a node is one.
func isPack(c *circuit.Circuit, n *circuit.Node) bool {
	b := &c.Design.Battery
	plus, _ := c.Supply(n)
	for _, t := range plus.Terminals {
		if bank, further := t.Part.Source.(*design.Bank); further {
			b = &bank.Store
			break
		}
	}
	if b.Chemistry == nil || b.Chemistry.HouseAh <= 0 {
		return false
	}
	if b.ResistanceOhm.Given() {
		return b.GivenOhm() <= b.Chemistry.Ohm(b.Chemistry.HouseAh)*c.Design.NominalV()/12*(1+1e-9)
	}
	return b.Chemistry.House(b.CapacityAh.Value)
}
