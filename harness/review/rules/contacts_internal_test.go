package rules

import (
	"math"
	"testing"

	"fusewright/harness/design"
)

// TestContactMayCarryNothing: a contact that its ambient leaves nothing of is full
// at any current; one whose rating is not known stays apart from it.
func TestContactMayCarryNothing(t *testing.T) {
	for _, c := range []struct {
		name   string
		r      ContactRatings
		behave design.Behaviour
		want   float64
	}{
		{"resistive", ContactRatings{40, 22, 25, 0.5, nil}, design.Resistor, 20},
		{"lamp", ContactRatings{40, 22, 25, 0.5, nil}, design.FilamentLamp, 11},
		{"motor", ContactRatings{40, 22, 25, 0.5, nil}, design.Motor, 12.5},
		{"lamp without its own", ContactRatings{resistive: 40, share: 0.5}, design.FilamentLamp, 20},
		{"nothing left", ContactRatings{40, 22, 25, 0, nil}, design.Motor, 0},
	} {
		if got := c.r.Of(c.behave); got != c.want {
			t.Errorf("%s: %g A, want %g A", c.name, got, c.want)
		}
	}
	if got := share100(math.Inf(1)); got != "any share" {
		t.Errorf("a full contact is %q", got)
	}
}

// Each behaviour that a design may name has its row.
func TestEveryBehaviourHasItsHazard(t *testing.T) {
	for _, b := range design.Behaviours {
		if _, known := unseenW[b]; !known {
			t.Errorf("%s has no row", b)
		}
	}
	if len(unseenW) != len(design.Behaviours) {
		t.Errorf("%d rows", len(unseenW))
	}
}
