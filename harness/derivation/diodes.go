package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
)

// busy is the branch of a part that carries most; nil = none ever carries anything.
func (b *book) busy(p *circuit.Part) (most *circuit.Branch, worst corner.Value, at int) {
	for _, br := range p.Branches {
		if w, i := b.worstAmps(br); i >= 0 && w.Corner > traceA && (most == nil || w.Corner > worst.Corner) {
			most, worst, at = br, w, i
		}
	}
	return most, worst, at
}

// addDiodes adds what diodes lose and carry, an isolator by that of its outputs which carries most.
func (b *book) addDiodes(add adding) bool {
	for _, p := range b.c.Parts {
		if p.Kind != circuit.Diode {
			continue
		}
		is := func() bool { br, _, _ := b.busy(p); return br != nil }
		if !(add("drop of", p.Name, is, func() *Tree { return b.diodeTree(p) }) &&
			add("current of", p.Name, is, func() *Tree { br, _, _ := b.busy(p); return b.ampsTree(br, ofPart(p), p.Name) })) {
			return false
		}
	}
	return true
}

// diodeTree explains what a diode loses where it carries most.
func (b *book) diodeTree(p *circuit.Part) *Tree {
	br, worst, at := b.busy(p)
	t, v := ofPart(p), b.view(at, worst.At)
	t.in(v)
	x := v.diode(br, math.Abs(v.sol.Volts(br)))
	t.finish(x, nil)
	knee := x.from[0]
	t.Answer = []string{fmt.Sprintf("%s loses %s where it carries most, %s, %s (%s).", p.Name, t.Root.Value, quantity.Format(worst.Corner, quantity.Current), during(t.Situation), t.State),
		fmt.Sprintf("At any current it loses %s.", quantity.Plain(knee.v, quantity.Voltage))}
	t.Next = []string{fmt.Sprintf("why \"current of %s\"", p.Name)}
	return t
}
