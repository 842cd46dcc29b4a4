package circuit_test

import (
	"strings"
	"testing"
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

// The wire home of a block that only coils return to is as cool as a coil's own.
func TestLoadedWires(t *testing.T) {
	for _, want := range []struct {
		coils  string
		loaded int
	}{
		{"battery negative", 2},               // the relay's feed, the lamp block's wire home
		{"[lamp block, battery negative]", 3}, // in parallel with the lamp block's
	} {
		c := build(t, "bundle.yaml", strings.ReplaceAll(bundled, "COILS", want.coils))
		if got := c.Bundles[0].Loaded; got != want.loaded {
			t.Errorf("coils to %s: %d loaded wires, want %d", want.coils, got, want.loaded)
		}
	}
}
