package sizing

import (
	"fmt"
	"strings"
	"testing"
)

// TestBetterInsulation: where the design leaves it open and the place is hot, the wires get
// an insulation that costs less than the copper; beside an exhaust of 130 °C the one that
// stands it. What the design says stays.
func TestBetterInsulation(t *testing.T) {
	hot := func(ambientC int) string {
		return strings.Replace(single("off-road", "20 A", "constant power", 2), "far: {ambient: 35 °C}", fmt.Sprintf("far: {ambient: %d °C}", ambientC), 1)
	}
	class := "ISO 6722 thin wall class "
	for _, c := range []struct {
		name, src, want string
		most            float64
	}{
		{"warm", hot(70), "B", 10},
		{"at the edge", hot(75), "B", 10},
		{"hot", hot(85), "C", 6},
		{"hotter than the usual one stands", hot(100), "C", 6},
		{"beside an exhaust", exhaust, "D", 1.5},
		{"hot, and given", hot(85) + "wire: {insulation: " + class + "B}\n", "B", 25},
	} {
		d := read(t, c.src)
		for range 2 { // choosing again gives the same
			p, err := Complete(d)
			if err != nil {
				t.Fatal(err)
			}
			w := d.Loads[0].FedBy[0].Wire
			if w.Type.Name != class+c.want || w.Size.AreaMm2 > c.most || d.Loads[0].Returns[0].Wire.Type != w.Type {
				t.Errorf("%s: %s %s, want class %s, %g mm² at most", c.name, w.Size.Label, w.Type.Name, c.want, c.most)
			}
			if f := d.Fuses[0]; f.Type.Name != "blade C" && c.want != "B" {
				t.Errorf("%s: a fuse %s for the copper of another insulation", c.name, f.Type.Name)
			}
			said := false
			for _, x := range p.Choices {
				said = said || x.Usual != "" && x.Set[0] == Setting{"insulation", w.Type.Name}
			}
			if said != (c.want != "B") {
				t.Errorf("%s: insulation said %v", c.name, said)
			}
		}
	}
}

// TestRarelyOnTakesNoMoreCopper: a pump that is on for a second a week makes the cables to lamp
// and heater no thicker than one that runs all day, and what is chosen among insulations is
// not called proven.
func TestRarelyOnTakesNoMoreCopper(t *testing.T) {
	copperG := func(times string) float64 {
		p, err := Complete(read(t, `fusewright: 1
title: "a hot bay"
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 5 mΩ, at: bat}
charging: {regulated: 14.3 V, output: {800 rpm: 60 A, 3000 rpm: 90 A}, idle: 800 rpm, cruise: 3000 rpm, hot derating: 0 %}
places: {bat: {ambient: 60 °C}, mid: {ambient: 85 °C}, rear: {ambient: 40 °C}}
runs: [{from: bat, to: mid, length: 1.5 m, cover: auto}, {from: mid, to: rear, length: 4 m, cover: auto}]
taps: {sense: {at: bat, hot: key, fuse: 10 A, spare: 500 mA, supervised: no}}
fuses: {main: {at: bat, fed by: battery}}
relays: {r: {at: bat, fed by: main, coil: {fed by: sense, returns to: battery negative, suppressed by: resistor}}}
blocks: {bl: {at: mid, fed by: r, ways: {1: auto, 2: auto, 3: auto, 4: spare}}}
switches:
  s1: {rating: 40 A, at: rear, fed by: bl 1}
  s2: {rating: 40 A, at: rear, fed by: bl 2}
loads:
  lamp: {current: 8 A, at: rear, fed by: s1, returns to: battery negative}
  heater: {current: 14 A, behaves: resistor, at: rear, fed by: s2, returns to: battery negative}
  pump: {current: 6 A, behaves: motor,`+times+` at: mid, fed by: bl 3, returns to: battery negative}
situations:
  a: {engine: cruise, on: [lamp, pump]}
  b: {engine: cruise, on: [heater, pump]}
`))
		if err != nil {
			t.Fatal(err)
		}
		if p.Proven {
			t.Error("one insulation after another proves nothing")
		}
		return p.Cost.CopperG
	}
	always, rarely := copperG(""), copperG(" on for: 1 s, every: 7 days,")
	if rarely > always*1.01 {
		t.Errorf("%.0f g for a second a week, %.0f g for all day", rarely, always)
	}
}
