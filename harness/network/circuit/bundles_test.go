package circuit_test

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
)

const bundled = `fusewright: 1
title: bundle
vehicle: invented
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 40 °C}, nose: {ambient: 40 °C}}
runs: [{from: tray, to: nose, length: 1 m}]
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  main: {type: blade C, rating: 10 A, at: tray, fed by: battery, wire: {length: 100 mm}}
relays:
  relay: {form: mini make, at: nose, fed by: main, coil: {fed by: main, returns to: coil block}}
loads:
  lamp: {type: halogen lamp 35 W, at: nose, fed by: relay, returns to: lamp block}
grounds:
  coil block: {kind: ground block, at: nose, returns to: COILS}
  lamp block: {kind: ground block, at: nose, returns to: battery negative}
`

// Wires of coils carry current too, but weigh by their heat, and are not counted among
// the loaded ones. The lamp's feed may carry what it may with its return, 0.81 beside
// coils that carry next to nothing (package bundle gives two alike 0.81); the curve of AC
// 43.13-1B would leave four wires 0.9075 and three 0.935 at this load.
func TestLoadedWires(t *testing.T) {
	for _, want := range []struct {
		coils  string
		loaded int
		share  float64
	}{
		{"battery negative", 2, 0.81},               // to the contact and the coil, and home from each
		{"[lamp block, battery negative]", 2, 0.81}, // home from both by the nearer way
	} {
		c := build(t, "bundle.yaml", strings.ReplaceAll(bundled, "COILS", want.coils))
		b := c.Bundles[0]
		if b.Loaded != want.loaded {
			t.Errorf("coils to %s: %d loaded wires, want %d", want.coils, b.Loaded, want.loaded)
		}
		for _, w := range b.Wires {
			if w.Role == circuit.FeedWire && math.Abs(b.BesideOf(w).Share-want.share) > 6e-3 {
				t.Errorf("coils to %s: %s keeps %g, want %g", want.coils, w.Text(), b.BesideOf(w).Share, want.share)
			}
		}
	}
}
