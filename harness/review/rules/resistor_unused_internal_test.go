package rules

import "testing"

// A resistor through which a tenth of the lamp's 2 A flows, in one situation, holds it back; one through which less does is fed past; of a
// lamp that is never on nothing is said.
func TestBypassedFromATenth(t *testing.T) {
	for _, c := range []struct {
		name       string
		lamp, past float64
		want       int
	}{{"just less", 2, 0.199, 1}, {"a tenth", 2, 0.2, 0}, {"either way", -2, -0.2, 0}, {"never on", 0, 0, 0}} {
		p := passOf(t, partUnused, resistorOverload.Bad)
		lamp, dropper := loadBranch(part(t, p, "work lamp")), part(t, p, "dropper").Branches[0]
		for i, s := range p.in.Solutions {
			s.BranchA[lamp.Index], s.BranchA[dropper.Index] = c.lamp, 0
			if i == 0 {
				s.BranchA[dropper.Index] = c.past
			}
		}
		if got := len(p.run()); got != c.want {
			t.Errorf("%s: %d findings, want %d", c.name, got, c.want)
		}
	}
}
