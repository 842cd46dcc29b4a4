package bundle_test

import (
	"fmt"

	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// Seven wires of 2.5 mm² for 105 °C in a place of 40 °C: one feeds a winch now and
// then, three feed lamps, three are off.
func Example() {
	size := conductor.Insulated{AreaMm2: 2.27, OhmPerM20: 0.0076, ConductorMm: 2.2, OuterMm: 3,
		ResistivityKmPerW: 5.9, Emissivity: 0.9, InsulationJPerMm3K: 1.7e-3}
	wires := make([]bundle.Wire, 7)
	for i, amps := range []float64{60, 10, 10, 10, 0, 0, 0} {
		wires[i] = bundle.Wire{Insulated: size, CurrentA: amps, LimitC: 105, Pulsed: i == 0}
	}
	b, err := bundle.New(wires, bundle.Place{AmbientC: 40, Share: 0.95})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("a lamp may take %.1f A beside the others without the winch\n", off(wires).AllowedA(1))
	fmt.Printf("the winch makes its wire hot after %.0f s\n", b.HotAfterS(0))
	c := b.Course(0, bundle.Cycle{OnS: 20, EveryS: 600})
	fmt.Printf("20 s in 10 min: %.0f °C at first, %.0f °C settled\n", c.First.ConductorC, c.Settled.ConductorC)
	// Output:
	// a lamp may take 35.1 A beside the others without the winch
	// the winch makes its wire hot after 25 s
	// 20 s in 10 min: 95 °C at first, 95 °C settled
}

func off(wires []bundle.Wire) *bundle.Bundle {
	w := append([]bundle.Wire(nil), wires...)
	w[0].CurrentA = 0
	b, _ := bundle.New(w, bundle.Place{AmbientC: 40, Share: 0.95})
	return b
}
