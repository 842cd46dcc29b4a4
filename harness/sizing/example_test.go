package sizing_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/sizing"
)

// A lamp whose wire and fuse are left open.
func ExampleComplete() {
	d, err := design.Read("example.yaml", []byte(`fusewright: 1
title: example
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
charging: {regulated: 14.2 V, output: {1300 rpm: 14 A, 4000 rpm: 26 A}, idle: 1300 rpm, cruise: 4000 rpm}
places: {tray: {ambient: 40 °C}, front: {ambient: 40 °C}}
runs: [{from: tray, to: front, length: 900 mm}]
grounds: {stud: {kind: frame stud, at: tray, limit: 30 A, frame resistance: 2 mΩ}}
fuses: {f: {at: tray, fed by: battery, wire: {length: 100 mm}}}
loads: {lamp: {type: bulb 21 W, at: front, fed by: f, returns to: stud, stays live: "example"}}
`), nil)
	if err != nil {
		panic(err)
	}
	plan, err := sizing.Complete(d)
	if err != nil {
		panic(err)
	}
	for _, c := range plan.Choices {
		fmt.Println(c.Part, "→", c.Value)
	}
	// Output:
	// f → blade C 3 A
	// f, wire → 0.5 mm²
	// lamp, wire → 0.5 mm²
	// lamp, return wire → 0.5 mm²
}
