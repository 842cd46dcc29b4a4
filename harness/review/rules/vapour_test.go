package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// What may spark in normal use where petrol vapour can gather is a danger, what nothing
// speaks of advice, what the design or the library calls ignition protected nothing.
func TestSparksInVapour(t *testing.T) {
	const places = "places:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, petrol vapour: yes}\n"
	const wired = "at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}"
	load := func(says string) string { return "loads:\n  thing: {" + says + ", " + wired + "}\n" }
	for _, c := range []struct {
		name, section string
		want          finding.Severity
	}{
		{"a lamp", load("type: LED interior lamp"), 0},
		{"a lamp with a switch of its own", load("type: LED interior lamp, own switch: yes"), finding.Danger},
		{"said to be protected", load("type: LED interior lamp, own switch: yes, ignition protected: yes"), 0},
		{"a pump with a switch of its own", load("type: fresh water pump, own switch: yes"), finding.Danger},
		{"a protected pump with its own float switch", load("type: bilge pump, own switch: yes"), 0},
		{"a pump", load("type: fresh water pump"), finding.Advice},
		{"a pump said to be protected", load("type: fresh water pump, ignition protected: yes"), 0},
		{"a socket", load("type: accessory socket, power: 20 W"), finding.Danger},
		{"a protected socket", load("type: accessory socket, power: 20 W, ignition protected: yes"), finding.Advice},
		{"a charging socket", load("type: USB charger"), finding.Danger},
		{"an inverter", load("type: inverter, power: 30 W"), finding.Advice},
		{"a converter without a type", load("power: 30 W"), finding.Advice},
		{"a heater", load("power: 30 W, behaves: resistor"), 0},
		{"a plug that is not sealed", load("type: LED interior lamp, plug: open 6.3"), finding.Danger},
		{"a sealed plug", load("type: LED interior lamp, plug: sealed 1.5"), 0},
		{"a protected lamp on an open plug", load("type: LED interior lamp, ignition protected: yes, plug: open 6.3"), finding.Danger},
	} {
		if got := gravest(t, places+c.section, "spark-in-vapour"); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A boat with a place where petrol vapour is likely is asked once; one where each such
// place says yes or no itself is not, nor one with a diesel or an outboard and no tank aboard.
func TestVapourIsAskedOnce(t *testing.T) {
	places := func(rear string) string {
		return "places:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C}\n" + rear
	}
	for _, c := range []struct {
		name, vehicle, practice, rear string
		want                          int
	}{
		{"an engine space and a bilge", "invented launch", "marine", "  engine space: {ambient: 50 °C}\n  bilge: {ambient: 30 °C}\n", 1},
		{"no", "invented launch", "marine", "  engine space: {ambient: 50 °C, petrol vapour: no}\n", 0},
		{"yes", "invented launch", "marine", "  engine space: {ambient: 50 °C, petrol vapour: yes}\n", 0},
		{"no of another place", "invented launch", "marine", "  engine space: {ambient: 50 °C}\n  helm: {ambient: 30 °C, petrol vapour: no}\n", 1},
		{"yes of one of two", "invented launch", "marine", "  engine space: {ambient: 50 °C, petrol vapour: yes}\n  bilge: {ambient: 30 °C}\n", 1},
		{"each answered", "invented petrol launch", "marine", "  engine space: {ambient: 50 °C, petrol vapour: yes}\n  bilge: {ambient: 30 °C, petrol vapour: no}\n", 0},
		{"no such place", "invented dinghy", "marine", "", 0},
		{"petrol without such a place", "invented petrol cruiser", "marine", "", 1},
		{"a diesel", "invented launch with a diesel", "marine", "  engine space: {ambient: 50 °C}\n", 0},
		{"a diesel with a petrol tank", "invented launch with a diesel", "marine", "  petrol locker: {ambient: 30 °C}\n", 1},
		{"an outboard", "invented petrol outboard skiff", "marine", "  bilge: {ambient: 30 °C}\n", 0},
		{"an outboard with a tank inside", "invented outboard skiff", "marine", "  tank space: {ambient: 30 °C}\n", 1},
		{"a motorcycle", "invented petrol motorcycle", "motorcycle", "  engine space: {ambient: 50 °C}\n", 0},
	} {
		asked := 0
		for _, f := range assess(t, "boat.yaml", []byte(example.Design("vehicle: "+c.vehicle+"\npractice: "+c.practice+"\n"+places(c.rear)))) {
			if f.Rule == "data-missing" && f.Source == "33 CFR 183.410(a): a part near petrol must not light a mixture of propane and air (two sources)" {
				asked++
			}
		}
		if asked != c.want {
			t.Errorf("%s: asked %d times, want %d", c.name, asked, c.want)
		}
	}
}

// A petrol boat's fuel pump must not run on battery switches alone.
func TestFuelPumpStopsWithTheEngine(t *testing.T) {
	const text = `
vehicle: VEHICLE
practice: PRACTICE
fuses:
  main: {type: blade C, rating: 15 A, at: battery tray, fed by: battery}
switches:
  house: {type: battery switch 100 A, at: battery tray, fed by: main, stays live: "turns the boat off"}
  key: {type: key switch 10 A, at: rear, fed by: house}
loads:
  pump: {type: TYPE, at: rear, fed by: FEED, returns to: battery negative}
`
	for _, c := range []struct {
		vehicle, practice, of, feed string
		want                        bool
	}{
		{"invented petrol launch", "marine", "fuel pump", "house", true},
		{"invented launch", "marine", "fuel pump", "house", true},
		{"invented petrol launch", "marine", "fuel pump", "key", false},
		{"invented petrol launch", "marine", "fuel pump", "keyed feed", false},
		{"invented petrol launch", "marine", "fuel pump, own switch: yes", "house", false},
		{"invented petrol launch", "marine", "fuel pump, stays live: x", "house", false},
		{"invented petrol launch", "marine", "fresh water pump", "house", false},
		{"invented diesel launch", "marine", "fuel pump", "house", false},
		{"invented petrol quad", "off-road", "fuel pump", "house", false},
	} {
		src := strings.NewReplacer("VEHICLE", c.vehicle, "PRACTICE", c.practice, "TYPE", c.of, "FEED", c.feed).Replace(text)
		got := false
		for _, f := range assess(t, "boat.yaml", []byte(example.Design(src))) {
			got = got || f.Rule == "live-with-key-off" && f.Part == "pump" && f.Severity == finding.Fault
		}
		if got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
