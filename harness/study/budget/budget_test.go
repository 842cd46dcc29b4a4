package budget_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/budget"
)

const example = `fusewright: 1
title: budget
vehicle: invented
revision: A
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 10 mΩ}
charging: {regulated: 14 V, output: {1000 rpm: 10 A, 4000 rpm: 25 A}, idle: 1000 rpm, cruise: 4000 rpm}
vehicle loads:
  machine: {power: 112 W}
  fan: {power: 70 W, duty: 20 %}
  clock: {current: 2 mA, when: always}
wire: {insulation: ISO 6722 thin wall class B, size: 6 mm²}
fuses:
  f: {type: blade C, rating: 20 A, fed by: battery, wire: {length: 20 mm}}
loads:
  vest: {power: 56 W, rated at: 14 V, behaves: resistor, duty: 50 %, own switch: yes, fed by: f, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
situations:
  idling: {engine: idle, on: [vest]}
  riding: {engine: cruise, on: [vest]}
`

func budgetOf(t *testing.T, text string) *budget.Budget {
	t.Helper()
	c := buildtest.Circuit(t, text)
	return budget.Compute(c, solve.All(c, solve.Options{}))
}

// TestCompute follows one small design by hand: machine 112 W/14 V = 8 A, fan
// 5 A·20 % = 1 A, vest 4 A·50 % = 2 A; idle gives 10 A, cruise 25 A.
func TestCompute(t *testing.T) {
	b := budgetOf(t, example)
	const tolerance = 0.02 // A: what 60 mm of wire, a fuse and the 2 mA clock change
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s: %.4f, want %.4f", what, got, want)
		}
	}
	if len(b.Lines) != 2 {
		t.Fatalf("%d lines, want idling and riding", len(b.Lines))
	}
	idling, riding := b.Lines[0], b.Lines[1]
	near("vehicle", b.VehicleA, 9)
	near("idling, vehicle", idling.VehicleA, 9)
	near("idling, accessories", idling.AccessoryA, 2)
	if got := idling.BreaksEvenAt(); got != "1200 rpm" {
		t.Errorf("idling breaks even at %s", got)
	}
	near("idling, spare", idling.SpareA, -1)
	near("riding, output", riding.OutputA, 25)
	near("riding, spare", riding.SpareA, 14)
	near("standby", b.StandbyA, 0.002)
	if r := idling.BreakEvenRPM; math.Abs(r-1200) > 5 { // (11−10)/(25−10)·3000 + 1000
		t.Errorf("break-even %g rpm, want 1200", r)
	}
	near("idling, battery", idling.BatteryA, 1.69) // 126 W / 12.78 V + 2 A · 12.78 / 14 - 10 A
	if want := 0.4 * 10 * math.Pow(1.2/idling.BatteryA, 1.11); !(idling.BatteryHours > 0.999*want && idling.BatteryHours <= want) {
		t.Errorf("battery covers %g h, want a little below %g: it discharges itself besides", idling.BatteryHours, want)
	}
	if !math.IsInf(riding.BatteryHours, 1) {
		t.Errorf("riding: battery covers %g h, want for ever", riding.BatteryHours)
	}
	// Without self-discharge 4.8 Ah / 2 mA would be 100 days.
	if want := 12 * 0.4 / (24 * b.StandbyA); !(b.StandbyDays > 0.5*want && b.StandbyDays <= want) {
		t.Errorf("%g days, want a little below %g", b.StandbyDays, want)
	}
}

// TestBreaksEvenAtIdle: without the vest 10 A at idle cover the machine's 9 A.
func TestBreaksEvenAtIdle(t *testing.T) {
	b := budgetOf(t, strings.ReplaceAll(example, "on: [vest]", "on: none"))
	for _, l := range b.Lines {
		if got := l.BreaksEvenAt(); got != "idle" {
			t.Errorf("%s breaks even at %s", l.Situation.Name, got)
		}
	}
}

// TestOneAnswerParked: what is drawn with the key off empties the battery in one time, whether a
// situation says so or the machine is left alone.
func TestOneAnswerParked(t *testing.T) {
	b := budgetOf(t, strings.Replace(example, "own switch: yes, fed by: f", "fed by: f", 1)+"  parked: {key: off, on: [vest]}\n")
	if len(b.KeyOff) != 1 {
		t.Fatalf("%d lines with the key off", len(b.KeyOff))
	}
	if l := b.KeyOff[0]; math.Abs(l.BatteryA-b.StandbyA) > 1e-6*l.BatteryA || math.Abs(l.BatteryHours-24*b.StandbyDays) > 1e-6*l.BatteryHours {
		t.Errorf("parked: %g A for %g h; left alone: %g A for %g h", l.BatteryA, l.BatteryHours, b.StandbyA, 24*b.StandbyDays)
	}
}
