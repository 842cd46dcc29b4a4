package circuit_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/example"
	"fusewright/library"
)

// winches is a splice that feeds a winch and another load.
func winches(t *testing.T, winch, other, situations string) *circuit.Circuit {
	t.Helper()
	return build(t, "winches", example.Design(fmt.Sprintf(`
fuses:
  main: {type: strip SF51, rating: 125 A, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 100 mm}}
splices:
  fork: {at: battery tray, fed by: main, wire: {size: 25 mm², length: 100 mm}}
loads:
  winch: {current: 100 A, behaves: motor, own switch: yes, at: rear, fed by: fork, wire: {size: 16 mm²}, returns to: frame, return wire: {size: 16 mm²}%s}
  other: {current: 20 A, behaves: motor, own switch: yes, at: rear, fed by: fork, wire: {size: 4 mm²}, returns to: frame%s}
situations:
%s
`, winch, other, situations)))
}

const bothOn = "  all: {key: on, on: [winch, other]}"

// Which cycle a trunk of two loads goes by, and what of it counts as for good: of 20 A 25 A, for
// the tolerances.
func TestTimeOn(t *testing.T) {
	minute, five := bundle.Cycle{OnS: 60, EveryS: 600}, bundle.Cycle{OnS: 300, EveryS: 600}
	for _, c := range []struct {
		name, winch, other, situations string
		trunk, own                     circuit.TimeOn
	}{
		{"for good", "", "", bothOn, circuit.TimeOn{}, circuit.TimeOn{}},
		{"how often is not said", ", on for: 1 min", "", bothOn, circuit.TimeOn{}, circuit.TimeOn{}},
		{"a duty is that of ten minutes", ", duty: 10 %", "", bothOn, circuit.TimeOn{Cycle: minute, SteadyA: 25, UsedA: 120}, circuit.TimeOn{Cycle: minute, UsedA: 100}},
		{"beside one for good", ", on for: 1 min, every: 10 min", "", bothOn,
			circuit.TimeOn{Cycle: minute, SteadyA: 25, UsedA: 120}, circuit.TimeOn{Cycle: minute, UsedA: 100}},
		{"beside one for longer", ", on for: 1 min, every: 10 min", ", on for: 5 min, every: 10 min", bothOn,
			circuit.TimeOn{Cycle: minute, SteadyA: 25, UsedA: 120}, circuit.TimeOn{Cycle: minute, UsedA: 100}},
		{"beside one less often", ", on for: 5 min, every: 10 min", ", on for: 1 min, every: 20 min", bothOn,
			circuit.TimeOn{Cycle: five, UsedA: 120}, circuit.TimeOn{Cycle: five, UsedA: 100}},
		{"one after the other", ", on for: 1 min, every: 10 min", ", on for: 1 min, every: 10 min",
			"  one: {key: on, on: [winch]}\n  two: {key: on, on: [other]}",
			circuit.TimeOn{Cycle: bundle.Cycle{OnS: 120, EveryS: 600}, UsedA: 100}, circuit.TimeOn{Cycle: minute, UsedA: 100}},
		{"never on", ", on for: 1 min, every: 10 min", "", "  none: {key: on, on: none}", circuit.TimeOn{}, circuit.TimeOn{}},
	} {
		net := winches(t, c.winch, c.other, c.situations)
		for _, w := range net.Wires {
			want := circuit.TimeOn{}
			switch {
			case w.To.Part.Name == "fork":
				want = c.trunk
			case w.To.Part.Name == "winch":
				want = c.own
			default:
				continue
			}
			if w.Branch.TimeOn != want {
				t.Errorf("%s: %s to %s is on for %+v, want %+v", c.name, w.Number, w.To.Part.Name, w.Branch.TimeOn, want)
			}
		}
	}
}

// A longer time on, a shorter period, or more for good never allows a wire more; what
// is on for good is allowed what it was.
func TestLongerOnNeverAllowsMore(t *testing.T) {
	rater := conductor.NewRater(library.Default(), nil)
	allowed := func(winch, other string) float64 {
		for _, w := range winches(t, winch, other, bothOn).Wires {
			if w.To.Part.Name == "fork" {
				return w.InPlace(rater, w.Spec.Size, 0).AllowedA
			}
		}
		return math.NaN()
	}
	forGood := allowed("", "")
	last := math.Inf(1)
	for _, winch := range []string{", on for: 10 s, every: 10 min", ", on for: 1 min, every: 10 min", ", on for: 1 min, every: 4 min",
		", on for: 2 min, every: 4 min", ", on for: 1 h, every: 2 h", ""} {
		got := allowed(winch, "")
		if got > last*1.001 || got < forGood {
			t.Errorf("%q: %g A, before %g A, for good %g A", winch, got, last, forGood)
		}
		last = got
	}
	if last != forGood {
		t.Errorf("for good %g A, want %g A", last, forGood)
	}
	both := allowed(", on for: 1 min, every: 10 min", ", on for: 1 min, every: 10 min")
	if one := allowed(", on for: 1 min, every: 10 min", ""); !(both > one) {
		t.Errorf("with both for a time %g A, with one for good %g A", both, one)
	}
}
