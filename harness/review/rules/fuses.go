package rules

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// fuses lists the fuses the design fits: factory fuses of taps left out.
func (f *facts) fuses() []*circuit.Branch {
	var list []*circuit.Branch
	for _, b := range f.branchesOf(circuit.FuseBranch) {
		if b.Fuse != nil && !b.Fuse.Factory {
			list = append(list, b)
		}
	}
	return list
}

// ofFuse starts a finding about a fuse; one in a way goes by block and way.
func ofFuse(s finding.Severity, b *circuit.Branch) finding.Finding {
	return finding.Finding{Severity: s, Part: fusePlace(b), Ref: b.Fuse.Ref, Pos: b.Fuse.Pos}
}

// fusePlace is the fuse's part, with the way of a block.
func fusePlace(b *circuit.Branch) string {
	if b.Part == nil {
		return b.Name
	}
	if b.Part.Kind == circuit.Block {
		for _, t := range b.Part.Terminals {
			if t.Node == b.B && t.FuseRef != "" {
				return b.Part.Name + " " + t.Name
			}
		}
	}
	return b.Part.Name
}

// fuseText is a fuse in words: "fuse F3 (rear 1, 15 A)", "the factory fuse of
// tail lamp feed (10 A)".
func fuseText(b *circuit.Branch) string {
	rating := "rating not known"
	if r := fuseRating(b); r > 0 {
		rating = rated(r)
	}
	if b.Fuse.Factory {
		return "the factory fuse of " + fusePlace(b) + " (" + rating + ")"
	}
	return "fuse " + b.Fuse.Ref + " (" + fusePlace(b) + ", " + rating + ")"
}

// continuousA is what a fuse carries in a place hotter by aboveK than the design
// says. The practice's share is for continuous load: of what is on for less than
// three hours the rating bears all (NFPA 70 210.20(A): 125 % of the continuous and
// 100 % of the other load), as long as the mean heat over its cycle is no more than that
// of the share; and a fuse that carries current only while a switch
// is held bears its rating, since ISO 8820 fuses carry 1.1 times that for 100 h.
func (f *facts) continuousA(b *circuit.Branch, aboveK float64) float64 {
	most := f.makersA(b, aboveK)
	if f.onlyHeld(b) {
		return most
	}
	share, sumA, asksA := f.practice.FuseLoadShare, 0.0, 0.0
	for _, draw := range f.drawsBelow(b.B) {
		a, on := f.c.DrawA(draw), 1.0
		if draw.Load != nil && draw.Load.Load != nil {
			on = draw.Load.Load.HeatShare()
		}
		sumA += a
		asksA += a * math.Max(1, math.Sqrt(on)/share)
	}
	if share > 0 && sumA > 0 {
		share = sumA / asksA
	}
	return math.Min(most, share*fuseRating(b))
}

// makersA is what the maker lets a fuse carry for good, without the practice's
// margin.
func (f *facts) makersA(b *circuit.Branch, aboveK float64) float64 {
	share := 1.0
	if maker, known := b.Device(aboveK).Share(); known && !f.onlyHeld(b) {
		share = math.Min(share, maker)
	}
	return share * fuseRating(b)
}

// tail tells whether a wire leads to fuses alone, no further from where it starts
// than the practice lets a fuse be from its source: the fuses at its far end bound what
// it carries. A longer distance that the design allows from the battery makes no tails.
func (f *facts) tail(w *circuit.Wire) bool {
	if isReturn(w) || !w.Branch.Feeds() {
		return false
	}
	for _, b := range w.To.Node.Branches {
		if b.A == w.To.Node && b.Kind != circuit.FuseBranch {
			return false
		}
	}
	most, _ := f.fuseDistanceM(w)
	return len(f.firstFuses(w)) > 0 && !over(w.LengthM, min(most, f.practiceDistanceM(w)))
}

// demandA is what the accessories and coils below a node draw together when
// all are on, at the voltage their power is rated at.
func (f *facts) demandA(n *circuit.Node) (total float64, draws []*circuit.Branch) {
	draws = f.drawsBelow(n)
	for _, b := range draws {
		total += f.c.DrawA(b)
	}
	return total, draws
}
