package circuit_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Of positions that give a load through a resistor and past it, the one past it is taken, and the other
// is looked at beside the design's situations.
func TestPositionsPastResistors(t *testing.T) {
	c, s := twoSpeeds(t)
	speed, pad := c.Design.Switches[0], c.Design.Switches[1]
	for i, want := range [][2]string{{"high", "high"}, {"low", "low"}, {"off", "off"}} {
		if at, unmet := circuit.Positions(c, s[i]); at[speed] != want[0] || at[pad] != want[1] || unmet != nil {
			t.Errorf("%s: speed at %s, pad at %s, unmet %v", s[i].Name, at[speed], at[pad], unmet)
		}
	}
	var alone []string
	for _, x := range c.Alone() {
		alone = append(alone, x.Name)
	}
	want := "fast, blower with speed at low; fast, seat pad with pad at low"
	if got := strings.Join(alone, "; "); got != want {
		t.Errorf("beside the situations: %s\nwant %s", got, want)
	}
	s[0].Set = []design.Setting{{Switch: speed, Position: "high"}} // as the situation says, and the name says that it is another
	if got, want := c.Alone()[0].Name, "fast, blower with speed at low in place of high"; got != want {
		t.Errorf("beside a situation that says the position: %s, want %s", got, want)
	}
}

// At 12.8 V: the pad of 48 W at 12 V has 3 Ω, so that it takes 12.8 V / 3 Ω = 4.27 A past its resistor of 2 Ω and
// 12.8 V / 5 Ω = 2.56 A through it, which takes 5.12 V; the blower, a motor, takes 7.5 A in both, and its resistor of 0.6 Ω
// 4.5 V. Wires, contacts and the relay take 0.4 V at the most, 3 %.
func TestCurrentsThroughResistors(t *testing.T) {
	c, s := twoSpeeds(t)
	for i, want := range [][3]float64{{0, 0, 4.27}, {4.5, 5.12, 2.56}} {
		sol := solve.Solve(c, s[i], solve.Options{BatteryV: 12.8, BatteryOhm: 1e-6, NoCharging: true})
		blower, pad := branch(t, c, "M1"), branch(t, c, "E1")
		for k, got := range []float64{sol.HeldV(blower), sol.HeldV(pad), sol.Amps(pad)} {
			if got < 0.96*want[k] || got > want[k]*1.001+1e-6 {
				t.Errorf("%s: %.3f, by hand %.2f at the most", s[i].Name, got, want[k])
			}
		}
		if a := sol.Amps(blower); math.Abs(a-7.5) > 1e-6 || sol.LostV(pad) > 0.4 || sol.LostV(blower) > 0.4 {
			t.Errorf("%s: the blower takes %.3f A; lost before it %.3f V, before the pad %.3f V", s[i].Name, a, sol.LostV(blower), sol.LostV(pad))
		}
	}
}

func twoSpeeds(t *testing.T) (*circuit.Circuit, []*design.Situation) {
	src, err := os.ReadFile("../../../testdata/rules/ok/two-speeds.yaml")
	if err != nil {
		t.Fatal(err)
	}
	c := build(t, "two-speeds.yaml", string(src))
	return c, c.Design.Situations
}
