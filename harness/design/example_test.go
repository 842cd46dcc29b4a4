package design_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/proof/synth"
	"testing"
)

func ExampleRead() {
	d, err := design.Read("lamp.yaml", []byte(`
fusewright: 1
title: one lamp
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, at: tray}
places: {tray: {ambient: 40 °C}}
fuses: {main: {rating: 5 A, at: tray, fed by: battery}}
loads: {lamp: {power: 18 W, at: tray, fed by: main, returns to: battery negative}}
`), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	feed := d.Loads[0].FedBy[0]
	fmt.Println(d.Loads[0].Name, "is fed by", feed.From.Part.PartName(), "with", feed.Wire.Size.Label,
		feed.Wire.Colour.Code())
	// Output: lamp is fed by main with 0.5 mm² RD
}

func ExampleRead_mistakes() {
	_, err := design.Read("lamp.yaml", []byte(`fusewright: 1
title: one lamp
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12, at: tray}
places: {tray: {}}
loads: {lamp: {power: 18 W, at: tray, fed bye: battery}}
`), nil)
	fmt.Println(err)
	// Output:
	// lamp.yaml:5:37: battery, capacity: 12 has no unit (expected a charge in Ah or mAh, such as 12 Ah)
	// lamp.yaml:7:39: load "lamp": unknown key "fed bye" (did you mean "fed by"?)
}

func BenchmarkRead(b *testing.B) {
	for _, wires := range []int{10, 100, 1000, 10_000} {
		src := synth.YAML(wires, 1)
		b.Run(fmt.Sprintf("%d-wires", wires), func(b *testing.B) {
			b.SetBytes(int64(len(src)))
			for b.Loop() {
				if _, err := design.Read("bench.yaml", src, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
