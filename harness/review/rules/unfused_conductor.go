package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var unfusedConductor = &Rule{
	Name:  "unfused-conductor",
	Title: "a conductor has no overcurrent protection",
	Says:  "no fuse",
	Doc: "From the battery's positive post every conductor is followed, through contacts as if closed, " +
		"down to the first fuse, breaker or PTC, or to another battery, whose own conductors are followed from it. A wire below which a load, a coil or a loose end is " +
		"reached without any is reported, and so is each below it, printed together. A wire that does lead to " +
		"a fuse is judged by fuse-too-far instead. A starter cable, 10 mm² or more on the way to a starter that draws as one for a minute at most, is left out; what branches off it is judged from there. What the charging system feeds at its own stud, beside the batteries, is followed too, but for wires that carry its cold output: it gives no more. The machine's own wiring is not looked at: of a tap whose fuse is not given data-missing asks.",
	Formula:  "none: it is a question of topology",
	Limits:   "none; a fuse anywhere on the way ends the search; a starter draws half its type's current or more, for 1 min at most (our choice)",
	Why:      "a short anywhere along it draws the battery's full current until the wire burns open",
	Change:   "put a fuse at the source end, sized for the smallest wire downstream",
	Severity: "danger; advice of a charging cable that the maker of a land vehicle fitted",
	Source: "33 CFR 183.455(a) and 46 CFR 111.50-5(a): a device in each ungrounded conductor, " +
		"where it receives its supply (two sources); cranking motor circuits are excepted by ABYC E-11 (from memory) and common practice",
	Bad: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: battery, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Good: `
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`,
	Run: func(p *Pass) {
		var roots []*circuit.Wire
		for _, u := range p.unfusedWires() {
			if !u.fused {
				roots = append(roots, u.wire)
			}
		}
		slices.SortStableFunc(roots, func(a, b *circuit.Wire) int { return strings.Compare(wireOwner(a).Name, wireOwner(b).Name) })
		said := map[*circuit.Wire]bool{}
		for _, root := range roots {
			p.reportUnfused(root, said)
		}
		for _, w := range p.c.Wires {
			if p.machineReturns(w) && !p.bearsMachine(w) {
				p.sayUnfused(w, w, w.LengthM)
			}
		}
	},
}

// reportUnfused reports a wire and each below it that is not said yet, with the
// length of conductor from its start on. What hangs on another battery is that battery's.
func (p *Pass) reportUnfused(root *circuit.Wire, said map[*circuit.Wire]bool) {
	wires, above := []*circuit.Wire{root}, map[*circuit.Node]*circuit.Wire{root.To.Node: root}
	parent := map[*circuit.Wire]*circuit.Wire{}
	p.below(root.To.Node, func(b *circuit.Branch) bool {
		switch {
		case b.Wire != nil && isReturn(b.Wire) || !b.Feeds() || b.Kind == circuit.FuseBranch || p.c.IsPost(b.A):
			return false
		case b.Wire != nil:
			wires = append(wires, b.Wire)
			parent[b.Wire], above[b.B] = above[b.A], b.Wire
		default:
			above[b.B] = above[b.A]
		}
		return true
	})
	lengthM := map[*circuit.Wire]float64{}
	for _, w := range slices.Backward(wires) {
		lengthM[w] += w.LengthM
		if up := parent[w]; up != nil {
			lengthM[up] += lengthM[w]
		}
	}
	for _, w := range wires {
		if said[w] || p.cranks(w) || p.bearsMachine(w) {
			continue
		}
		said[w] = true
		p.sayUnfused(w, root, lengthM[w])
	}
}

// sayUnfused reports one wire of those that begin with a root.
func (p *Pass) sayUnfused(w, root *circuit.Wire, lengthM float64) {
	fin := ofWire(graver(!p.makersCable(w), finding.Advice, finding.Danger), w)
	fin.Cause = wireOwner(root).Name
	decidedBy(&fin, "unfused length", lengthM, "m", figure.Larger)
	if math.IsInf(p.machineA(w.Branch), 1) {
		p.say(fin, "%s has no fuse between the battery and its end", w.Text())
		return
	}
	fin.Why = "a short or an overload along it draws for good what the charging system gives, and nothing opens"
	fin.Change = "feed it by a fuse at the stud, sized for the smallest wire downstream, or use wire that carries all that the machine gives"
	text := w.Text() + " has no fuse between the charging system and its end"
	if isReturn(w) {
		text = w.Text() + ": what returns by it has no fuse between the charging system and its end"
	}
	if a := p.allowed(w); a.known() {
		text += fmt.Sprintf(", and may carry %s %s", a.textFor(p.machineColdA()), a.where())
	}
	p.say(fin, "%s; the charging system gives up to %s", text, amps(p.machineColdA()))
}

// cranks tells whether a wire is a starter cable: one of the size on the way to a starter without a fuse. What else it
// feeds branches off it.
func (f *facts) cranks(w *circuit.Wire) (starter bool) {
	if w.Spec.Size == nil || over(leastStarterMm2, w.Spec.Size.AreaMm2) {
		return false
	}
	f.below(w.To.Node, func(b *circuit.Branch) bool {
		starter = starter || b.Load != nil && isStarter(b.Load.Load)
		return b.Kind != circuit.FuseBranch && !f.c.IsPost(b.A)
	})
	return starter
}

// makersCable tells of the charging cable of a land vehicle, as its maker fitted it: many have no fuse.
func (p *Pass) makersCable(w *circuit.Wire) bool {
	return w.Spec.Fitted && wireOwner(w).Kind == circuit.Generator && !p.practice.Afloat
}

// What is no starter, whatever the design calls it: a thinner cable, a current of less than
// half the type's, or one that is on for longer (our choice).
const (
	leastStarterMm2   = 10.0
	leastStarterShare = 0.5
	longestStartS     = 60.0
)

// isStarter tells whether a load is a starter and behaves as one.
func isStarter(l *design.Load) bool {
	return l != nil && l.Starts() && l.Behaves == design.Motor && !over(l.LongestS(), longestStartS) &&
		!over(leastStarterShare*l.Type.CurrentA*l.Type.RatedV, l.PowerW)
}
