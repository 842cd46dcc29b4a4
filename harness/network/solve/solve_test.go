package solve_test

import (
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/solvetest"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.9g, want %.9g ± %g", what, got, want, tolerance)
	}
}

func converged(t *testing.T, s *solve.Solution) {
	t.Helper()
	if s.Status != solve.Converged {
		t.Fatalf("status %q: %s", s.Status, s.Why)
	}
	if math.IsNaN(s.PowerErrorW) {
		t.Fatal("power error is not a number")
	}
}

// Ohm's law by hand: 12.7 V behind 0.1 Ω on 2.9 Ω + 3.35 Ω is 2 A.
func TestVoltageDivider(t *testing.T) {
	b := solvetest.New()
	plus, mid := b.Node("+"), b.Node("mid")
	bat := b.Battery(plus, 0.1)
	r1 := b.Resistor("R1", plus, mid, 2.9)
	r2 := b.Resistor("R2", mid, b.Ground(), 3.35)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{BatteryV: 12.7})
	converged(t, s)
	near(t, "current", s.Amps(r1), 2, 1e-12)
	near(t, "mid", s.Volts(r2), 6.7, 1e-12)
	near(t, "battery", s.BatteryA, 2, 1e-12)
	near(t, "posts", s.Volts(bat), 12.5, 1e-12)
}

// Each load law by hand at the end of a feeder of 0.5 Ω in all.
func TestLoadLawsOnFeeder(t *testing.T) {
	// Constant power: V = E/2 + sqrt(E²/4 − P·R) = 6 + sqrt(36 − 11.5) V.
	power := 6 + math.Sqrt(36-23*0.5)
	cases := []struct {
		name       string
		how        design.Behaviour
		powerW     float64
		wantV, tol float64
	}{
		{"resistor 24 W is 6 Ω", design.Resistor, 24, 12 * 6 / 6.5, 1e-9},
		{"constant power 23 W", design.ConstantPower, 23, power, 1e-9},
		{"motor 24 W keeps 2 A", design.Motor, 24, 11, 1e-9},
		{"motor too large stalls: 0.2·12 V/100 A = 24 mΩ", design.Motor, 1200, 12 * 0.024 / 0.524, 1e-9},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			circ, load := feeder(c.how, c.powerW)
			s := solve.Solve(circ, solvetest.Situation(0), solve.Options{BatteryV: 12})
			converged(t, s)
			near(t, "load voltage", s.Volts(load), c.wantV, c.tol)
		})
	}
	t.Run("filament", func(t *testing.T) {
		circ, load := feeder(design.FilamentLamp, 24)
		s := solve.Solve(circ, solvetest.Situation(0), solve.Options{BatteryV: 12})
		converged(t, s)
		v := s.Volts(load)
		near(t, "current by the published exponent", s.Amps(load), 2*math.Pow(v/12, 0.55), 1e-9)
		near(t, "current by the feeder", s.Amps(load), (12-v)/0.5, 1e-6)
	})
}

// feeder is a battery of 0.05 Ω, 0.2 Ω out, a load, 0.25 Ω back.
func feeder(how design.Behaviour, powerW float64) (*circuit.Circuit, *circuit.Branch) {
	b := solvetest.New()
	plus, end, back := b.Node("+"), b.Node("end"), b.Node("back")
	b.Battery(plus, 0.05)
	b.Resistor("out", plus, end, 0.2)
	load := b.Load("E1", end, back, how, powerW, 12)
	b.Resistor("back", back, b.Ground(), 0.25)
	return b.C, load
}

// The feeder of 0.5 Ω carries E²/4R = 72 W and no more.
func TestCollapseAtMaximumPower(t *testing.T) {
	for _, c := range []struct {
		powerW float64
		want   solve.Status
	}{
		{60, solve.Converged}, {71.9, solve.Converged}, {72.1, solve.Collapsed},
		{80, solve.Collapsed}, {1e3, solve.Collapsed}, {1e9, solve.Collapsed},
	} {
		circ, load := feeder(design.ConstantPower, c.powerW)
		s := solve.Solve(circ, solvetest.Situation(0), solve.Options{BatteryV: 12})
		if s.Status != c.want {
			t.Errorf("%g W: %q (%s), want %q", c.powerW, s.Status, s.Why, c.want)
		}
		if s.Status == solve.Collapsed && (s.At != load.A || s.Why == "") {
			t.Errorf("%g W: collapse at %v, %q", c.powerW, s.At, s.Why)
		}
	}
}

// A starved load on a sneak path is not a collapse: it never had the voltage.
func TestLoadInSeriesIsNotCollapse(t *testing.T) {
	b := solvetest.New()
	plus, mid := b.Node("+"), b.Node("mid")
	b.Battery(plus, 0.01)
	b.Resistor("heater", plus, mid, 100)
	b.Resistor("other", mid, b.Ground(), 10)
	b.Load("E1", mid, b.Ground(), design.ConstantPower, 24, 12)
	converged(t, solve.Solve(b.C, solvetest.Situation(0), solve.Options{}))
}

func TestCharging(t *testing.T) {
	build := func(loadW float64) *solve.Solution {
		b := solvetest.New()
		plus := b.Node("+")
		b.Battery(plus, 0.010)
		b.C.Design.Battery.CapacityAh = solvetest.Given(10)
		b.Charger(plus, 14.4, 20)
		b.Load("E", plus, b.Ground(), design.Resistor, loadW, 14.4)
		return solve.Solve(b.C, solvetest.Situation(1500), solve.Options{})
	}
	light, heavy := build(144), build(432)
	converged(t, light)
	converged(t, heavy)
	// Regulating: 14.4 V less 10 A over 1 mΩ; full battery at its tail current, 0.5 % of 10 Ah.
	if light.Limited || math.Abs(light.BatteryA+0.05) > 0.001 {
		t.Errorf("light load: limited %v, battery %.4f A", light.Limited, light.BatteryA)
	}
	near(t, "light posts", light.NodeV[1], 14.4, 0.011)
	// Over its limit: 20 A from charging, the battery makes up the rest below its EMF.
	if !heavy.Limited || heavy.BatteryA < 5 {
		t.Errorf("heavy load: limited %v, battery %.3f A", heavy.Limited, heavy.BatteryA)
	}
	near(t, "heavy charging", heavy.ChargingA, 20, 1e-9)
	near(t, "heavy posts", heavy.NodeV[1], 12.7-0.010*heavy.BatteryA, 1e-9)
}

// An accessory draws its duty's share, all of the time when none is said.
func TestAverageDraw(t *testing.T) {
	load := &design.Load{}
	on := &design.Situation{On: []*design.Load{load}}
	for _, c := range []struct {
		name string
		spec *circuit.LoadSpec
		want float64
	}{
		{"an accessory", &circuit.LoadSpec{Load: load, Duty: 0.4}, 0.4}, {"without a duty", &circuit.LoadSpec{Load: load}, 1},
		{"never", &circuit.LoadSpec{Load: &design.Load{Duty: design.Quantity{Text: "0 %"}}}, 0},
		{"on standby", &circuit.LoadSpec{Load: load, Duty: 0.4, Standby: true}, 1},
		{"the machine's, counted by the solver", &circuit.LoadSpec{Vehicle: &design.VehicleLoad{}, Duty: 0.4}, 1}, {"none", nil, 1},
	} {
		if got := solve.AverageDraw(on, 1800)(&circuit.Branch{Load: c.spec}); got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// A windlass of 3 min at a time and 1 % of the time draws for 2 min whole, for a third of
// 9 min, for a tenth of half an hour, and its duty of a long time. Where nobody says that it
// is used it draws its duty.
func TestUsedOnceAtLeast(t *testing.T) {
	windlass := &design.Load{OnForS: design.Quantity{Value: 180, Text: "3 min"}}
	listed := &design.Situation{On: []*design.Load{windlass}}
	for _, c := range []struct {
		name  string
		s     *design.Situation
		duty  float64
		lastS float64
		want  float64
	}{
		{"shorter", listed, 0.01, 120, 1}, {"as long", listed, 0.01, 180, 1}, {"9 min", listed, 0.01, 540, 1.0 / 3},
		{"half an hour", listed, 0.01, 1800, 0.1}, {"at the duty", listed, 0.01, 18000, 0.01}, {"beyond", listed, 0.01, 36000, 0.01},
		{"on more", listed, 0.4, 1800, 0.4}, {"not listed", &design.Situation{}, 0.01, 1800, 0.01},
		{"made by the reader", &design.Situation{On: listed.On, Derived: true}, 0.01, 1800, 0.01}, {"no length", listed, 0.01, 0, 0.01},
	} {
		b := &circuit.Branch{Load: &circuit.LoadSpec{Load: windlass, Duty: c.duty}}
		if got := solve.AverageDraw(c.s, c.lastS)(b); got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
	rest := &circuit.Branch{Load: &circuit.LoadSpec{Load: windlass, Duty: 0.01, Standby: true}}
	if got := solve.AverageDraw(listed, 120)(rest); got != 1 {
		t.Errorf("asleep: %g of it", got)
	}
}

// A string of loads conducts only while all of them do: for a fifth of the time where its
// second draws for so long, whichever is asked; one that is used once for 6 min of half an
// hour, and whose neighbour draws all the time, for a fifth too.
func TestStringDrawsAsItsLeast(t *testing.T) {
	share := func(v float64) design.Quantity { return design.Quantity{Value: v, Text: "given"} }
	for _, c := range []struct {
		name          string
		first, second design.Load
		want          float64
	}{
		{"unlike", design.Load{Duty: share(0.6)}, design.Load{Duty: share(0.2)}, 0.2},
		{"one without", design.Load{Duty: share(1)}, design.Load{Duty: share(0.2)}, 0.2},
		{"alike", design.Load{Duty: share(0.6)}, design.Load{Duty: share(0.6)}, 0.6},
		{"used once", design.Load{Duty: share(1)}, design.Load{Duty: share(0.01), OnForS: share(360)}, 0.2},
	} {
		first, second := &c.first, &c.second
		first.Next, second.Before = second, first
		on := &design.Situation{On: []*design.Load{first, second}}
		for _, l := range on.On {
			if got := solve.AverageDraw(on, 1800)(&circuit.Branch{Load: &circuit.LoadSpec{Load: l, Duty: l.Duty.Value}}); got != c.want {
				t.Errorf("%s, load of %g: %g, want %g", c.name, l.Duty.Value, got, c.want)
			}
		}
	}
}

// The charging system gives what it gives hot; cold is asked for by name.
func TestHotUnlessAsked(t *testing.T) {
	b := solvetest.New()
	plus := b.Node("+")
	b.Battery(plus, 0.010)
	b.Charger(plus, 14.4, 20)
	b.C.Design.Charging.HotDerating = solvetest.Given(0.25)
	b.Load("E1", plus, b.Ground(), design.Resistor, 720, 12)
	s := solvetest.Situation(1500)
	near(t, "hot", solve.Solve(b.C, s, solve.Options{}).ChargingA, 15, 1e-9)
	near(t, "cold", solve.Solve(b.C, s, solve.Options{ColdCharging: true}).ChargingA, 20, 1e-9)
}

func TestIslandsFloat(t *testing.T) {
	b := solvetest.New()
	plus, x, y, dead := b.Node("+"), b.Node("x"), b.Node("y"), b.Node("dead")
	b.Battery(plus, 0.01)
	b.Load("E1", plus, b.Ground(), design.Motor, 24, 12)
	b.Load("EX", x, y, design.ConstantPower, 24, 12)
	b.Load("ED", dead, b.Ground(), design.ConstantPower, 24, 12)
	s := solve.Solve(b.C, solvetest.Situation(0), solve.Options{})
	converged(t, s)
	if !math.IsNaN(s.NodeV[x.Index]) || !math.IsNaN(s.NodeV[y.Index]) {
		t.Errorf("island at %g and %g V, want NaN", s.NodeV[x.Index], s.NodeV[y.Index])
	}
	near(t, "dead node on the return", s.NodeV[dead.Index], 0, 0)
}

func TestWarmWires(t *testing.T) {
	b := solvetest.New()
	plus, end := b.Node("+"), b.Node("end")
	b.Battery(plus, 1e-6)
	w := b.Wire("W1", plus, end, 10, 1)
	w.Wire.EndsOhm, w.Ohm = 0.01, w.Ohm+0.01
	b.Resistor("R", end, b.Ground(), 5)
	s := solve.Solve(b.C, solvetest.Situation(0),
		solve.Options{WireTempC: func(*circuit.Wire) float64 { return 100 }, ContactFactor: 2})
	near(t, "warm", s.Ohm[w.Index], 0.17241*(1+0.00393*80)+0.02, 1e-12)
}
