package spice

import (
	"testing"

	"fusewright/harness/network/solve"
)

// Every law but a plain resistance has its expression, and no two share one.
func TestEveryLawHasItsExpression(t *testing.T) {
	law := solve.Law{Ohm: 2, PowerW: 24, CurrentA: 3, RatedV: 12, EdgeV: 6, EMFV: 10, ChargeOhm: 0.5, LimitA: 50}
	seen := map[string]solve.LawKind{}
	for kind := solve.Ohmic + 1; kind < solve.LawKinds; kind++ {
		law.Kind = kind
		text := expression(law, "v(1)")
		if other, twice := seen[text]; text == "" || twice {
			t.Errorf("kind %d is written %q, as is kind %d", kind, text, other)
		}
		seen[text] = kind
	}
}
