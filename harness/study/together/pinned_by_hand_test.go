package together_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/library"
)

// A relay's coil counts with the machine; an accessory that nothing feeds counts
// as rated: 28 W at 14 V half of the time are 1 A.
func TestCoilsAndUnfedByHand(t *testing.T) {
	src := strings.Replace(byHand, "\nloads:\n", `
relays:
  r: {form: mini make, fed by: f, wire: {length: 20 mm}, coil: {fed by: f, returns to: battery negative, suppressed by: diode, wire: {length: 20 mm}, return wire: {length: 20 mm}}}
splices:
  lost: {}
loads:
  horn: {power: 28 W, rated at: 14 V, behaves: constant power, duty: 50 %, fed by: lost, wire: {length: 20 mm}, returns to: battery negative, return wire: {length: 20 mm}}
`, 1)
	p, _ := plan(t, []byte(src))
	coil := 14 / library.Default().RelayForm("mini make").CoilOhm
	for _, c := range p.Choices {
		if math.Abs(c.BaseA-8-coil) > 0.01 || math.Abs(c.OutputA-c.BaseA-c.CapacityA) > 1e-12 {
			t.Errorf("%s: %g A of %g A taken, %g A left; want 8 A and the coil's %g A", c.Name, c.BaseA, c.OutputA, c.CapacityA, coil)
		}
	}
	found := false
	for _, it := range p.Items {
		if it.Name == "horn" {
			found = true
			if math.Abs(it.CurrentA-1) > 1e-9 {
				t.Errorf("the horn counts with %g A, want 1 A", it.CurrentA)
			}
		}
	}
	if !found {
		t.Error("no horn")
	}
}
