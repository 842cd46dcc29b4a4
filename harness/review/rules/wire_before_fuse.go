package rules

import (
	"fmt"
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var wireBeforeFuse = &Rule{
	Name:  "wire-before-fuse",
	Title: "a wire is too thin for the fuses it feeds",
	Says:  "too thin for the fuses it feeds",
	Doc: "Every wire between the battery and the first fuses, and every wire from a fused point to fuses of their own no " +
		"further away than a fuse may be from its source, against what those let through: the largest of them, and " +
		"all together. How long such a wire may be is judged by fuse-too-far; a wire that leads to no fuse by " +
		"unfused-conductor.",
	Formula: "largest rating ≤ share × allowed current; Σ ratings ≤ share × allowed current",
	Limits:  "the practice's fuse share of wire, and its most fuse share of wire",
	Why: "nothing protects this wire but the fuses at its far end: what they let through continuously it must carry " +
		"continuously",
	Change:   "make it as thick as the thickest wire behind the fuses, or put a fuse that suits it at the source",
	Severity: "danger for the largest fuse alone, fault for their sum; advice up to the practice's most share",
	Source:   "46 CFR 183.380(d) and ABYC E-11: rating not above the ampacity of the smallest conductor (two sources)",
	Mend:     MendWire,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 25 A, at: battery tray, fed by: battery, wire: {size: 0.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 30 A, at: rear, fed by: lamp fuse, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}, stays live: "marks the parked machine", own switch: true}
`,
	Mended: []string{"size: 0.5 mm²", "size: 4 mm²"},
	Run: func(p *Pass) {
		for _, w := range p.c.Wires {
			at := p.guardAt(w.Branch)
			bare := !isReturn(w) && w.Branch.Feeds() && at.open()
			if bare || p.c.Tail(w) {
				p.judgeBeforeFuse(w)
			}
		}
	},
}

// firstFuses are the fuses that are met first below a wire, up to the post of a battery:
// those behind it are fed there.
func (f *facts) firstFuses(w *circuit.Wire) []*circuit.Branch {
	var list []*circuit.Branch
	if f.c.IsPost(w.To.Node) {
		return nil
	}
	f.below(w.To.Node, func(b *circuit.Branch) bool {
		if b.Kind == circuit.FuseBranch {
			list = append(list, b)
			return false
		}
		return (b.Wire == nil || !isReturn(b.Wire)) && !f.c.IsPost(b.B)
	})
	return list
}

func (p *Pass) judgeBeforeFuse(w *circuit.Wire) {
	a := p.allowed(w)
	var largest *circuit.Branch
	sum := 0.0
	fuses := p.firstFuses(w)
	for _, b := range fuses {
		sum += fuseRating(b)
		if largest == nil || fuseRating(b) > fuseRating(largest) {
			largest = b
		}
	}
	if largest == nil || !a.known() {
		return
	}
	if at := p.guards[w.From.Node.Index]; at.known() { // a fuse further up takes no more than it lets through
		sum = math.Min(sum, at.A)
	}
	machineA := p.machineA(w.Branch)
	sum = math.Min(sum, machineA)
	limit, through, grave := p.practice.FuseWireShare*a.AllowedA, w.Branch.ShareA(math.Min(fuseRating(largest), machineA)), finding.Danger
	sum = w.Branch.ShareA(sum)
	what := fuseText(largest)
	proven := p.practice.FuseWireShare * a.ProvenA()
	if !over(through, proven) {
		through, grave = sum, finding.Fault
		what = fmt.Sprintf("%d fuses that let through %s together", len(fuses), rated(sum))
	}
	if !over(through, proven) {
		return
	}
	fin := ofWire(p.letsThrough(w, through, grave), w)
	fin.What = fmt.Sprintf("%s leads to %s but may carry %s %s", w.Text(), what, a.textFor(through), a.where())
	fin.Change = a.change()
	atMost(&fin, "fuse rating", through, limit, "A")
	fin.Source = a.Source + "; " + p.limitSource("fuse share of wire", false)
	p.report(fin)
}
