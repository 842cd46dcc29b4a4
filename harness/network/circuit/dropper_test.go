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
// 12.8 V / 5 Ω = 2.56 A through it, which takes 5.12 V; the blower, a fan of 7.5 A with Ra = 12 V / 37.5 A = 0.32 Ω and
// E = 12 V − 2.4 V = 9.6 V: 2.4·y² + 9.6·y = 12.8, y = 1.0551, 8.35 A past its resistor of 0.6 Ω, and
// 6.9·y² + 9.6·y = 12.8, y = 0.8337, 5.21 A through it, which takes 3.13 V. Wires, contacts and the relay take 0.4 V at the most, 3 %,
// and a fan's current by them 5 %.
func TestCurrentsThroughResistors(t *testing.T) {
	c, s := twoSpeeds(t)
	for i, want := range [][4]float64{{0, 0, 4.27, 8.35}, {3.13, 5.12, 2.56, 5.214}} {
		sol := solve.Solve(c, s[i], solve.Options{BatteryV: 12.8, BatteryOhm: 1e-6, NoCharging: true})
		blower, pad := branch(t, c, "M1"), branch(t, c, "E1")
		for k, got := range []float64{sol.HeldV(blower), sol.HeldV(pad), sol.Amps(pad), sol.Amps(blower)} {
			if got < 0.95*want[k] || got > want[k]*1.001+1e-6 {
				t.Errorf("%s: %.3f, by hand %.2f at the most", s[i].Name, got, want[k])
			}
		}
		if a := sol.Amps(blower); math.Abs(0.32*a+9.6*math.Sqrt(a/7.5)-sol.LoadV(blower)) > 1e-6 || sol.LostV(pad) > 0.4 || sol.LostV(blower) > 0.4 {
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

// A fan of 90 W at 12 V: 7.5 A, standing 5 × 7.5 = 37.5 A, so Ra = 0.32 Ω and E = 12 − 2.4 = 9.6 V. At its rated volts it
// draws as rated; at 6 V 2.4·y² + 9.6·y = 6, y = 0.5495, 2.265 A; at 14 V y = 1.1358, 9.676 A; the slope is
// 2·7.5·y/(9.6 + 4.8·y), at 12 V 15/14.4. One that stands at its rated current has no volts left for turning: y² = V/12.
func TestFanByHand(t *testing.T) {
	for _, c := range [][4]float64{{12, 0.32, 7.5, 15 / 14.4}, {6, 0.32, 2.2647, 0.6735}, {14, 0.32, 9.6755, 1.1319}, {0, 0.32, 0, 0},
		{3, 1.6, 1.875, 0.625}} {
		a, g := circuit.FanA(c[0], 7.5, 12, c[1])
		if math.Abs(a-c[2]) > 1e-4 || math.Abs(g-c[3]) > 1e-4 {
			t.Errorf("%g V, %g Ω: %.5f A and %.5f S, by hand %g and %g", c[0], c[1], a, g, c[2], c[3])
		}
	}
}

// A motor is a fan where a resistor stands before or behind it, always or in a position, whatever else hangs there; one that a resistor
// passes by is none, nor a horn, nor what is no motor, nor what pulls the same at any speed: on for a time at once, made to turn either way, a starter.
func TestFansByTheirPlace(t *testing.T) {
	c := build(t, "fans.yaml", start+`
fuses: {f: {type: blade C, rating: 15 A, at: a, fed by: battery}}
switches:
  speed: {at: a, fed by: f, positions: [off, low, high]}
resistors:
  r: {resistance: 1 Ω, rating: 50 W, at: a, fed by: speed low}
  back r: {resistance: 1 Ω, rating: 50 W, at: a, returns to: stud}
loads:
  blower: {power: 60 W, behaves: motor, inrush: {peak: 6, time: 100 ms}, at: a, fed by: [speed high, r], returns to: stud}
  second: {power: 30 W, behaves: motor, at: a, fed by: r, returns to: stud}
  lamp: {power: 5 W, behaves: filament lamp, at: a, fed by: r, returns to: stud}
  back: {power: 30 W, behaves: motor, at: a, fed by: f, returns to: back r}
  free: {power: 30 W, behaves: motor, at: a, fed by: f, returns to: stud}
  horn: {power: 30 W, behaves: motor, symbol: horn, at: a, fed by: r, returns to: stud}
  timed: {power: 30 W, behaves: motor, on for: 1 min, at: a, fed by: r, returns to: stud}
  share: {power: 30 W, behaves: motor, duty: 50 %, at: a, fed by: r, returns to: stud}
  anchor: {type: windlass, on for: 3 min, at: a, fed by: r, returns to: stud}
  cranks: {type: starter quad, at: a, fed by: r, returns to: stud}
  first: {power: 20 W, rated at: 6 V, behaves: motor, at: a, fed by: r}
  last: {power: 20 W, rated at: 6 V, behaves: motor, at: a, in series with: first, returns to: stud}
  heater: {power: 20 W, rated at: 6 V, behaves: resistor, at: a, fed by: f}
  held: {power: 20 W, rated at: 6 V, behaves: motor, at: a, in series with: heater, returns to: back r}
`)
	for name, want := range map[string]float64{"blower": 6, "second": 5, "lamp": 0, "back": 5, "free": 0, "horn": 0,
		"timed": 0, "share": 5, "anchor": 0, "cranks": 0, "first": 5, "last": 5, "heater": 0, "held": 5} {
		if got := named(t, c, name).Branches[0].Load.FanStall; got != want {
			t.Errorf("%s: as a fan %g times when it stands, want %g", name, got, want)
		}
	}
}
