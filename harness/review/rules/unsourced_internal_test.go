package rules

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

// TestUnsourcedAllowed: of 18 A by a table from memory the heat balance's 20.25 A leave
// 2.25 A unsure; a table with sources, and the heat balance itself, are not asked.
func TestUnsourcedAllowed(t *testing.T) {
	for _, c := range []struct {
		table, governs string
		amps           float64
		part           float64
		noMargin       bool
	}{
		{"ISO 10133", conductor.GovernsTable, 20, 2.25, true},
		{"ISO 10133", conductor.GovernsTable, 20.25, 2.25, false},
		{"ISO 10133", conductor.GovernsTable, 21, 2.25, false},
		{"ISO 10133", conductor.GovernsTable, 16, 2.25, true},
		{"ISO 10133", conductor.GovernsHeat, 20, 0, false},
		{"33 CFR 183.425", conductor.GovernsTable, 20, 0, false},
	} {
		p := &Pass{facts: &facts{d: &design.Design{Library: library.Default()}, practice: &library.Practice{Ampacity: c.table}}}
		a := allowance{&warm.Laid{Allowed: conductor.Allowed{AllowedA: 18, HeatA: 20.25, TableA: 18, Governs: c.governs}}}
		if u := p.unsourced(a, c.amps); math.Abs(u.Part-c.part) > 1e-12 || u.NoMargin() != c.noMargin {
			t.Errorf("%s, %s, %g A: %+v", c.table, c.governs, c.amps, u)
		}
	}
}
