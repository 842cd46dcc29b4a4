package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
)

// A bare feed beside a fused one reaches the fuse from its far end: a short before
// the fuse draws through it with no other in the way: some 1.5 kA through 2 mΩ of a 30 A fuse and 3 mΩ of wire, where one
// of 5 A and 15 mΩ lets only half a kiloampere pass.
func TestBareBesideFused(t *testing.T) {
	const design = `
battery: {chemistry: LiFePO4, capacity: 100 Ah, rate: 20 h, resistance: 2 mΩ, at: battery tray}
fuses:
  main fuse: {type: class T, rating: 60 A, at: battery tray, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: main fuse, wire: {size: 6 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: [%s], wire: {size: 16 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
`
	for feeds, want := range map[string]bool{"lamp fuse": false, "lamp fuse, battery": true} {
		found := false
		for _, f := range assess(t, "bare.yaml", []byte(example.Design(strings.Replace(design, "%s", feeds, 1)))) {
			found = found || f.Rule == "fuse-breaking-capacity" && f.Part == "lamp fuse"
		}
		if found != want {
			t.Errorf("fed by %s: a short at the lamp fuse is found: %t", feeds, found)
		}
	}
}
