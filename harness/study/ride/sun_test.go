package ride_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/ride"
)

// sunny is two batteries with 4 h of sun a day, at half of the panels' power: 8 h long.
func sunny(chemistry, charge, legs string) string {
	return strings.Replace(fmt.Sprintf(two, chemistry, "[booster, roof]", booster, charge, legs), "sun: 50 %", "sun: 50 %, sun hours: 4 h", 1)
}

// TestSunOfADay: 8 h in the middle of 24 h, a third of what is shorter, and what panels give in all is that of the sun
// hours however long the leg.
func TestSunOfADay(t *testing.T) {
	for lasts, want := range map[float64][][2]float64{
		3: {{1, 2}}, 12: {{4, 8}}, 24: {{8, 16}}, 30: {{8, 16}, {26, 28}}, 48: {{8, 16}, {32, 40}},
	} {
		r := simulate(t, build(t, sunny("LiFePO4", "50 %", fmt.Sprintf("{lasts: 1 h, key: off}, {lasts: %g h, situation: sunny}", lasts))), ride.Options{Tolerance: ride.Coarse})
		got := r.Legs[1].Sun
		if len(got) != len(want) {
			t.Fatalf("%g h: %v", lasts, got)
		}
		lit := 0.0
		for i, x := range got {
			near(t, fmt.Sprintf("%g h: from", lasts), x.FromS/3600, 1+want[i][0], 1e-9)
			near(t, fmt.Sprintf("%g h: to", lasts), x.ToS/3600, 1+want[i][1], 1e-9)
			lit += x.ToS - x.FromS
		}
		near(t, fmt.Sprintf("%g h: at half of the power", lasts), 0.5*lit/3600, lasts*4/24, 1e-9)
	}
}

// TestNightAndDay by hand: 48 W at 13.2 V are 3.64 A, of which 16 h of night take 58.2 Ah; 94 W less 48 W put 3.45 A in
// for 8 h, 27.6 Ah. Below 0 °C they put nothing in, and the sun feeds what is on. A battery nearly full takes less.
func TestNightAndDay(t *testing.T) {
	for _, c := range []struct {
		ambient, charge string
		taken, given    float64
		coldH           float64
	}{
		{"25 °C", "90 %", 58.2, 27.6, 0},
		{"0 °C", "90 %", 58.2, 27.6, 0},
		{"-0.1 °C", "90 %", 58.2, 0, 8},
		{"-5 °C", "90 %", 58.2, 0, 8},
	} {
		r := simulate(t, build(t, sunny("LiFePO4", c.charge, "{lasts: 24 h, situation: sunny, ambient: "+c.ambient+"}")), ride.Options{})
		l := r.Legs[0].Banks[0]
		near(t, c.ambient+": taken at night", l.TakenAh, c.taken, 1)
		near(t, c.ambient+": given by day", l.GivenAh, c.given, 0.8)
		near(t, c.ambient+": too cold, hours", l.ColdS/3600, c.coldH, 0.02)
		for _, p := range r.Points {
			if at := p.TimeS / 3600; p.Banks[0].A > 0 != (at < 8 || at > 16) && min(math.Abs(at-8), math.Abs(at-16)) > 1e-6 {
				t.Errorf("%s: %.2f A at %.2f h", c.ambient, p.Banks[0].A, at)
			}
		}
	}
	full := simulate(t, build(t, sunny("AGM", "100 %", "{lasts: 3 h, situation: sunny}")), ride.Options{}).Legs[0].Banks[0]
	if full.GivenAh >= full.TakenAh/2 {
		t.Errorf("a full lead battery is given %g of %g Ah within an hour", full.GivenAh, full.TakenAh)
	}
}

// TestDaysAgreeWithTheBudget: what a day of sun and a night leave is the same by the budget as by the ride, to the volts
// that fall under way: those of lead from 12.8 to 12.3 V, 4 % of the 58 Ah of a night.
func TestDaysAgreeWithTheBudget(t *testing.T) {
	for _, chemistry := range []string{"LiFePO4", "AGM"} {
		c := build(t, sunny(chemistry, "90 %", "{lasts: 24 h, situation: sunny}"))
		b := budget.Compute(c, solve.All(c, solve.Options{}))
		r := simulate(t, c, ride.Options{})
		for _, l := range b.KeyOff {
			if l.Situation.Name == "sunny" {
				near(t, chemistry+": out of it in a day", 100*(0.9-r.Banks[0].EndCharge), 24*l.Banks[0].A, 0.04*58)
				if math.IsInf(l.Banks[0].Hours, 1) {
					t.Error(chemistry, "lasts for ever")
				}
			}
		}
	}
}

// TestColdBehindAnOpenLink: a battery that refuses charge and stands alone behind a sensing relay rests, and gives what is
// drawn from it, in the cold as in mild air.
func TestColdBehindAnOpenLink(t *testing.T) {
	for _, ambient := range []string{"-15 °C", "-0.1 °C", "0 °C", "1 °C"} {
		for _, charge := range []string{"20 %", "35 %", "40 %", "55 %", "70 %"} {
			legs := strings.ReplaceAll("{lasts: 10 h, key: off, A}, {lasts: 1 h, key: off, on: [cabin], A}, {lasts: 10 min, engine: cruise, A}", "A", "ambient: "+ambient)
			r := twice(t, "LiFePO4", "link", relay, charge, legs, ride.Options{})
			for i, l := range r.Legs {
				if l.Trouble != "" {
					t.Errorf("%s, %s, leg %d: %s", ambient, charge, i+1, l.Trouble)
				}
			}
			if charge == "70 %" {
				near(t, ambient+": taken", r.Legs[1].Banks[0].TakenAh, 48/13.2, 0.1)
			}
		}
	}
}
