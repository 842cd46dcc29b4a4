package ride_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/study/ride"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g ± %.3g", what, got, want, tolerance)
	}
}

// bench is a design of a few loads at the posts: as little as a ride needs.
const bench = `fusewright: 1
title: ride bench
system: 12 V
practice: motorcycle
battery: {chemistry: %s, capacity: %s, rate: %s, resistance: 9 mΩ, at: tray}
charging: {regulated: 14.4 V, output: {1000 rpm: 10 A, 2000 rpm: 20 A, 5000 rpm: 30 A}, idle: 1200 rpm, cruise: 4000 rpm}
places: {tray: {ambient: 25 °C}}
runs: []
wire: {insulation: ISO 6722 thin wall class C, size: 10 mm², colour: RD, slack: 0 mm}
fuses:
  f1: {type: blade C, rating: 30 A, at: tray, fed by: battery, wire: {length: 100 mm}}
loads:
%s
rides:
  r:
    start charge: %s
    legs:
%s`

// build reads a bench design and its circuit.
func build(t testing.TB, text string) *circuit.Circuit {
	t.Helper()
	text = strings.Replace(text, "runs: []\n", "", 1)
	c := buildtest.Circuit(t, text)
	return c
}

func simulate(t testing.TB, c *circuit.Circuit, opt ride.Options) *ride.Result {
	t.Helper()
	r, err := ride.Simulate(c, c.Design.Rides[0], opt)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func motor(name, current string) string {
	return fmt.Sprintf("  %s: {current: %s, rated at: 12 V, behaves: motor, symbol: motor, own switch: yes, at: tray, "+
		"fed by: f1, wire: {length: 100 mm}, returns to: battery negative, return wire: {length: 100 mm}}\n", name, current)
}

// TestSteadyDischarge: a constant current takes the battery to empty in the
// hours of Peukert's law. Self-discharge of 5 % a month leaves 0.2 %.
func TestSteadyDischarge(t *testing.T) {
	for _, amps := range []float64{1, 2.8, 14} {
		c := build(t, fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("m", fmt.Sprintf("%g A", amps)),
			"100 %", "      - {lasts: 30 h, on: [m]}\n"))
		want := battery.PeukertHours(14, 10, c.Design.Battery.Chemistry.Peukert, amps) * 3600
		r := simulate(t, c, ride.Options{})
		near(t, fmt.Sprintf("%g A to empty", amps), r.EmptyS, want, 2e-3*want)
		near(t, fmt.Sprintf("%g A to the reserve", amps), r.ReserveS, 0.4*want, 1e-3*want)
		near(t, "lowest", r.LowestCharge, 0, 1e-9)
	}
}

// TestPublishedEndurance is the battery endurance example printed in two
// avionics manuals (emergency power calculation: 35 Ah derated to 75 %, 43.5 A
// for 5 min, 34.0 A as long as it lasts, 48.1 A for 10 min: 25.8 and 40.8 min),
// without a rate effect as there, to its last digit.
func TestPublishedEndurance(t *testing.T) {
	loads := motor("a", "43.5 A") + motor("b", "34.0 A") + motor("c", "48.1 A")
	c := build(t, fmt.Sprintf(bench, "AGM", "26.25 Ah", "20 h", loads, "100 %",
		"      - {lasts: 5 min, on: [a]}\n      - {lasts: 25.779 min, on: [b]}\n      - {lasts: 60 min, on: [c]}\n"))
	linear := *c.Design.Battery.Chemistry
	linear.Peukert, linear.SelfDischarge = 1, 0
	c.Design.Battery.Chemistry = &linear
	r := simulate(t, c, ride.Options{})
	near(t, "minutes in all", r.EmptyS/60, 40.8, 0.05)
	near(t, "ampere-minutes of the first leg", r.Legs[0].TakenAh*60, 217.5, 0.01)
	near(t, "ampere-minutes of the last leg", r.Legs[2].TakenAh*60, 481, 0.2)
}

// demo reads a demo design; rides are those of the test.
func demo(t testing.TB, name, rides string) *circuit.Circuit {
	t.Helper()
	src := buildtest.File(t, filepath.Join("..", "..", "..", "designs", name))
	text := string(src)
	if at := strings.Index(text, "\nrides:"); at >= 0 {
		end := strings.Index(text[at+1:], "\n\n")
		if end < 0 {
			text = text[:at]
		} else {
			text = text[:at] + text[at+1+end:]
		}
	}
	return build(t, text+"\n"+rides)
}

// day has every kind of leg: standing, idling, riding, cold, all on. No leg asks
// for what the charging system gives to within a few milliamperes: there a
// constant-power demand has two balances, one of them unstable, and the
// simulator may settle on that one.
const day = `rides:
  day:
    start charge: 95 %
    legs:
      - {lasts: 10 min, key: on, on: [navigation], ambient: 25 °C}
      - {lasts: 15 min, engine: idle, on: all, ambient: 5 °C}
      - {lasts: 40 min, engine: cruise, on: [left lamp, right lamp, navigation], ambient: 5 °C}
      - {lasts: 20 min, engine: 1400 rpm, on: all, ambient: -5 °C}
`

// TestStepHalving: a sixteenth of the tolerance (steps of a quarter) and a fine
// net of voltages change a ride by less than 2e-5 of charge and 2 mV.
func TestStepHalving(t *testing.T) {
	c := demo(t, "fen-runner.yaml", day)
	coarse := simulate(t, c, ride.Options{})
	for name, opt := range map[string]ride.Options{
		"steps":    {Tolerance: 2e-7 / 16},
		"voltages": {VoltStep: 0.1 / 8},
	} {
		fine := simulate(t, c, opt)
		for i, l := range fine.Legs {
			near(t, fmt.Sprintf("%s: charge after leg %d", name, i+1), coarse.Legs[i].ToCharge, l.ToCharge, 2e-5)
			near(t, fmt.Sprintf("%s: lowest V of leg %d", name, i+1), coarse.Legs[i].LowestV, l.LowestV, 2e-3)
		}
	}
}

// TestBalance: at each moment the sources give what the loads take, and over
// each leg the sums of ampere-hours and the change of charge agree.
func TestBalance(t *testing.T) {
	c := demo(t, "fen-runner.yaml", day)
	r := simulate(t, c, ride.Options{})
	for _, p := range r.Points {
		near(t, fmt.Sprintf("balance at %.0f s", p.TimeS), p.ChargingA+p.BatteryA, p.LoadA, 1e-6)
	}
	capacity, chem := c.Design.Battery.CapacityAh.Value, c.Design.Battery.Chemistry
	for i, l := range r.Legs {
		near(t, fmt.Sprintf("Ah of leg %d", i+1), l.ChargingAh+l.TakenAh-l.GivenAh, l.UsedAh, 1e-4)
		change := (l.ToCharge - l.FromCharge) * capacity
		most := l.GivenAh*chem.ChargeEfficiency - l.TakenAh + 1e-4
		if change > most {
			t.Errorf("leg %d: charge rises by %.5f Ah on %.5f Ah", i+1, change, most)
		}
	}
}

// TestAgainstTheNetwork: at the beginning of each leg the posts stand where the
// whole network, battery and charging system in it, puts them.
func TestAgainstTheNetwork(t *testing.T) {
	c := demo(t, "fen-runner.yaml", strings.NewReplacer("ambient: -5", "ambient: 25", "ambient: 5", "ambient: 25").Replace(day))
	r := simulate(t, c, ride.Options{})
	bat := battery.Of(c.Design)
	for i, l := range r.Legs {
		p := pointAt(r, l.FromS, i)
		s := solve.Solve(c, &design.Situation{Key: l.Leg.Key, EngineRPM: l.Leg.EngineRPM, On: l.Leg.On},
			solve.Options{Discharged: 1 - p.Charge, BatteryOhm: bat.Ohm(p.Charge, l.AmbientC),
				LoadFactor: solve.AverageDraw(&design.Situation{On: l.Leg.On}, l.Leg.Lasts.Value)})
		if s.Status != solve.Converged {
			t.Fatalf("leg %d: %s", i+1, s.Status)
		}
		name := fmt.Sprintf("leg %d ", i+1)
		near(t, name+"posts, V", p.BusV, s.NodeV[c.Positive().Index], 2e-3)
		near(t, name+"battery, A", p.BatteryA, s.BatteryA, 2e-3)
		near(t, name+"charging, A", p.ChargingA, s.ChargingA, 2e-3)
	}
}

// pointAt is the first moment of a leg: the end of the one before has the same time.
func pointAt(r *ride.Result, timeS float64, leg int) ride.Point {
	for i, p := range r.Points {
		if p.TimeS == timeS && (leg == 0 || i > 0 && r.Points[i-1].TimeS == timeS) {
			return p
		}
	}
	return ride.Point{}
}

// TestColdBreaksTheReserve: at 62 %, 2.4 % below 64.4 % after the start, a warm battery starts the engine again and a cold
// one may not; and lithium takes no charge in the frost.
func TestColdBreaksTheReserve(t *testing.T) {
	leg := func(celsius int) string {
		return fmt.Sprintf("      - {lasts: 5 min, engine: cruise, ambient: %d °C}\n", celsius)
	}
	c := build(t, fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("m", "1 A"), "64.4 %", leg(25)+leg(-10)))
	if r := simulate(t, c, ride.Options{}); math.Abs(r.ReserveS-300) > 1e-6 {
		t.Errorf("reserve broken at %.1f s, want 300", r.ReserveS)
	}
	c = build(t, fmt.Sprintf(bench, "LiFePO4", "8 Ah", "5 h", motor("m", "1 A"), "62 %", leg(-5)))
	if r := simulate(t, c, ride.Options{}); r.Legs[0].GivenAh != 0 {
		t.Errorf("lithium took %.4f Ah at -5 °C", r.Legs[0].GivenAh)
	}
}

// TestColdNightBreaksTheReserve: three days in air of −20 °C leave the battery as cold, in which AGM has 62 % at −18 °C less 2 · 1.5 % and starts from 1 − 0.4 · 0.59 = 76.4 % on; the
// reserve of the leg is that of its end, and the next leg's that of its beginning. The battery warms up again in the leg behind.
func TestColdNightBreaksTheReserve(t *testing.T) {
	const out, night, morning = "      - {lasts: 10 min, engine: cruise, ambient: 25 °C}\n", "      - {lasts: 72 h, key: off, ambient: -20 °C}\n", "      - {lasts: 72 h, engine: cruise, ambient: 25 °C}\n"
	ridden := func(charge, legs string) *ride.Result {
		return simulate(t, build(t, fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("m", "1 A"), charge, legs)), ride.Options{})
	}
	for charge, breaks := range map[string]bool{"64.4 %": true, "100 %": false} {
		r := ridden(charge, out+night)
		near(t, "reserve of the night", r.Legs[1].StartReserve, 0.764, 1e-6)
		near(t, "reserve at the end", r.EndReserve(), r.Legs[1].StartReserve, 0)
		if got := r.ReserveS > 600; got != breaks {
			t.Errorf("%s: reserve broken at %.0f s", charge, r.ReserveS)
		}
		if longer := ridden(charge, out+night+morning); longer.Legs[2].FromReserve != r.EndReserve() || longer.Legs[2].StartReserve != r.EndReserve() || longer.ReserveS != r.ReserveS && breaks {
			t.Errorf("%s: the next leg begins with a reserve of %g, the night ends with %g", charge, longer.Legs[2].FromReserve, r.EndReserve())
		} else {
			near(t, "reserve after a warm day", longer.EndReserve(), 0.6, 1e-3)
		}
	}
}

// TestRandomRides: whatever the legs, no number is lost, charge stays a share,
// and more start charge never ends lower.
func TestRandomRides(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 10 {
		var legs strings.Builder
		for range 1 + random.Intn(5) {
			engine := []string{"stopped", "idle", "cruise", "1500 rpm"}[random.Intn(4)]
			on := []string{"all", "none", "[heated grips]"}[random.Intn(3)]
			fmt.Fprintf(&legs, "      - {lasts: %d min, engine: %s, on: %s, ambient: %d °C}\n",
				1+random.Intn(240), engine, on, random.Intn(60)-25)
		}
		end := -1.0
		for _, start := range []int{20, 60, 100} {
			c := demo(t, "fen-runner.yaml", fmt.Sprintf("rides:\n  x:\n    start charge: %d %%\n    legs:\n%s", start, legs.String()))
			r := simulate(t, c, ride.Options{})
			for _, p := range r.Points {
				if math.IsNaN(p.Charge+p.BusV+p.BatteryA+p.ChargingA+p.LoadA) || p.Charge < 0 || p.Charge > 1 {
					t.Fatalf("%+v in\n%s", p, legs.String())
				}
			}
			if math.IsNaN(r.EmptyS) {
				if r.EndCharge < end-1e-6 {
					t.Errorf("start %d %% ends at %.6f, a lower one at %.6f:\n%s", start, r.EndCharge, end, legs.String())
				}
				end = r.EndCharge
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	c := demo(t, "fen-runner.yaml", day)
	if _, err := ride.Simulate(c, &design.Ride{Name: "none"}, ride.Options{}); err == nil {
		t.Error("a ride without legs")
	}
	c.Design.Battery.CapacityAh = design.Quantity{}
	if _, err := ride.Simulate(c, c.Design.Rides[0], ride.Options{}); err == nil {
		t.Error("a battery without capacity")
	}
}

func BenchmarkFourLegs(b *testing.B) {
	c := demo(b, "fen-runner.yaml", day)
	points := 0
	for b.Loop() {
		points = len(simulate(b, c, ride.Options{}).Points)
	}
	b.ReportMetric(float64(points), "points")
}

// TestDemoLegsFollowCycles: the demo's town rides stand still for the share of a
// standard cycle that they are drawn from, over its duration, to the second.
func TestDemoLegsFollowCycles(t *testing.T) {
	f, err := os.Open(filepath.Join("..", "..", "..", "testdata", "reference", "charging", "drive_cycles.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	src := buildtest.File(t, filepath.Join("..", "..", "..", "designs", "fen-runner.yaml"))
	rides := map[string]*design.Ride{}
	for _, r := range build(t, string(src)).Design.Rides {
		rides[r.Name] = r
	}
	for name, cycle := range map[string][2]string{
		"town with idling": {"CADC urban", "whole"}, "short hop": {"WMTC", "part 1"},
	} {
		compared := false
		for _, row := range rows {
			if row[0] != cycle[0] || row[1] != cycle[1] {
				continue
			}
			durationS, _ := strconv.ParseFloat(row[2], 64)
			idlePct, err := strconv.ParseFloat(row[4], 64)
			if err != nil || rides[name] == nil {
				t.Fatalf("%s: %v, %v", name, rides[name], err)
			}
			legs := rides[name].Legs
			near(t, name+", standing", legs[0].Lasts.Value, durationS*idlePct/100, 0.5)
			near(t, name+", in all", legs[0].Lasts.Value+legs[1].Lasts.Value, durationS, 0.5)
			compared = true
		}
		if !compared {
			t.Errorf("no cycle %v", cycle)
		}
	}
}

// TestStarts: the usual starter of a motorcycle's battery takes 120 A for 10 s, 1/3 Ah, as each leg begins in
// which the engine runs after it stood, the first leg among them; one that runs on takes none.
func TestStarts(t *testing.T) {
	legs := ""
	for _, engine := range []string{"cruise", "idle", "stopped", "cruise"} {
		legs += fmt.Sprintf("      - {lasts: 1 min, engine: %s, on: none}\n", engine)
	}
	r := simulate(t, build(t, fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("m", "1 A"), "80 %", legs)), ride.Options{})
	start, before := r.StartAh, 0.8
	for i, want := range []float64{start, 0, 0, start} {
		l := r.Legs[i]
		near(t, "start", l.StartAh, want, 1e-12)
		near(t, fmt.Sprintf("charge as leg %d goes on", i+1), l.FromCharge, before-want/14, 1e-9)
		near(t, "charge of its first moment", pointAt(r, l.FromS, i).Charge, l.FromCharge, 1e-9)
		before = l.ToCharge
	}
	near(t, "Ah of a start", start, 1.0/3, 1e-9)
}

// TestAirAtRest: with the engine at rest a battery stands in air of 25 °C, or of its place where that is colder; with the engine running in
// that of its place; a leg's own temperature goes before.
func TestAirAtRest(t *testing.T) {
	for place, want := range map[string][3]float64{"60 °C": {25, 60, 5}, "10 °C": {10, 10, 5}, "25 °C": {25, 25, 5}} {
		text := fmt.Sprintf(bench, "AGM", "14 Ah", "10 h", motor("m", "1 A"), "80 %", "      - {lasts: 1 h, key: off}\n      - {lasts: 1 h, engine: cruise}\n      - {lasts: 1 h, key: off, ambient: 5 °C}\n")
		r := simulate(t, build(t, strings.Replace(text, "tray: {ambient: 25 °C}", "tray: {ambient: "+place+"}", 1)), ride.Options{})
		for i, l := range r.Legs {
			if l.AmbientC != want[i] {
				t.Errorf("%s, leg %d: %g °C, want %g", place, i+1, l.AmbientC, want[i])
			}
			if assumed := place == "60 °C" && i == 0; l.AmbientAssumed != assumed {
				t.Errorf("%s, leg %d: assumed %t", place, i+1, l.AmbientAssumed)
			}
		}
	}
}

// TestFirstBatteryProtection: a first battery's protection opens as a further one's does, and the ride ends. 46 A out of about 13.2 V, and 40 A let
// through; 14.4 V are below the 15.2 V at which it opens on charge, 15.6 V are not.
func TestFirstBatteryProtection(t *testing.T) {
	for _, x := range []struct{ board, amps, regulated, leg, want string }{
		{"40 A", "46 A", "14.4 V", "key: off, on: [m]", "switches itself off: 46.0 A through a protection of 40 A"},
		{"47 A", "46 A", "14.4 V", "key: off, on: [m]", ""},
		{"100 A", "1 A", "15.6 V", "engine: cruise", "switches itself off above 15.2 V"},
		{"100 A", "1 A", "15.1 V", "engine: cruise", ""},
	} {
		text := strings.NewReplacer("9 mΩ", "4 mΩ, board: "+x.board, "regulated: 14.4 V", "regulated: "+x.regulated, "rating: 30 A", "rating: 40 A").
			Replace(fmt.Sprintf(bench, "LiFePO4", "100 Ah", "5 h", motor("m", x.amps), "95 %", "      - {lasts: 1 h, "+x.leg+"}\n"))
		r := simulate(t, build(t, text), ride.Options{})
		if r.Why != x.want || math.IsNaN(r.EmptyS) != (x.want == "") || x.want != "" && !(r.EmptyS < 3500) {
			t.Errorf("%s, %s: %q at %g s", x.board, x.regulated, r.Why, r.EmptyS)
		}
	}
}
