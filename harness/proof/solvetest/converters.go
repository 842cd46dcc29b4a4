package solvetest

import (
	"fmt"
	"math/rand/v2"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// RandomConverters is Random with one to three converters, 12 V to 6 V, each with wires and loads of its own
// behind it: some starved at their input, some at their limit, behind which nothing draws constant power:
// that would collapse. There are no motors among them: the simulator finds no way between a motor at a stand and
// a source at its limit.
func RandomConverters(seed uint64) (*circuit.Circuit, *design.Situation) {
	c, sit := Random(seed)
	b, r := &Builder{C: c}, rand.New(rand.NewPCG(seed, 19))
	for i := range 1 + r.IntN(3) {
		name := fmt.Sprintf("V%d", i)
		in, out := b.Node(name+" in"), b.Node(name+" out")
		b.Wire(name+" input", c.Nodes[1], in, 0.3+8*r.Float64(), []float64{1, 2.5, 6}[r.IntN(3)])
		t := &library.ChargerType{Name: "12 V to 6 V converter", From: "battery", InputV: 12, Volts: 6, RatingA: []float64{3, 5, 10}[r.IntN(3)],
			OutV: 6.9, StartsV: 10.5, StopsV: 10, Efficiency: 0.8 + 0.15*r.Float64(), OwnA: 0.03}
		b.addCharger(name, t, 0, in, out)
		over, count := r.IntN(3) == 0, 1+r.IntN(4)
		for k := range count {
			at := b.Node(fmt.Sprintf("%s.%d", name, k))
			b.Wire(fmt.Sprintf("%s.%d", name, k), out, at, 0.2+2*r.Float64(), []float64{1, 1.5, 2.5}[r.IntN(3)])
			behaves := []design.Behaviour{design.Resistor, design.FilamentLamp, design.ConstantPower}[r.IntN(3)]
			watts := 0.8 * t.RatingA * 6 * r.Float64() / float64(count)
			if over {
				behaves, watts = []design.Behaviour{design.Resistor, design.FilamentLamp}[r.IntN(2)], 10+60*r.Float64()
			}
			b.Load(fmt.Sprintf("E%s.%d", name, k), at, b.Ground(), behaves, watts, 6+r.Float64())
		}
	}
	return c, sit
}
