package rules

import "testing"

// A cable to a starter needs no fuse from 10 mm² on.
func TestCrankingCircuitFromTenSquare(t *testing.T) {
	p := passOf(t, unfusedConductor, `
relays:
  starter relay: {form: winch contactor 12 V, at: battery tray, fed by: battery, wire: {size: 25 mm², length: 300 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  starter: {type: starter motorcycle, at: rear, fed by: starter relay, wire: {size: 25 mm²}, returns to: battery negative, return wire: {size: 25 mm²}}
`)
	w := part(t, p, "starter relay").Terminals[0].Wires[0]
	for area, want := range map[float64]bool{9.01: false, 9.99: false, 10: true, 10.9: true} {
		size := *w.Spec.Size
		size.AreaMm2 = area
		w.Spec.Size = &size
		if got := p.cranks(w); got != want {
			t.Errorf("%g mm²: a starter cable %t", area, got)
		}
	}
}
