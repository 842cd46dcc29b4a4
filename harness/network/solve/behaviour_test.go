package solve

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Every behaviour that a design may name has a row of its own, draws its rated
// current at its rated voltage, and near there follows the voltage: 60 W at 12 V
// are 5 A, at 0.9 of the voltage, above every law's fold, as its name says.
func TestEveryBehaviourHasItsLaw(t *testing.T) {
	at90 := map[design.Behaviour]float64{design.Resistor: 4.5, design.FilamentLamp: 5 * math.Pow(0.9, 0.55),
		design.ConstantPower: 5 / 0.9, design.Motor: 5}
	for _, b := range design.Behaviours {
		law := behaviourLaw(&circuit.LoadSpec{Behaves: b, RatedV: 12}, 60)
		for volts, want := range map[float64]float64{12: 5, 10.8: at90[b]} {
			if amps, _ := law.At(volts); !(math.Abs(amps-want) <= 1e-9) {
				t.Errorf("%s: 60 W at %g V draw %g A, want %g A", b, volts, amps, want)
			}
		}
	}
	if len(behaviours) != len(design.Behaviours) {
		t.Errorf("%d rows for %d behaviours", len(behaviours), len(design.Behaviours))
	}
}

// Every law of a load and of a source has a current that grows or falls with the
// voltage as its kind says, and a start without load; of none it is not a number.
// By hand at 12 V: 12 V over 2 Ω; a lamp of 3 A; 24 W; 3 A; a fan at its rated volts; a battery of 10 V that
// takes charge through 0.5 Ω; a charger of 14 V behind 2 Ω; 24 W
// that spare 10 V, of which 2 Ω let 1 A through.
func TestEveryLawHasItsCurrent(t *testing.T) {
	law := Law{Ohm: 2, PowerW: 24, CurrentA: 3, RatedV: 12, EdgeV: 6, EMFV: 10, ChargeOhm: 0.5, LimitA: 50}
	want := [LawKinds]float64{Ohmic: 6, Lamp: 3, Power: 2, Torque: 3, Fan: 3, Store: 4, Valve: 21, Charger: -1, Sparing: 1} // Valve: 10/0.5 + (12-10)/2
	for kind := range LawKinds {
		law.Kind, law.EMFV = kind, 10
		if kind == Charger {
			law.EMFV = 14
		}
		amps, slope := law.At(12)
		if want[kind] == 0 || !(math.Abs(amps-want[kind]) <= 1e-9) || math.IsNaN(slope) {
			t.Errorf("kind %d draws %g A at 12 V with a slope of %g S, want %g A", kind, amps, slope, want[kind])
		}
	}
	for kind := range branchLaws {
		if branchLaws[kind] == nil {
			t.Errorf("no law for branches of kind %q", circuit.BranchKind(kind))
		}
	}
	law.Kind = LawKinds
	if amps, _ := law.At(12); !math.IsNaN(amps) {
		t.Errorf("no law draws %g A", amps)
	}
}

// A load that behaves as nothing known does is no resistor: there is no solution,
// and it says why.
func TestUnknownBehaviourIsNoResistor(t *testing.T) {
	post, ground := &circuit.Node{Index: 1}, &circuit.Node{}
	battery := &circuit.Branch{Kind: circuit.BatteryBranch, A: post, B: ground, Ohm: 0.01, Name: "G1"}
	load := &circuit.Branch{Index: 1, Kind: circuit.LoadBranch, A: post, B: ground, Name: "E1",
		Load: &circuit.LoadSpec{Behaves: "thyristor", PowerW: 24, RatedV: 12}}
	c := &circuit.Circuit{Design: &design.Design{}, Nodes: []*circuit.Node{ground, post}, Branches: []*circuit.Branch{battery, load}}
	s := Solve(c, &design.Situation{}, Options{BatteryV: 12.6})
	if s.Status != NotConverged || !strings.HasPrefix(s.Why, "E1 follows no law") {
		t.Errorf("%s: %s", s.Status, s.Why)
	}
}

// 24 W that spare 10 V over 0.1 Ω, by hand: nothing up to 10 V, then (v − 10 V)/0.1 Ω up to where
// that is 24 W (10.2349 V), then 24 W / v.
func TestSparing(t *testing.T) {
	law := Law{Kind: Sparing, PowerW: 24, EMFV: 10, Ohm: 0.1}
	for volts, want := range map[float64]float64{0: 0, 9.9: 0, 10: 0, 10.1: 1, 10.234: 2.34, 10.236: 24 / 10.236, 12: 2} {
		if amps, _ := law.At(volts); !(math.Abs(amps-want) <= 1e-9) {
			t.Errorf("%g V: %g A, want %g A", volts, amps, want)
		}
	}
}

// A fan of 60 W at 12 V that stands with six times its 5 A has Ra = 0.4 Ω and E = 10 V. Whatever its volts, Ra·I + E·√(I/5 A) is
// their magnitude, its slope is that of neighbouring volts, and they reversed reverse it; below a hundredth of what it is rated it is a
// resistor of the current there. At its rated current whatever its speed it draws 5 A from 2 V on; held fast V/Ra. Of twice the power
// all is twice as much.
func TestFan(t *testing.T) {
	spec := &circuit.LoadSpec{Behaves: design.Motor, RatedV: 12, PowerW: 60, FanStall: 6, Load: &design.Load{}}
	law := behaviourLaw(spec, 60)
	for v := 0.12; v < 30; v += 0.37 {
		a, g := law.At(v)
		up, _ := law.At(v + 1e-6)
		twice := behaviourLaw(spec, 120)
		double, _ := twice.At(v)
		back, _ := law.At(-v)
		if math.Abs(0.4*a+10*math.Sqrt(a/5)-v) > 1e-9 || v > 0.12 && math.Abs((up-a)/1e-6-g) > 1e-4*g || back != -a || math.Abs(double-2*a) > 1e-9*a {
			t.Errorf("%g V: %g A, %g S, reversed %g A, of twice the power %g A", v, a, g, back, double)
		}
	}
	edge, _ := law.At(0.12)
	if a, g := law.At(0.06); math.Abs(a-edge/2) > 1e-12 || math.Abs(g-edge/0.12) > 1e-12 {
		t.Errorf("at half of the edge %g A and %g S of %g A", a, g, edge)
	}
	b := &circuit.Branch{Load: spec}
	for as, want := range map[Fans][2]float64{Steady: {5, 2.5}, Stand: {30, 2.5}} {
		law := (&Network{opt: Options{Fans: as}}).loadLaw(b)
		rated, _ := law.At(12)
		low, _ := law.At(1)
		if math.Abs(rated-want[0]) > 1e-9 || math.Abs(low-want[1]) > 1e-9 {
			t.Errorf("as %d: %g A at 12 V and %g A at 1 V, by hand %v", as, rated, low, want)
		}
	}
}
