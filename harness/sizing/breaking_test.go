package sizing

import (
	"strings"
	"testing"
)

// TestBreaksTheShort: a fuse next to the battery is one that breaks what a short at its place
// can drive, if the library has it in about the rating; the usual type stays with small loads,
// as every factory builds it, and that is said.
func TestBreaksTheShort(t *testing.T) {
	for _, c := range []struct {
		draw, behaves string
		usual         bool
	}{{"10 A", "resistor", true}, {"19 A", "resistor", false}, {"22 A", "resistor", true}, {"110 A", "resistor", false}} {
		src := strings.Replace(single("off-road", c.draw, c.behaves, 1), "resistance: 4 mΩ", "resistance: 2.5 mΩ", 1)
		p, err := Complete(read(t, src))
		if err != nil {
			t.Fatal(err)
		}
		kind := p.Design.Fuses[0].Type
		v := p.s.best.verdict
		faultA := v.protection.Find(p.s.look(v).branch[0]).FaultA
		if usual := kind.Name == "blade C"; usual != c.usual || !usual && kind.BreakingAt(12) < faultA {
			t.Errorf("%s: %s breaks %g A, a short drives %g A", c.draw, kind.Name, kind.BreakingAt(12), faultA)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		if said := len(p.Lacking) == 1 && strings.Contains(p.Lacking[0], "suits the wires of f breaks") &&
			strings.HasPrefix(p.Lacking[0], p.Design.Fuses[0].Pos.String()+": ") && strings.Contains(p.Lacking[0], "; put one that does before it, at the battery, "); said != c.usual {
			t.Errorf("%s: %v", c.draw, p.Lacking)
		}
	}
}

// 300 g, and a gram an ampere above 60 A: 390 g against 150 A of a type that does not break
// 2500 A, none against one that does, and 300 g against the usual type.
func TestUnableByHand(t *testing.T) {
	p, err := Complete(read(t, strings.Replace(single("off-road", "110 A", "resistor", 1), "resistance: 4 mΩ", "resistance: 2.5 mΩ", 1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range p.s.slots[0].fuses {
		want := map[string]float64{"blade C": 300, "strip SF30": otherTypeG + 300 + max(0, c.rating.RatingA-60), "marine strip": otherTypeG, "battery post fuse": otherTypeG}
		if g, known := want[c.kind.Name]; known && c.otherG != g {
			t.Errorf("%s %g A: %g g, want %g g", c.kind.Name, c.rating.RatingA, c.otherG, g)
		}
	}
}
