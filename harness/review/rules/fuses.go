package rules

import (
	"math"

	"fusewright/harness/formula/fusing"
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
// says. The practice's share is for continuous load, and a fuse that carries current only
// while a switch is held bears its rating, since ISO 8820 fuses carry 1.1 times that for
// 100 h.
func (f *facts) continuousA(b *circuit.Branch, aboveK float64) float64 {
	most := f.makersA(b, aboveK)
	if f.onlyHeld(b) {
		return most
	}
	return math.Min(most, f.c.FuseShare(f.drawsOf(b), f.practice.FuseLoadShare)*fuseRating(b))
}

// pulses are those of a current in amperes through a fuse that is on for a time.
func pulses(b *circuit.Branch, amps float64) fusing.Pulses {
	t := b.TimeOn
	return fusing.Pulses{OnA: amps, OffA: math.Min(amps, t.SteadyA), OnS: t.OnS, EveryS: t.EveryS}
}

// whileOnA is the most that a fuse carries while on, of what it carries for good: more
// where that flows for a time only and opens the usual of its kind in no cycle.
func whileOnA(b *circuit.Branch, forGoodA, aboveK float64) float64 {
	if !b.TimeOn.Timed() {
		return forGoodA
	}
	return b.Device(aboveK).WhileOnA(pulses(b, math.Inf(1)), forGoodA, fusing.Usual)
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

// demandA is the most that the accessories and coils behind a branch draw together, with all
// on that positions of switches and contacts that change over let be on at once, at the voltage
// their power is rated at.
func (f *facts) demandA(draws []*circuit.Branch) (total float64, at []*circuit.Branch) {
	at = f.apart().AtOnce(draws)
	for _, b := range at {
		total += f.c.DrawA(b)
	}
	return total, at
}
