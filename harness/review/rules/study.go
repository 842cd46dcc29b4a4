package rules

import (
	"math"

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
	return g.known() && a.known() && !f.c.Tail(w) && over(g.A, f.practice.FuseWireShare*a.ProvenA())
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
