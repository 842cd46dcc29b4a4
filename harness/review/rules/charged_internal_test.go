package rules

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
)

// Lithium charged in earnest is half full, 13.2 + 0.1 ÷ 3 = 13.233 V at rest by the library, and has its resistance, were that the same
// when empty: over 1 Ω and some 34 mΩ of cable, relay and fuse 14.3 V drive 1.067 V ÷ 1.034 Ω = 1.032 A into it.
func TestChargedTooFastAtHalf(t *testing.T) {
	p := passOf(t, chargedTooFast, strings.Replace(relayLink("LiFePO4", "10 A", ""), "resistance: 12 mΩ", "resistance: 1 Ω", 1))
	house := part(t, p, "house")
	bank := house.Source.(*design.Bank)
	even := *bank.Store.Chemistry
	even.EmptyOhmRatio = 1
	bank.Store.Chemistry = &even
	if got := p.chargedByEngineA(house, bank); math.Abs(got-1.032) > 0.008 {
		t.Errorf("%.4f A, want 1.032 A", got)
	}
}
