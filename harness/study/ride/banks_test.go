package ride_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
)

// two is a start and a house battery at the same post: link says what is between them, house more of
// the house battery, legs the ride.
const two = `fusewright: 1
title: two batteries
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 80 Ah, rate: 20 h, resistance: 4 mΩ, at: tray}
charging: {regulated: 14.4 V, output: {900 rpm: 50 A, 2000 rpm: 100 A}, idle: 900 rpm, cruise: 2000 rpm}
places: {tray: {ambient: 25 °C}}
wire: {size: 16 mm², slack: 500 mm}
batteries:
  house: {chemistry: %s, capacity: 100 Ah, rate: 20 h, resistance: 4 mΩ, at: tray, fed by: %s}
%s
loads:
  cabin: {power: 48 W, rated at: 12 V, behaves: constant power, symbol: LED, at: tray, own switch: yes, fed by: house, returns to: battery negative}
  radio: {power: 24 W, rated at: 12 V, behaves: constant power, symbol: LED, at: tray, own switch: yes, fed by: battery, returns to: battery negative}
situations:
  camp: {key: off, on: [cabin], charge: {house: 90 %%}}
  sunny: {key: off, on: [cabin], sun: 50 %%}
rides:
  day: {charge: {house: %s}, legs: [%s]}
`

const (
	relay   = "relays: {link: {form: voltage-sensing relay, at: tray, fed by: battery, coil: {returns to: battery negative}}}"
	booster = "chargers:\n  booster: {type: DC-DC charger 30 A, at: tray, fed by: battery}\n  roof: {type: MPPT controller 20 A, panel: 200 W, at: tray}"
	selects = "switches: {link: {type: battery switch 300 A, at: tray, fed by: battery}}"
)

func twice(t *testing.T, chemistry, fedBy, parts, charge, legs string, opt ride.Options) *ride.Result {
	t.Helper()
	return simulate(t, build(t, fmt.Sprintf(two, chemistry, fedBy, parts, charge, legs)), opt)
}

// TestApartAsAlone: with the link open the first battery goes as it does when it is alone, which the
// balance over its posts' volts alone tells.
func TestApartAsAlone(t *testing.T) {
	const legs = "{lasts: 3 h, key: off, on: [radio]}, {lasts: 30 min, engine: idle, on: [radio], ambient: 5 °C}"
	both := twice(t, "AGM", "link", selects, "50 %", legs, ride.Options{})
	text := fmt.Sprintf(two, "AGM", "link", selects, "50 %", legs)
	_, house, _ := strings.Cut(text, "batteries:\n")
	house, _, _ = strings.Cut(house, "\n")
	c := build(t, strings.NewReplacer("batteries:\n"+house+"\n", "", "fed by: house", "fed by: link", "charge: {house: 50 %}, ", "", ", charge: {house: 90 %}", "").Replace(text))
	alone := simulate(t, c, ride.Options{})
	for i, l := range both.Legs {
		near(t, "charge", l.ToCharge, alone.Legs[i].ToCharge, 1e-5)
		near(t, "lowest V", l.LowestV, alone.Legs[i].LowestV, 2e-3)
	}
	near(t, "house", both.Banks[0].EndCharge, 0.5, 1e-3) // self-discharge alone
}

// TestRelayUnderWay: the sensing relay closes with the engine, stays closed when it stops, since both
// batteries rest above 12.8 V, until they come down to it under their loads; from then on each serves its own.
func TestRelayUnderWay(t *testing.T) {
	r := twice(t, "AGM", "link", relay, "100 %", "{lasts: 10 min, engine: cruise, on: [cabin]}, {lasts: 5 h, key: off, on: [cabin]}", ride.Options{})
	if l := r.Legs[0].Banks[0]; !(l.LowestV > 14) {
		t.Errorf("with the engine the house battery stands at %.2f V", l.LowestV)
	}
	stop := r.Legs[1]
	house := stop.Banks[0]
	// 5 h × 48 W / 12.65 V out of the house battery, and next to nothing out of the other.
	near(t, "taken out of the house battery", house.TakenAh, 18.97, 0.3)
	near(t, "taken out of the start battery", stop.TakenAh, 0, 0.5)
}

// Loads are loads, on whatever battery: 48 W and 24 W, whatever goes into the house
// battery over the link or a charger; coils and the draw of chargers are less than 0.4 A.
func TestLoadsOfALeg(t *testing.T) {
	for _, by := range [][2]string{{"link", relay}, {"[booster, roof]", booster}} {
		r := twice(t, "AGM", by[0], by[1], "40 %", "{lasts: 30 min, engine: cruise, on: [cabin, radio]}", ride.Options{})
		l := r.Legs[0]
		if l.Banks[0].GivenAh < 10 {
			t.Errorf("%s: the house battery takes %.1f Ah", by[0], l.Banks[0].GivenAh)
		}
		if leastA, mostA := 72/14.5, 72/12.0+0.4; l.UsedAh*2 < leastA || l.UsedAh*2 > mostA {
			t.Errorf("%s: loads %.2f A, want %.2f to %.2f A", by[0], l.UsedAh*2, leastA, mostA)
		}
	}
}

// TestChargersOnARide: the DC-DC charger gives its 30 A while the engine runs: 15 Ah in half an hour,
// less 0.9 efficiency; with the engine stopped the start battery rests; 100 W of sun give 94 W, which
// more than feed 48 W.
func TestChargersOnARide(t *testing.T) {
	r := twice(t, "AGM", "[booster, roof]", booster, "40 %",
		"{lasts: 30 min, engine: cruise}, {lasts: 2 h, key: off, on: [cabin]}, {lasts: 2 h, situation: sunny}", ride.Options{})
	run, rest, sun := r.Legs[0], r.Legs[1], r.Legs[2]
	near(t, "given with the engine", run.Banks[0].GivenAh, 15, 0.05)
	near(t, "charge after it", run.Banks[0].ToCharge, 0.4+0.15*0.9, 2e-3)
	near(t, "taken at rest", rest.Banks[0].TakenAh, 2*48/12.3, 0.3)
	near(t, "taken out of the start battery", rest.TakenAh+sun.TakenAh, 4*0.005, 0.01) // its own draw
	near(t, "given by the sun", sun.Banks[0].GivenAh, 2*(94-48)/12.9, 0.3)
	if !math.IsNaN(r.Banks[0].EmptyS) || r.Banks[0].LowestCharge != 0.4 {
		t.Errorf("%+v", r.Banks[0])
	}
}

// TestHouseRunsEmpty: 4 A out of 20 % of 100 Ah, rated over 20 h: by Peukert's law with 1.11 that is
// 20 h × (100/(4×20))^1 × 0.2 = 5 h at 12 V; at 11.8 to 12 V the load takes 4.05 A. The ride goes on, and
// the engine charges it again.
func TestHouseRunsEmpty(t *testing.T) {
	r := twice(t, "AGM", "[booster, roof]", booster, "20 %",
		"{lasts: 8 h, key: off, on: [cabin]}, {lasts: 1 h, engine: cruise}", ride.Options{})
	near(t, "hours to empty", r.Banks[0].EmptyS/3600, 4.93, 0.05)
	near(t, "charge when empty", r.Legs[0].Banks[0].ToCharge, 0, 1e-3)
	empty := slices.IndexFunc(r.Points, func(p ride.Point) bool { return p.TimeS == r.Banks[0].EmptyS })
	near(t, "the step in which it is placed", r.Points[empty].TimeS-r.Points[empty-1].TimeS, 5, 1e-6)
	near(t, "charge after the engine", r.Banks[0].EndCharge, 0.27, 0.01)
	if !math.IsNaN(r.EmptyS) {
		t.Error("the ride ends with the house battery")
	}
}

// TestColdLithium: below 0 °C lithium takes no charge, above it does.
func TestColdLithium(t *testing.T) {
	for celsius, want := range map[string]float64{"-1 °C": 0, "1 °C": 15} {
		r := twice(t, "LiFePO4", "[booster, roof]", booster, "40 %", "{lasts: 30 min, engine: cruise, ambient: "+celsius+"}", ride.Options{})
		near(t, "given at "+celsius, r.Legs[0].Banks[0].GivenAh, want, 0.05)
	}
}

// TestCoarseAsFine: the coarse steps that findings go by differ by less than a thousandth of charge
// from fine ones, through a relay that moves and a battery that runs empty.
func TestCoarseAsFine(t *testing.T) {
	for _, c := range [][3]string{{"link", relay, "{lasts: 10 min, engine: cruise, on: [cabin]}, {lasts: 5 h, key: off, on: [cabin]}"},
		{"[booster, roof]", booster, "{lasts: 8 h, key: off, on: [cabin]}, {lasts: 1 h, engine: cruise}"}} {
		coarse := twice(t, "AGM", c[0], c[1], "20 %", c[2], ride.Options{Tolerance: 1e-5})
		fine := twice(t, "AGM", c[0], c[1], "20 %", c[2], ride.Options{Tolerance: 1e-8})
		near(t, "start battery", coarse.EndCharge, fine.EndCharge, 1e-3)
		near(t, "house battery", coarse.Banks[0].EndCharge, fine.Banks[0].EndCharge, 1e-3)
	}
}

// TestHoursAgreeWithTheBudget: how long the house battery lasts at camp is the same by the budget as by a
// ride that long, to the volts that fall under way (2 %).
func TestHoursAgreeWithTheBudget(t *testing.T) {
	c := build(t, fmt.Sprintf(two, "AGM", "[booster, roof]", booster, "90 %", "{lasts: 40 h, situation: camp}"))
	b := budget.Compute(c, solve.All(c, solve.Options{}))
	r := simulate(t, c, ride.Options{})
	for _, l := range b.KeyOff {
		if l.Situation.Name != "camp" {
			continue
		}
		at := 0.0
		for _, p := range r.Points {
			if p.Banks[0].Charge > budget.Reserve(c.Design.Batteries[0]) {
				at = p.TimeS / 3600
			}
		}
		near(t, "hours", at, l.Banks[0].Hours, 0.04*at)
		near(t, "amperes", r.Points[0].Banks[0].A, l.Banks[0].A, 1e-3)
	}
}

// TestProtectionOpens: 48 W take 3.6 to 3.7 A at 13 to 13.3 V: a protection of 3.5 A opens at once and closes for the next
// leg, one of 4 A holds.
func TestProtectionOpens(t *testing.T) {
	for board, want := range map[string]string{"3.5 A": "switches itself off", "4 A": ""} {
		text := fmt.Sprintf(two, "LiFePO4, board: "+board, "[booster, roof]", booster, "60 %", "{lasts: 1 h, key: off, on: [cabin]}, {lasts: 1 h, key: off}")
		r := simulate(t, build(t, text), ride.Options{})
		if b := r.Banks[0]; !strings.HasPrefix(b.Why, want) || (b.EmptyS == 0) != (want != "") {
			t.Errorf("%s: %q at %g s", board, b.Why, b.EmptyS)
		}
		if v := r.Legs[1].Banks[0].LowestV; !(v > 13) {
			t.Errorf("%s: %.2f V in the second leg", board, v)
		}
	}
}

// TestProtectionOpensOnCharge: lithium's protection opens above 15.2 V at its posts: a charger that holds 15.6 V brings the full
// battery there, one that holds 15.1 V does not. Nothing charges the battery from then on.
func TestProtectionOpensOnCharge(t *testing.T) {
	for held, want := range map[string]string{"15.6 V": "switches itself off above 15.2 V", "15.1 V": ""} {
		charger := strings.Replace(booster, "DC-DC charger 30 A, at", "DC-DC charger 30 A, output: "+held+", at", 1)
		r := simulate(t, build(t, fmt.Sprintf(two, "LiFePO4", "[booster, roof]", charger, "90 %", "{lasts: 3 h, engine: cruise}")), ride.Options{})
		b := r.Banks[0]
		if b.Why != want || math.IsNaN(b.EmptyS) != (want == "") {
			t.Errorf("%s: %q at %g s", held, b.Why, b.EmptyS)
		}
		if want != "" && !(b.EmptyS > 60 && b.EmptyS < 3600) {
			t.Errorf("%s: after %g s", held, b.EmptyS)
		}
	}
}
