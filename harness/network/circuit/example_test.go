package circuit_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// A lamp on one fuse: its way from the battery and how far it is fused.
func Example() {
	d, err := design.Read("lamp.yaml", []byte(`
fusewright: 1
title: One lamp
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 10 Ah, at: tray}
places: {tray: {}, bar: {}}
runs: [{from: tray, to: bar, length: 900 mm}]
wire: {size: 1.5 mm², slack: 50 mm}
fuses: {main: {type: blade C, rating: 5 A, at: tray, fed by: battery, wire: {length: 120 mm}}}
loads: {lamp: {power: 18 W, at: bar, fed by: main, returns to: battery negative}}
`), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := circuit.Build(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	guards := c.Guards()
	for _, w := range c.MainFeed(c.PartOf(d.Loads[0]).Terminal("+").Node).Wires() {
		fmt.Printf("%s %s -> %s, %.2f m", w.Number, w.From.Node.Name, w.To.Node.Name, w.LengthM)
		for _, f := range guards[w.Branch.Index].Fuses {
			fmt.Printf(", protected by %s", f.Name)
		}
		fmt.Println()
	}
	// Output:
	// W1 G1:+ -> F1:in, 0.12 m
	// W2 F1:out -> A1:+, 1.00 m, protected by F1
}
