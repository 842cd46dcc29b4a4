package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

// The machine should start after 14 days, and must after those that the design gives.
func TestStandbyDaysAtTheEdge(t *testing.T) {
	p := passOf(t, standbyDrain, "")
	drainFor := func(days float64) float64 { // by halving
		low, high := 0.0, 10.0
		for range 100 {
			mid := (low + high) / 2
			if budget.StandbyDays(p.d, mid) > days {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	for days, want := range map[float64]finding.Severity{13.9: finding.Advice, 14.1: none, 14.9: none, 30: none} {
		p.in.Budget.StandbyA = drainFor(days) + p.reportedDrainA()
		says(t, fmt.Sprintf("%g days", days), p.run(), want)
	}
	drain := drainFor(20)
	p.in.Budget.StandbyA = drain + p.reportedDrainA()
	p.d.Limits.StandbyDays = design.Quantity{Value: budget.StandbyDays(p.d, p.in.Budget.StandbyA-p.reportedDrainA()), Text: "given"}
	says(t, "exactly the days asked for", p.run(), none)
	p.d.Limits.StandbyDays.Value += 0.01
	says(t, "a little less than asked for", p.run(), finding.Fault)
}

// A situation that is not short is no deficit; below cruising speed one that
// breaks even up to it is advice.
func TestDeficitAtTheEdges(t *testing.T) {
	p := passOf(t, chargingDeficit, "")
	cruise := p.d.Charging.CruiseRPM.Value
	for _, c := range []struct {
		name                   string
		rpm, even, over, gives float64
		want                   finding.Severity
	}{
		{"nothing to spare", cruise - 500, cruise, 0, 0, none},
		{"nothing to spare, and the battery gives", cruise - 500, cruise - 600, 0, 0.01, finding.Advice}, {"short below cruise", cruise - 500, cruise, 1, 1, finding.Advice},
		{"even above cruise", cruise - 500, cruise + 1, 1, 1, finding.Fault}, {"at cruise", cruise, cruise, 1, 0, finding.Fault},
		{"at no speed", cruise - 500, math.NaN(), 1, 1, finding.Fault},
	} {
		p.in.Budget.Lines = []*budget.Line{{Situation: &design.Situation{Name: "s", EngineRPM: c.rpm}, Usable: true, SpareA: -c.over,
			BatteryA: c.gives, BreakEvenRPM: c.even, BatteryHours: 1}}
		says(t, c.name, p.run(), c.want)
	}
}

// The nominal demand is covered: what only the likely one exceeds is advice, and so
// is less to spare than the design asks for. 2 A are given by the limits.
func TestSpareAtTheEdges(t *testing.T) {
	p := passOf(t, chargingDeficit, "limits: {spare: 2 A}\n")
	for _, c := range []struct {
		name          string
		spare, likely float64 // of 10 A
		want          finding.Severity
		says          string
	}{
		{"ample", 3, 8, none, ""}, {"as asked for", 2, 10, none, ""},
		{"below what is asked for", 1.99, 10, finding.Advice, "1.99 A to spare, and the design asks for 2.00 A"},
		{"likely more than there is", 3, 10.01, finding.Advice, "likely to reach 10.0 A, 10 mA short"},
		{"short at nominal", -0.01, 11, finding.Fault, "10 mA short"},
	} {
		p.in.Budget.Lines = []*budget.Line{{Situation: &design.Situation{Name: "s", EngineRPM: 9000}, Usable: true, SpareA: c.spare,
			OutputA: 10, LikelyA: c.likely, BatteryA: -1, BreakEvenRPM: 1000, BatteryHours: 1}}
		found := p.run()
		says(t, c.name, found, c.want)
		if len(found) > 0 && !strings.Contains(found[0].What, c.says) {
			t.Errorf("%s: %s, want %q", c.name, found[0].What, c.says)
		}
	}
}

// A start of 120 A for 10 s asks AGM for 0.370 Ah back. The machine takes 90 W at
// 14.3 V, 6.29 A, and the tail lamp 0.50 A, of 14 A at idle: 7.21 A are 0.370 Ah in
// 185 s.
func TestRideGivesTheStartBack(t *testing.T) {
	for legs, want := range map[string]finding.Severity{
		"{lasts: 180 s, engine: idle, on: none}": finding.Advice,
		"{lasts: 190 s, engine: idle, on: none}": none,
		"{lasts: 190 s, engine: idle, on: none}, {lasts: 5 min, on: none}, {lasts: 10 s, engine: idle, on: none}":  finding.Advice,
		"{lasts: 190 s, engine: idle, on: none}, {lasts: 5 min, on: none}, {lasts: 4 min, engine: idle, on: none}": none,
		"{lasts: 1 h, on: none}": none, // no start
	} {
		p := passOf(t, chargingDeficit, "rides: {short: {legs: ["+legs+"]}}\n")
		p.in.Budget.Lines = nil
		says(t, legs, p.run(), want)
	}
}

// A heater of 20 W left on unseen is a hazard, a motor always.
func TestRunsUnseenAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		behaves design.Behaviour
		watts   float64
		want    bool
	}{{design.Resistor, 19.9, false}, {design.Resistor, 20, true}, {design.Motor, 1, true}, {design.ConstantPower, 100, false}} {
		l := &design.Load{Behaves: c.behaves, PowerW: c.watts}
		b := &circuit.Branch{Load: &circuit.LoadSpec{Load: l, Behaves: c.behaves}, Part: &circuit.Part{Kind: circuit.Load, Source: l}}
		if got := runsUnseen(b); got != c.want {
			t.Errorf("%s of %g W: %t", c.behaves, c.watts, got)
		}
	}
}
