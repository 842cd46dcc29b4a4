package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

// duration is a time in words.
func duration(v float64) string { return quantity.Format(v, quantity.Duration) }

// shorts lists the short circuits studied; none without a study.
func (f *facts) shorts() []*fault.Short {
	if f.in.Faults == nil {
		return nil
	}
	return f.in.Faults.Shorts
}

// overFused tells whether a wire's fuse is too large for it by rating, which
// rules fuse-over-wire and return-below-fuse report: rules on curves stand aside
// for them, since the cause is the same.
func (f *facts) overFused(w *circuit.Wire) bool {
	g, a := f.guardOf(w), f.allowed(w)
	return g.known() && a.known() && !f.c.Tail(w) && !f.bearsMachine(w) && over(g.A, f.practice.FuseWireShare*a.ProvenA()) &&
		over(w.Branch.ShareA(f.heldDownA(w.Branch)), f.practice.FuseWireShare*a.ProvenA())
}

// heldDownA is the most that resistors on every way to a branch let through, each of which bears a dead short behind
// it for good; +Inf where one does not, or a way has none. Of a return it is what all that draws back lets through.
func (f *facts) heldDownA(b *circuit.Branch) (sumA float64) {
	if len(f.d.Resistors) == 0 {
		return math.Inf(1)
	}
	nodes := []*circuit.Node{b.A}
	if b.Returns() {
		nodes = nil
		for _, load := range f.c.DrawsBack(b) {
			nodes = append(nodes, load.A)
		}
	}
	met := map[*circuit.Branch]bool{}
	for _, n := range nodes {
		paths, all := f.c.FeedPaths(n)
		if !all || len(paths) == 0 {
			return math.Inf(1)
		}
		for _, path := range paths {
			i := slices.IndexFunc(path.Branches, (*circuit.Branch).Dropper)
			if i < 0 {
				return math.Inf(1)
			}
			x := path.Branches[i]
			v := f.c.HighestAt(x.A)
			if r := x.Part.Source.(*design.DroppingResistor).RatingW; !r.Given() || over(v*v/x.Ohm, r.Value) {
				return math.Inf(1)
			}
			if !met[x] {
				met[x], sumA = true, sumA+v/x.Ohm
			}
		}
	}
	if len(nodes) == 0 {
		return math.Inf(1)
	}
	return sumA
}

// letsThrough is the severity of a device or several that let more through than a
// wire may carry. A short is another rule's, and so is every overload that the
// circuit can make: what is left has no source. It is advice up to the practice's
// most share and up to the current that the wire's class bears.
func (f *facts) letsThrough(w *circuit.Wire, throughA float64, grave finding.Severity) finding.Severity {
	a := f.allowed(w)
	return graver(over(throughA, math.Max(f.practice.MostFuseWireShare*a.AllowedA, a.ToClassA)), finding.Advice, grave)
}

// hurts tells whether a short in one state hurts a wire although a fuse opens.
func (f *facts) hurts(r *fault.Result) bool {
	return r.Device != nil && !r.Bare && !math.IsInf(r.SlowS, 1) && r.Worst != nil &&
		!r.Worst.Survives()
}

// where says where a short lies.
func where(sh *fault.Short) string { return sh.Lies((*circuit.Wire).Text) }

// temperature prints a conductor's temperature, or that copper melts.
func temperature(c float64) string {
	if math.IsInf(c, 1) {
		return "the melting point of copper"
	}
	return celsius(math.Round(c))
}
