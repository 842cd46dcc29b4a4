package derivation

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/budget"
)

// charged is the situation in which most goes into a battery; nil = in none does any.
func (b *book) charged(br *circuit.Branch) (most *budget.Line, a float64) {
	for _, l := range b.r.Balanced().Lines {
		if x := -l.Mean.Given(br); l.Usable && x > a+traceA {
			most, a = l, x
		}
	}
	return most, a
}

// addBanks adds what goes into batteries.
func (b *book) addBanks(add adding) bool {
	for _, br := range b.c.Branches {
		if br.Kind != circuit.BatteryBranch || br.Part == nil {
			continue
		}
		if !add("charging current of", br.Part.Name, func() bool { l, _ := b.charged(br); return l != nil }, func() *Tree {
			l, a := b.charged(br)
			t := ofPart(br.Part)
			t.Situation = l.Situation.Name
			t.finish(of("current into "+br.Part.Name, amps, a, "−{}", b.averageView(l.Mean).givenA(br)), nil)
			t.Answer = []string{fmt.Sprintf("At the most %s goes into %s, %s, each load at its average.", quantity.Format(a, quantity.Current), br.Part.Name, during(t.Situation)),
				"That is into a battery as full as the situation says; one that is down takes more, up to what charging has to spare."}
			return t
		}) {
			return false
		}
	}
	return true
}
