package sizing

import (
	"strings"
	"testing"
)

// inVapour is a fuse at a battery in petrol vapour and a blower with a plug in it.
const inVapour = `fusewright: 1
title: "in petrol vapour"
system: 12 V
practice: marine
battery: {chemistry: AGM, capacity: 95 Ah, resistance: 3 mΩ, at: box}
charging: {regulated: 14.3 V, output: {800 rpm: 40 A, 3000 rpm: 90 A}, idle: 800 rpm, cruise: 2600 rpm}
places:
  box: {ambient: 40 °C, petrol vapour: yes}
  engine space: {ambient: 40 °C, petrol vapour: yes}
runs:
  - {from: box, to: engine space, length: 2 m}
fuses:
  f: {at: box, fed by: battery, stays live: "test", wire: {length: 150 mm}}
loads:
  l: {DRAW, behaves: motor, plug: auto, at: engine space, fed by: f, returns to: battery negative, ignition protected: yes, stays live: "test"}
`

// TestSparksInVapour: in petrol vapour plugs are sealed, and fuses ignition protected where one of
// the library, of 30 A at least, is not for many times what the load needs; said by the part
// itself, or without vapour, the usual kinds stay.
func TestSparksInVapour(t *testing.T) {
	for _, c := range []struct {
		name, draw, from, to string
		kind                 string
		sealed, lacking      bool
	}{
		{"a pump", "current: 12 A", " °C, petrol", " °C, wet: yes, petrol", "battery post fuse", true, false},
		{"a blower", "current: 10 A", "none", "none", "battery post fuse", true, false},
		{"a lamp", "current: 1 A", "none", "none", "blade C", true, true},
		{"the fuse is protected", "current: 10 A", `f: {at: box`, `f: {ignition protected: yes, at: box`, "blade C", true, false},
		{"no vapour", "current: 10 A", "petrol vapour: yes", "petrol vapour: no", "blade C", false, false},
	} {
		src := strings.NewReplacer(c.from, c.to, "DRAW", c.draw).Replace(inVapour)
		p, err := Complete(read(t, src))
		if err != nil {
			t.Fatal(err)
		}
		if err := p.Explain(); err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Remaining {
			t.Errorf("%s: %s", c.name, f.What)
		}
		if kind := p.Design.Fuses[0].Type.Name; kind != c.kind {
			t.Errorf("%s: fuse %s, want %s", c.name, kind, c.kind)
		}
		if plug := p.Design.Loads[0].Plug; plug != nil && plug.Sealed != c.sealed {
			t.Errorf("%s: plug %s", c.name, plug.Name)
		}
		if said := strings.Contains(strings.Join(p.Lacking, "\n"), "no ignition protected fuse in the library suits f"); said != c.lacking {
			t.Errorf("%s: lacking %q", c.name, p.Lacking)
		}
	}
}
