package harness_test

import (
	"math"
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
	"fusewright/library"
)

// TestOneBalance: in every design that is clean, and in the demos, budget, solved
// network and ride agree on each situation with the engine running, duty counted
// alike: which way the battery's current goes and how large it is, within 0.5 %
// of the demand and 20 mA (the wires of the budget are warm, those of the others
// cold), and what the loads ask for at the regulated voltage, within the same. So
// do they where one of the machine's own loads draws in one situation only.
func TestOneBalance(t *testing.T) {
	situations, short := 0, 0
	for file, src := range balanced(t) {
		r := reviewtest.Of(t, src)
		d := r.Design
		if !d.Charging.Present() {
			continue
		}
		for _, l := range r.Budget.Lines {
			if l.Situation.EngineRPM == 0 {
				continue
			}
			situations++
			if l.SpareA < 0 {
				short++
			}
			b := balance{t, r, file + ", " + l.Situation.Name, l.Situation, 0.005*(l.OutputA-l.SpareA) + 0.020}
			average := budget.Average(d, l.Situation)
			mean := solve.Solve(r.Circuit, l.Situation, solve.Options{LoadFactor: average})
			b.near("network, battery", mean.BatteryA, l.BatteryA)
			b.near("ride, battery", b.rideA(), l.BatteryA)
			opt := solve.Options{LoadFactor: average, BatteryV: d.Charging.RegulatedV.Value, BatteryOhm: 1e-6, NoCharging: true}
			if r.Circuit.Stud() != nil { // it feeds what every battery feeds
				opt.BankV = opt.BatteryV
			}
			held := solve.Solve(r.Circuit, l.Situation, opt)
			demandA := held.BatteryA - charged(r.Circuit, held)
			if r.Circuit.Stud() != nil {
				for _, bank := range d.Batteries {
					demandA += held.Given(r.Circuit.PartOf(bank).Branches[0])
				}
			}
			b.near("network, demand", demandA, l.OutputA-l.SpareA)
			if gives := l.BatteryA > 0; gives != (l.SpareA < 0) || gives != (mean.BatteryA > 0) || gives != (b.rideA() > 0) {
				t.Errorf("%s: spare %.3f A, the battery gives %.3f A", b.name, l.SpareA, l.BatteryA)
			}
		}
	}
	if situations < 20 || short == 0 {
		t.Errorf("%d situations, %d of them short: not enough to compare", situations, short)
	}
}

// inTraffic is a design with a fan that runs in traffic.
const inTraffic = `fusewright: 1
title: fan
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 10 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: 10 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads:
  machine: {power: 112 W}
  fan: {power: 70 W, when: traffic}
situations:
  traffic: {engine: idle, on: none}
  waiting: {engine: idle, on: none}
  riding: {engine: cruise, on: none}
`

// anchoring is a design with a windlass of 1 % of the time, 3 min at once, that hauls and veers.
const anchoring = `fusewright: 1
title: windlass
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 90 Ah, rate: 20 h, resistance: 5 mΩ}
charging: {regulated: 14 V, output: {800 rpm: 15 A, 4000 rpm: 35 A}, idle: 800 rpm, cruise: 4000 rpm}
vehicle loads: {engine: 112 W}
wire: {insulation: tinned marine 105 °C AWG, size: 2 AWG}
fuses: {f: {type: class T, rating: 125 A, fed by: battery, wire: {length: 100 mm}}}
switches:
  up button: {type: push button 3 A, fed by: f, wire: {length: 100 mm}}
  down button: {type: push button 3 A, fed by: f, wire: {length: 100 mm}}
relays:
  haul: {form: reversing contactor 150 A, fed by: f, returns to: battery negative, wire: {length: 100 mm}, return wire: {length: 100 mm}, coil: {fed by: up button, returns to: battery negative, suppressed by: diode, wire: {length: 100 mm}, return wire: {length: 100 mm}}}
  veer: {other half of: haul, coil: {fed by: down button, returns to: battery negative, suppressed by: diode, wire: {length: 100 mm}, return wire: {length: 100 mm}}}
loads:
  windlass: {current: 90 A, behaves: motor, duty: 1 %, on for: 3 min, fed by: haul, wire: {length: 100 mm}, returns to: veer, return wire: {length: 100 mm}}
situations:
  weighing: {engine: idle, on: [windlass]}
  letting go: {engine: idle, on: [windlass], reversed: [windlass]}
  under way: {engine: cruise, on: none}
`

// balanced are the designs looked at, by file.
func balanced(t *testing.T) map[string][]byte {
	list := map[string][]byte{"in traffic": []byte(inTraffic), "anchoring": []byte(anchoring)}
	for _, file := range cleanDesigns(t) {
		src := buildtest.File(t, file)
		list[file] = src
	}
	return list
}

func cleanDesigns(t *testing.T) []string {
	t.Helper()
	var files []string
	for _, pattern := range []string{"../designs/*.yaml", "../testdata/corpus/clean/*.yaml", "../testdata/corpus/fault/heat-beyond-the-generator.yaml"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: no designs (%v)", pattern, err)
		}
		files = append(files, found...)
	}
	return files
}

// charged is what further batteries take over a link, which no demand of the budget counts; what a charger
// between takes is a demand.
func charged(c *circuit.Circuit, s *solve.Solution) (sum float64) {
	linked := circuit.Reach(c, func(b *circuit.Branch) bool { return s.Closed[b.Index] }, c.Positive())
	for _, b := range c.Branches {
		if b.Kind == circuit.BatteryBranch && b.A != c.Positive() && linked[b.A.Index] {
			sum -= s.Given(b)
		}
	}
	return sum
}

// balance is one situation looked at in several ways.
type balance struct {
	t         *testing.T
	r         *harness.Review
	name      string
	situation *design.Situation
	tolerance float64
}

func (b *balance) near(what string, got, want float64) {
	b.t.Helper()
	if !(math.Abs(got-want) <= b.tolerance) {
		b.t.Errorf("%s, %s: %.3f A, budget %.3f A ± %.3f A", b.name, what, got, want, b.tolerance)
	}
}

// rideA is the battery's current at the beginning of a ride in the situation, at
// 25 °C from full, as long as the budget takes the situation to last.
func (b *balance) rideA() float64 {
	b.t.Helper()
	given := func(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }
	leg := &design.Leg{Key: b.situation.Key, EngineRPM: b.situation.EngineRPM, On: b.situation.On, As: b.situation,
		Lasts: given(budget.LastsS(b.r.Design, b.situation)), AmbientC: given(25)}
	charging := &b.r.Design.Charging
	defer func(had *library.LoadType) { charging.Starter = had }(charging.Starter)
	charging.Starter = &library.LoadType{} // takes nothing: the balance is that of the full battery, not of one that has just started the engine
	out, err := ride.Simulate(b.r.Circuit, &design.Ride{Name: "balance", StartCharge: given(1), Legs: []*design.Leg{leg}}, ride.Options{})
	if err != nil {
		b.t.Fatal(err)
	}
	return out.Points[0].BatteryA
}
