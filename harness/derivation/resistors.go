package derivation

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// heatW is what a resistor makes of heat.
func (v *view) heatW(b *circuit.Branch) *value {
	a := v.sol.BranchA[b.Index]
	return of("heat of "+b.Part.Name, watts, a*a*v.ohm(b).v, "{}² × {}", v.amps(b), v.ohm(b))
}

// heatTree explains what a resistor makes of heat where it carries most.
func (b *book) heatTree(br *circuit.Branch) *Tree {
	worst, at := b.worstAmps(br)
	t, v := ofPart(br.Part), b.view(at, worst.At)
	t.in(v)
	var limit *value
	rated := br.Part.Source.(*design.DroppingResistor).RatingW
	if rated.Given() {
		limit = given("rating of "+br.Part.Name, watts, rated)
	}
	t.finish(v.heatW(br), limit)
	t.Answer = []string{fmt.Sprintf("%s makes %s of heat at worst, %s (%s).", br.Part.Name, t.Root.Value, during(t.Situation), t.State)}
	if rated.Given() {
		t.Answer = append(t.Answer, fmt.Sprintf("It is rated %s.", quantity.Plain(rated.Value, quantity.Power)))
	}
	if slices.ContainsFunc(v.users(br), func(u *circuit.Branch) bool { return u.Load != nil && u.Load.FanStall > 0 }) {
		t.Answer = append(t.Answer, "That is with the motor behind it as a fan, the least that it may draw; the rule resistor-overload says what more would make.")
	}
	t.Notes = append(t.Notes, "How hot it gets goes by the air and the metal about it, which a design does not say.")
	return t
}
