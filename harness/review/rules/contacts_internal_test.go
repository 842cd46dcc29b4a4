package rules

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
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
		{"resistive", ContactRatings{40, 22, 25, 0.5, nil, nil}, design.Resistor, 20},
		{"lamp", ContactRatings{40, 22, 25, 0.5, nil, nil}, design.FilamentLamp, 11},
		{"motor", ContactRatings{40, 22, 25, 0.5, nil, nil}, design.Motor, 12.5},
		{"lamp without its own", ContactRatings{resistive: 40, share: 0.5}, design.FilamentLamp, 20},
		{"nothing left", ContactRatings{40, 22, 25, 0, nil, nil}, design.Motor, 0},
	} {
		if got := c.r.Of(c.behave); got != c.want {
			t.Errorf("%s: %g A, want %g A", c.name, got, c.want)
		}
	}
	if got := share100(math.Inf(1)); got != "any share" {
		t.Errorf("a full contact is %q", got)
	}
}

// TestContactForATime: by hand, of 75 A with 400 A for 60 s. On for 60 s every 600 s
// the mean heat bounds it: 75·√10 = 237.17 A; every 60 000 s the maker's 400 A.
func TestContactForATime(t *testing.T) {
	winch := ContactRatings{resistive: 75, share: 1, short: []library.CarriesFor{{CurrentA: 400, S: 60}}}
	motor := ContactRatings{75, 0, 60, 1, winch.short, nil}
	for _, c := range []struct {
		name      string
		r         ContactRatings
		on, every float64
		want      float64
	}{
		{"for good", winch, 0, 0, 75},
		{"mean heat", winch, 60, 600, 75 * math.Sqrt(10)},
		{"maker's figure", winch, 60, 60_000, 400},
		{"longer than the maker says", winch, 60.1, 60_000, 75},
		{"how often is not known", winch, 60, 0, 75},
		{"a figure of its own for motors", motor, 60, 600, 60},
		{"none for a time", ContactRatings{resistive: 75, share: 1}, 60, 600, 75},
		{"half of it left by its place", ContactRatings{75, 0, 0, 0.5, winch.short, nil}, 60, 60_000, 200},
	} {
		l := &design.Load{OnForS: design.Quantity{Value: c.on}, EveryS: design.Quantity{Value: c.every}}
		if got := c.r.OfLoad(&circuit.LoadSpec{Behaves: design.Motor, Load: l}); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %g A, want %g A", c.name, got, c.want)
		}
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

// By hand, of 16 A and 2 A of lamps, whose start is so taken as eight times their use. At 12 V with 4 V in a resistor the
// cold filament has 12/8 of the volts it has in use at the same current: 16 V then drive 16 / (1.5 + 4) = 2.91 times that,
// so 2 A · 8 / 2.91 = 5.5 A; all in the resistor, the 16 A that it carries.
func TestResistorHoldsTheStart(t *testing.T) {
	r := ContactRatings{16, 2, 16, 1, nil, nil}
	for _, c := range []struct{ rating, loadV, droppedV, want float64 }{
		{2, 12, 0, 2}, {2, 12, 4, 5.5}, {2, 12, 12, 9}, {2, 0, 12, 16}, {16, 12, 4, 16}, {0, 12, 4, 0},
	} {
		if got := r.startRating(c.rating, c.loadV, c.droppedV); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g A, %g V behind %g V: %g A, want %g A", c.rating, c.loadV, c.droppedV, got, c.want)
		}
	}
}
