package sizing

import (
	"fmt"
	"maps"
	"strings"
	"testing"
)

// TestBeyondCopper: a load whose voltage the battery takes while a winch pulls gets the
// wires and the plug that it would have without a least voltage; that it gets too little
// stays said.
func TestBeyondCopper(t *testing.T) {
	src := `fusewright: 1
title: beyond
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 14 Ah, resistance: 11 mΩ, at: tray}
charging: {regulated: 14.2 V, output: {1300 rpm: 16 A, 4000 rpm: 31 A}, idle: 1300 rpm, cruise: 4000 rpm}
places: {tray: {ambient: 35 °C}, far: {ambient: 35 °C}}
runs: [{from: tray, to: far, length: 2 m}]
fuses:
  f: {at: tray, fed by: battery, stays live: "test", wire: {length: 120 mm}}
  w: {type: strip SF51, rating: 200 A, at: tray, fed by: battery, stays live: "test", wire: {length: 120 mm, size: 50 mm²}}
loads:
  fridge: {power: 45 W, behaves: constant power, minimum voltage: %s, plug: auto, at: far, stays live: "test", fed by: f, returns to: battery negative}
  winch: {current: 150 A, behaves: motor, at: tray, own switch: yes, stays live: "test", fed by: w, wire: {length: 300 mm, size: 50 mm²}, returns to: battery negative, return wire: {length: 300 mm, size: 50 mm²}}
`
	var came [2]string
	for i, least := range []string{"5 V", "10.4 V"} {
		p, err := Complete(read(t, fmt.Sprintf(src, least)))
		if err != nil {
			t.Fatal(err)
		}
		came[i] = strings.Join(labels(p.s, p.s.best), "; ")
		said := len(p.Remaining) > 0 && p.Remaining[0].Rule == "load-undervoltage"
		if said != (i == 1) {
			t.Errorf("%s: remaining %v", least, p.Remaining)
		}
	}
	p, err := Complete(read(t, fmt.Sprintf(src, "10.4 V")))
	if err != nil {
		t.Fatal(err)
	}
	wantWays(t, p, "a battery of half the internal resistance")
	if came[0] != came[1] {
		t.Errorf("needs 5 V: %s\nneeds 10.4 V: %s", came[0], came[1])
	}
}

// wantWays explains a plan and looks for ways out that were tried, in this order.
func wantWays(t *testing.T, p *Plan, ways ...string) {
	t.Helper()
	before := everything(p.Design)
	if err := p.Explain(); err != nil {
		t.Fatal(err)
	}
	var said []string
	for _, o := range p.WaysOut {
		said = append(said, fmt.Sprintf("%s, %d left", o.What, o.Left))
		if len(ways) > 0 && strings.HasPrefix(o.What, ways[0]) {
			ways = ways[1:]
		}
	}
	if len(ways) > 0 {
		t.Errorf("no way out %q in its place:\n%s", ways[0], strings.Join(said, "\n"))
	}
	if !maps.Equal(everything(p.Design), before) {
		t.Error("explaining changed the choices")
	}
}

// TestContactsTakeTheVolts: a strong load behind two fuses and two relays; what would mend
// it was tried, what it asks for is given up last of those that leave as much.
func TestContactsTakeTheVolts(t *testing.T) {
	p, err := Complete(read(t, bench(`
places: {tray: {ambient: 40 °C}, roof: {ambient: 40 °C}}
runs: [{from: tray, to: roof, length: 2 m}]
fuses:
  main: {at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}
  f: {at: tray, fed by: keyed, wire: {length: 100 mm}}
  pilot: {at: tray, fed by: battery, wire: {length: 100 mm}, stays live: "test"}
relays:
  keyed: {at: tray, fed by: main, wire: {length: 100 mm}, coil: {fed by: pilot, returns to: battery negative, suppressed by: resistor}}
  own: {at: tray, fed by: f, wire: {length: 100 mm}, coil: {fed by: pilot, returns to: battery negative, suppressed by: resistor}}
loads:
  radio: {current: 26 A, behaves: constant power, critical: yes, at: roof, fed by: own, plug: auto, returns to: battery negative}
`)))
	if err != nil {
		t.Fatal(err)
	}
	wantWays(t, p, "one relay less: what own feeds straight from f", "shorten the runs", "radio of half the power")
}
