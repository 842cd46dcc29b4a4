package circuit

import (
	"testing"

	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
)

// A wire counts as loaded from a hundredth of the loss of the one that loses most: beside
// 10 A from 1 A in a wire of the same size, from 0.5 A in one of four times its resistance.
func TestHeating(t *testing.T) {
	wire := func(amps, ohm float64) bundle.Wire {
		return bundle.Wire{Insulated: conductor.Insulated{OhmPerM20: ohm}, CurrentA: amps}
	}
	for _, c := range []struct {
		wires []bundle.Wire
		want  int
	}{
		{nil, 0}, {[]bundle.Wire{wire(0, 1), wire(0, 1)}, 0},
		{[]bundle.Wire{wire(10, 1), wire(0.99, 1)}, 1}, {[]bundle.Wire{wire(10, 1), wire(1, 1)}, 2},
		{[]bundle.Wire{wire(10, 1), wire(0.49, 4)}, 1}, {[]bundle.Wire{wire(0.5, 4), wire(10, 1), wire(0, 1)}, 2},
		{[]bundle.Wire{wire(0.15, 1)}, 1}, // a coil alone is all there is
	} {
		if got := heating(c.wires); got != c.want {
			t.Errorf("%v: %d, want %d", c.wires, got, c.want)
		}
	}
}
