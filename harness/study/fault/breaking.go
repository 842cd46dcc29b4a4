package fault

import (
	"math"
	"slices"

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
