package derivation

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// addTaps adds what is left of the spare of taps.
func (b *book) addTaps(add adding) bool {
	for _, p := range b.c.Parts {
		x, ok := p.Source.(*design.Tap)
		if !ok || p.Kind != circuit.Tap || !x.SpareA.Given() {
			continue
		}
		if !add("spare of", p.Name, func() bool { br, _, _ := b.busy(p); return br != nil }, func() *Tree {
			br, worst, at := b.busy(p)
			t, v := ofPart(p), b.view(at, worst.At)
			t.in(v)
			drawn := v.amps(br)
			t.finish(of("left of the spare of "+p.Name, amps, x.SpareA.Value-drawn.v, "{} − {}", given("spare of "+p.Name, amps, x.SpareA), drawn), nil)
			t.Answer = []string{fmt.Sprintf("%s has %s left of its spare at worst, %s (%s).", p.Name, t.Root.Value, during(t.Situation), t.State)}
			t.Next = []string{"explain tap-over-spare"}
			return t
		}) {
			return false
		}
	}
	return true
}
