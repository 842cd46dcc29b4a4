package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/library"

	"github.com/google/go-cmp/cmp"
)

const start = "fusewright: 1\ntitle: t\nsystem: 12 V\npractice: motorcycle\n" +
	"places: {a: {}}\nbattery: {chemistry: AGM, capacity: 10 Ah, at: a}\ngrounds: {stud: {kind: frame stud, at: a}}\n"

// TestReferences names kinds by the letters of IEC 81346-2 (class table, two
// sources; see the library) and counts each letter in design order.
func TestReferences(t *testing.T) {
	c := build(t, "t.yaml", start+`
fuses:
  second: {type: blade C, rating: 5 A, at: a, fed by: battery}
  first: {type: blade C, rating: 5 A, at: a, fed by: battery}
relays:
  r: {form: mini make, at: a, fed by: first}
blocks:
  b: {at: a, fed by: first, way limit: 20 A, total limit: 40 A, ways: {1: {fuse: 5 A}, 2: {fuse: none}, 3: {fuse: 3 A}}}
splices: {s: {at: a, fed by: b 1}}
switches: {w: {rating: 5 A, at: a, fed by: s}}
loads:
  lamp: {power: 5 W, symbol: lamp, behaves: filament lamp, at: a, fed by: w, returns to: stud}
  pump: {power: 5 W, symbol: pump, behaves: motor, at: a, fed by: w, returns to: stud}
  winch: {power: 5 W, symbol: motor, behaves: motor, at: a, fed by: w, returns to: stud}
  horn: {power: 5 W, symbol: horn, behaves: resistor, at: a, fed by: w, returns to: stud}
  camera: {power: 5 W, symbol: electronics, behaves: constant power, at: a, fed by: w, returns to: stud}
  heat: {power: 5 W, symbol: heater, behaves: resistor, at: a, fed by: w, returns to: stud}
`)
	want := map[string]string{"battery": "G1", "second": "F1", "first": "F2", "r": "K1", "b": "X1", "w": "S1",
		"lamp": "E1", "heat": "E2", "pump": "M1", "winch": "M2", "horn": "P1", "camera": "A1", "stud": "X2", "s": "X3"}
	got := map[string]string{}
	for _, p := range c.Parts {
		got[p.Name] = p.Ref
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("references (-want +got):\n%s", diff)
	}
	ways := map[string]string{}
	for _, x := range named(t, c, "b").Terminals {
		ways[x.Name] = x.FuseRef
	}
	if diff := cmp.Diff(map[string]string{"in": "", "1": "F3", "2": "", "3": "F4"}, ways); diff != "" {
		t.Errorf("fuses of ways (-want +got):\n%s", diff)
	}
}

// TestTerminalNumbers checks the numbers of relays against DIN 72552.
func TestTerminalNumbers(t *testing.T) {
	tests := []struct{ form, want string }{
		{"mini make", "30 87 86 85"},
		{"mini changeover", "30 87 87a 86 85"},
	}
	for _, test := range tests {
		t.Run(test.form, func(t *testing.T) {
			c := build(t, "t.yaml", start+"relays: {r: {form: "+test.form+", at: a, fed by: battery}}\n")
			var got []string
			for _, x := range named(t, c, "r").Terminals {
				got = append(got, x.Name)
			}
			if strings.Join(got, " ") != test.want {
				t.Errorf("got %v, want %s", got, test.want)
			}
		})
	}
}

// TestWireNumbers follows the wires from the battery outward, a branch to its
// end before the next, returns last; and checks that a part added at the end
// leaves the numbers of feeds before it alone.
func TestWireNumbers(t *testing.T) {
	const parts = `
fuses:
  main: {type: blade C, rating: 5 A, at: a, fed by: battery}
switches:
  high: {rating: 5 A, at: a, fed by: main}
  low: {rating: 5 A, at: a, fed by: main}
  lost: {rating: 5 A, at: a}
loads:
  one: {power: 5 W, behaves: resistor, at: a, fed by: low, returns to: stud}
  two: {power: 5 W, behaves: resistor, at: a, fed by: high, returns to: stud}
  three: {power: 5 W, behaves: resistor, at: a, fed by: lost, returns to: stud}
`
	wires := func(src string) (out []string) {
		for _, w := range build(t, "t.yaml", start+src).Wires {
			out = append(out, w.Number+" "+w.From.Part.Name+">"+w.To.Part.Name)
		}
		return out
	}
	want := []string{"W1 battery>main", "W2 main>high", "W3 high>two", "W4 main>low", "W5 low>one",
		"W6 lost>three", "W7 one>stud", "W8 two>stud", "W9 three>stud"}
	got := wires(parts)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("wires (-want +got):\n%s", diff)
	}
	more := wires(parts + "  four: {power: 5 W, behaves: resistor, at: a, fed by: low, returns to: stud}\n")
	if diff := cmp.Diff(got[:5], more[:5]); diff != "" {
		t.Errorf("wires renumbered by a part at the end (-before +after):\n%s", diff)
	}
}

// TestBatteryResistance: the given one, or resistance times capacity of the
// chemistry (AGM 0.15 Ω·Ah per 12 V) over the capacity, by the system voltage.
func TestBatteryResistance(t *testing.T) {
	agm := library.Default().Chemistry("AGM").OhmAh
	tests := []struct {
		name, system, battery string
		want                  float64
	}{
		{"given", "12 V", "resistance: 7 mΩ, capacity: 10 Ah", 0.007},
		{"by capacity", "12 V", "capacity: 20 Ah", agm / 20},
		{"24 V: two in series", "24 V", "capacity: 20 Ah", 2 * agm / 20},
		{"lithium, a starter pack", "12 V", "chemistry: LiFePO4, capacity: 20 Ah", 0.06 / 20},
		{"lithium, below a house pack", "12 V", "chemistry: LiFePO4, capacity: 29 Ah", 0.06 / 29},
		{"lithium, the least with a board", "12 V", "chemistry: LiFePO4, capacity: 30 Ah", 0.06/30 + 0.002},
		{"lithium, 24 V", "24 V", "chemistry: LiFePO4, capacity: 100 Ah", 2 * (0.06/100 + 0.002)},
		{"6 V: half of one", "6 V", "capacity: 20 Ah", agm / 40},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			src := strings.Replace(start, "12 V", test.system, 1)
			if strings.Contains(test.battery, "chemistry") {
				src = strings.Replace(src, "chemistry: AGM, ", "", 1)
			}
			src = strings.Replace(src, "capacity: 10 Ah", test.battery, 1)
			c := build(t, "t.yaml", src)
			if b := c.Branches[0]; b.Kind != circuit.BatteryBranch || math.Abs(b.Ohm-test.want) > 1e-12 {
				t.Errorf("got %g Ω, want %g", b.Ohm, test.want)
			}
		})
	}
}
