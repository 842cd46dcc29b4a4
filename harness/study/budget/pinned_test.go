package budget_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/budget"
	"fusewright/library"
)

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.5f, want %.5f ± %g", what, got, want, tolerance)
	}
}

// Days of standing by hand: an AGM battery of 12 Ah loses 5 % in 30 days at
// 20 °C, √2 times as fast at 25 °C, where days are given; it starts down to 60 %.
func TestStandbyDaysByHand(t *testing.T) {
	b := budgetOf(t, example)
	d := designOf(t, example)
	k := -math.Log(0.95) / 30 * math.Sqrt2
	for drainA, want := range map[float64]float64{
		0:    math.Log(1/0.6) / k,
		0.02: math.Log((1+0.04/k)/(0.6+0.04/k)) / k, // 0.02 A · 24 h / 12 Ah = 0.04 a day
	} {
		within(t, "days", budget.StandbyDays(d, drainA), want, 1e-6*want)
	}
	within(t, "drain of the clock: 28 mW from 12.8 V", b.StandbyA, 0.0022, 0.0001)
}

// Hot output, at half: 12.5 A at cruise and 5 A at idle, where the machine's 9 A
// and the vest's 2 A are 6 A short. The posts fall to the battery's 12.8 V less
// 10 mΩ · 6.7 A: there 126 W are 9.9 A and the vest takes 1.82 A, and the battery
// gives 6.72 A. A full one of 12 Ah at 10 h does so with 0.4 of its capacity for
// 0.4 · 10 h · (1.2 / 6.72)^1.11.
func TestHotDeratingByHand(t *testing.T) {
	b := budgetOf(t, strings.Replace(example, "cruise: 4000 rpm}", "cruise: 4000 rpm, hot derating: 50 %}", 1))
	idling, riding := b.Lines[0], b.Lines[1]
	within(t, "idle, output", idling.OutputA, 5, 1e-9)
	within(t, "idle, spare", idling.SpareA, -6, 0.02)
	within(t, "idle, posts", idling.BusV, 12.8-0.010*6.72, 0.04)
	within(t, "idle, battery", idling.BatteryA, 6.72, 0.02)
	// It discharges itself besides: k a day, as above.
	k, i := -math.Log(0.95)/30*math.Sqrt2, 2.4*math.Pow(idling.BatteryA/1.2, 1.11)
	within(t, "idle, hours", idling.BatteryHours, 24*math.Log((1+i/k)/(0.6+i/k))/k, 1e-9)
	within(t, "cruise, output", riding.OutputA, 12.5, 1e-9)
	within(t, "cruise, spare", riding.SpareA, 1.5, 0.02)
	if !math.IsInf(riding.BatteryHours, 1) {
		t.Errorf("cruise: the battery covers %g h", riding.BatteryHours)
	}
	last := b.Output[len(b.Output)-1]
	within(t, "end of the curve drawn", last.CurrentA, 12.5, 1e-9)
}

// How a load's current goes with its voltage: 4 A at 14 V each. With the engine
// stopped nothing is brought to the regulated voltage.
func TestDemandAtRegulatedVoltage(t *testing.T) {
	for behaves, stopped := range map[string]float64{
		"resistor":       4 * 12.8 / 14,
		"constant power": 4 * 14 / 12.8,
		"filament lamp":  4 * math.Pow(12.8/14, solve.LampExponent),
		"motor":          4,
	} {
		text := strings.Replace(example, "behaves: resistor, duty: 50 %", "behaves: "+behaves, 1) +
			"  resting: {key: on, engine: stopped, on: [vest]}\n"
		b := budgetOf(t, text)
		within(t, behaves+", riding", b.Lines[1].AccessoryA, 4, 0.02)
		within(t, behaves+", stopped", b.Lines[2].AccessoryA, stopped, 0.12)
		if got := b.Lines[2].BreaksEvenAt(); got != "–" {
			t.Errorf("%s: with the engine stopped it breaks even at %s", behaves, got)
		}
	}
}

// A coil counts with its current, at the regulated voltage.
func TestCoilsCount(t *testing.T) {
	text := strings.Replace(example, "\nloads:\n", `
relays:
  r: {form: mini make, fed by: f, wire: {length: 20 mm}, coil: {fed by: f, returns to: battery negative, suppressed by: diode, wire: {length: 20 mm}, return wire: {length: 20 mm}}}
loads:
  lamp: {power: 14 W, rated at: 14 V, behaves: resistor, fed by: r, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
`, 1)
	b := budgetOf(t, text)
	coil := 14 / library.Default().RelayForm("mini make").CoilOhm
	within(t, "vest, lamp and coil", b.Lines[1].AccessoryA, 2+1+coil, 0.02)
	// At idle the battery makes up what is missing, and the bus is at its voltage.
	within(t, "vest, lamp and coil at idle", b.Lines[0].AccessoryA, 2+1+coil, 0.01) // fuse and wires take 0.2 %
}

// A fan of 5 A in the situation that it names, and in no other: idle is 1 A short
// with the vest and the fan at 20 %; always on in traffic the fan makes that 5 A.
func TestFanInTraffic(t *testing.T) {
	b := budgetOf(t, strings.Replace(example, "fan: {power: 70 W, duty: 20 %}", "fan: {power: 70 W, when: idling}", 1))
	within(t, "whenever it runs", b.VehicleA, 8, 0.01)
	within(t, "idle, vehicle", b.Lines[0].VehicleA, 13, 0.01)
	within(t, "idle, spare", b.Lines[0].SpareA, -5, 0.02)
	within(t, "riding, vehicle", b.Lines[1].VehicleA, 8, 0.01)
	within(t, "riding, spare", b.Lines[1].SpareA, 15, 0.02)
}

// The likely demand by hand: 10 % of 8 A and of 1 A of the machine's own loads, and
// of the vest's 2 A what its tolerance says; nothing above a highest figure.
func TestLikelyDemand(t *testing.T) {
	for of, vest := range map[string]float64{
		"duty: 50 %":                  0.2, // resistor: a tenth
		"tolerance: 50 %, duty: 50 %": 1,
		"tolerance: 0 %, duty: 50 %":  0,
		"figure: highest, duty: 50 %": 0,
	} {
		b := budgetOf(t, strings.Replace(example, "duty: 50 %", of, 1))
		more := math.Sqrt(0.8*0.8 + 0.1*0.1 + vest*vest)
		within(t, of, b.Lines[0].LikelyA-b.Lines[0].VehicleA-b.Lines[0].AccessoryA, more, 0.01)
		within(t, of+", spare is nominal", b.Lines[0].SpareA, -1, 0.02)
	}
}

// A filament lamp counts with the most that its type approval allows: 22.1 W of its
// 21 W at 12 V, which are 26.5 W at 13.5 V, so that 1.90 A at 14 V are likely 0.10 A more.
func TestLikelyDemandOfApprovedLamp(t *testing.T) {
	text := strings.Replace(example, "power: 56 W, rated at: 14 V, behaves: resistor, duty: 50 %", "type: bulb 21 W", 1)
	b := budgetOf(t, text)
	lamp := 21.0 / 12 * math.Pow(14.0/12, solve.LampExponent)
	within(t, "nominal", b.Lines[0].AccessoryA, lamp, 0.01)
	more := lamp * (22.1/21 - 1)
	within(t, "likely", b.Lines[0].LikelyA, 9+lamp+math.Sqrt(0.8*0.8+0.1*0.1+more*more), 0.02)
	if said := budget.LikelyBasis(designOf(t, text)); !strings.Contains(said, "22.1 W of 21 W (UN R37, most power of PY21/5W, 26.5 W at 13.5 V, brought to 12 V; computed)") {
		t.Error(said)
	}
	if said := budget.LikelyBasis(designOf(t, example)); strings.Contains(said, "approval") {
		t.Error(said)
	}
}

// How long a situation is taken to last, and what 4 A for 3 min at a time and 1 % of the
// time are in it: a tenth of half an hour, a twentieth of an hour, 1 % of a night at anchor
// and not 3 min of 8 h.
func TestUsedOnceInASituation(t *testing.T) {
	text := strings.Replace(example, "duty: 50 %", "duty: 1 %, on for: 3 min", 1) + "  camp: {key: off, on: [vest]}\n"
	b := budgetOf(t, text)
	within(t, "idle", b.Lines[0].AccessoryA, 0.4, 0.002)
	within(t, "camp", b.KeyOff[0].AccessoryA, 0.2*12.8/14, 0.002)
	b = budgetOf(t, strings.Replace(text, "practice: motorcycle", "practice: marine", 1))
	within(t, "a night at anchor", b.KeyOff[0].AccessoryA, 0.04*12.8/14, 0.001)
}

// A start of 120 A for 10 s needs 0.370 Ah: never at idle, which is short; at cruise
// 14 A are to spare, of which the battery takes 4.8 A.
func TestStartComesBack(t *testing.T) {
	b := budgetOf(t, example)
	if h := b.Lines[0].ReturnHours; !math.IsInf(h, 1) {
		t.Errorf("idle gives it back in %g h", h)
	}
	within(t, "cruise", b.Lines[1].ReturnHours, 120*10/3600.0/0.9/4.8, 1e-6)
}

// An accessory that stays on counts in the standby drain with its duty.
func TestStandbyDrainCountsDuty(t *testing.T) {
	text := strings.Replace(example, "own switch: yes, ", "", 1) + "  left alone: {key: off}\n"
	b := budgetOf(t, text)
	within(t, "half of 4 A at 14 V, at 12.8 V", b.StandbyA, 2*12.8/14, 0.05)
}

// Parked is key off with nothing on and nothing closed by hand; of several such
// states the one with the largest drain counts.
func TestWhatIsParked(t *testing.T) {
	load, hand := &design.Load{}, &design.Switch{}
	for _, c := range []struct {
		name string
		s    design.Situation
		want bool
	}{
		{"key off", design.Situation{Key: design.KeyOff}, true},
		{"key on", design.Situation{Key: design.KeyOn}, false},
		{"a load on", design.Situation{Key: design.KeyOff, On: []*design.Load{load}}, false},
		{"a switch closed", design.Situation{Key: design.KeyOff, Closed: []*design.Switch{hand}}, false},
	} {
		if got := budget.IsParked(&c.s); got != c.want {
			t.Errorf("%s: parked %t", c.name, got)
		}
	}
	off := &design.Situation{Key: design.KeyOff}
	var sols []*solve.Solution
	for _, amps := range []float64{0.1, 0.3, 0.2} {
		sols = append(sols, &solve.Solution{Situation: off, Status: solve.Converged, BatteryA: amps})
	}
	if got := budget.Parked(nil, sols); got.BatteryA != 0.3 {
		t.Errorf("the drain of %g A counts, want 0.3 A", got.BatteryA)
	}
}

func designOf(t *testing.T, text string) *design.Design {
	t.Helper()
	d := buildtest.Design(t, text)
	if _, err := circuit.Build(d); err != nil {
		t.Fatal(err)
	}
	return d
}

// A start by hand: 120 A for 10 s are 0.3333 Ah, of which an AGM battery stores nine
// tenths: 0.3704 Ah give it back.
func TestStartBackByHand(t *testing.T) {
	b := budgetOf(t, example)
	within(t, "a start", b.Start.Ah(), 0.33333, 1e-5)
	within(t, "to give back", b.StartBackAh, 0.37037, 1e-5)
}
