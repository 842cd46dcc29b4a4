package sizing

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

// stiffOhm is the battery's resistance where its posts are held at a voltage.
const stiffOhm = 1e-6

// underHeld are the fuses chosen here that are too small for what they carry continuously
// with the posts at the regulated voltage: a heater draws most while the battery is charged,
// whatever the situations say. What is already said of a fuse is not said again; what is on
// for a time at a time is left out, and so is all without a charging system.
func (s *search) underHeld(v *verdict, said []*finding.Finding) (list []*finding.Finding) {
	fuses := slices.DeleteFunc(s.chosenFuses(v), func(b *circuit.Branch) bool { return b.TimeOn.Timed() })
	for i, heldA := range s.heldA(v, fuses) {
		b := fuses[i]
		if most := s.forGoodA(v.c, b); corner.Beyond(heldA, most) && !saidOf(said, b) {
			held, may := quantity.Against(heldA, most, quantity.Current)
			list = append(list, &finding.Finding{Rule: "fuse-under-load", Severity: finding.Advice, Part: b.Part.Name, Ref: b.Fuse.Ref, Pos: b.Fuse.Pos,
				What: fmt.Sprintf("fuse %s (%s, %s) would carry %s at the regulated voltage; it may carry %s continuously", b.Fuse.Ref, b.Part.Name,
					quantity.Plain(b.Fuse.Rating.RatingA, quantity.Current), held, may)})
		}
	}
	return list
}

// chosenFuses are the fuses that are chosen.
func (s *search) chosenFuses(v *verdict) (list []*circuit.Branch) {
	for _, x := range s.slots {
		if part := v.c.PartOf(x.owner); x.kind == Fuse && part != nil {
			if b := fuseBranch(part, x.way); b != nil && b.Fuse != nil && b.Fuse.Rating != nil {
				list = append(list, b)
			}
		}
	}
	return list
}

// heldA are the greatest currents of fuses over the situations that pull the posts below
// the regulated voltage, with the posts held at that.
func (s *search) heldA(v *verdict, fuses []*circuit.Branch) []float64 {
	most, ch := make([]float64, len(fuses)), &s.d.Charging
	if !ch.Present() || len(fuses) == 0 {
		return most
	}
	plan := solve.Prepare(v.c)
	for k, sol := range v.sols {
		if sol.Status != solve.Converged || postsV(sol) >= ch.RegulatedV.Value*0.999 || !drawsMore(sol) {
			continue
		}
		r := v.corners.Model.Solve(plan, sol.Situation, solve.Options{BatteryV: ch.RegulatedV.Value, BatteryOhm: stiffOhm, NoCharging: true},
			v.corners.Results[corner.Nominal][k])
		for i, b := range fuses {
			if a := math.Abs(r.Solution.BranchA[b.Index]); r.Usable() && a > most[i] && !math.IsInf(a, 0) {
				most[i] = a
			}
		}
	}
	return most
}

// drawsMore tells whether a load that is on draws more at a higher voltage.
func drawsMore(s *solve.Solution) bool {
	for _, b := range s.Circuit.Branches {
		if b.Load != nil && s.LoadOn[b.Index] && b.Load.Behaves != design.ConstantPower {
			return true
		}
	}
	return false
}

// postsV is the voltage at the battery's posts.
func postsV(s *solve.Solution) float64 {
	return s.NodeV[s.Circuit.Positive().Index] - s.NodeV[s.Circuit.Negative().Index]
}

// forGoodA is what a fuse carries for good, by the practice's share for what hangs on it and
// by its maker's where it stands.
func (s *search) forGoodA(c *circuit.Circuit, b *circuit.Branch) float64 {
	below := c.BelowBranch(b)
	share := c.FuseShare(append(below.Loads, below.Coils...), s.d.Practice.FuseLoadShare)
	if maker, known := b.Device(0).Share(); known {
		share = math.Min(share, maker)
	}
	return share * b.Fuse.Rating.RatingA
}

func saidOf(said []*finding.Finding, b *circuit.Branch) bool {
	for _, f := range said {
		if f.Rule == "fuse-under-load" && f.Ref == b.Fuse.Ref {
			return true
		}
	}
	return false
}
