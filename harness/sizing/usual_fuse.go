package sizing

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// usualFuseA is the least rating of the fuse right before a load, as its makers fit it: a compressor that starts
// against pressure takes more than its label. 0 = nothing says.
func usualFuseA(l *design.Load, systemV float64) float64 {
	if l == nil || l.Type == nil || l.Type.Fuse.RatingA == 0 {
		return 0
	}
	return math.Min(l.Type.Fuse.RatingA*l.Type.RatedV/systemV, l.MostFuseA.Or(math.Inf(1)))
}

// underUsual are the fuses chosen here that are smaller than the makers of what is right behind them fit. Afloat one
// that breaks the short only since it is small has no larger of its type, and of another nothing is gained.
func (s *search) underUsual(v *verdict) (list []*finding.Finding) {
	for _, b := range s.chosenFuses(v) {
		if f := v.protection.Find(b); f != nil && s.d.Practice.Afloat && f.FaultA > b.Fuse.Type.BreakingAt(v.c.NominalAt(b.A)) {
			continue
		}
		for _, x := range v.c.BelowBranch(b).Loads {
			least := usualFuseA(x.Load.Load, v.c.NominalAt(b.A))
			if !(b.Fuse.Rating.RatingA < least) || nearestFuse(v.c, x) != b {
				continue
			}
			list = append(list, &finding.Finding{Rule: "fuse-inrush", Severity: finding.Advice, Part: x.Part.Name, Ref: x.Part.Ref, Pos: b.Fuse.Pos,
				What: fmt.Sprintf("fuse %s (%s, %s) is smaller than the %s that makers of a %s fit", b.Fuse.Ref, b.Part.Name,
					quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current), quantity.Plain(least, quantity.Current), x.Load.Load.Type.Name)})
		}
	}
	return list
}

// nearestFuse is the last fuse on the main way to a load; nil = none.
func nearestFuse(c *circuit.Circuit, load *circuit.Branch) (fuse *circuit.Branch) {
	for _, b := range c.MainFeed(load.A).Branches {
		if b.Kind == circuit.FuseBranch {
			fuse = b
		}
	}
	return fuse
}
