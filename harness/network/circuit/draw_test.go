package circuit_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// 60 W at 12 V are 5 A; a coil of 60 Ω draws 0.2 A at 12 V.
func TestDraw(t *testing.T) {
	c := &circuit.Circuit{Design: &design.Design{SystemV: design.Quantity{Value: 12, Text: "12 V"}}}
	for _, test := range []struct {
		name string
		b    circuit.Branch
		want float64
	}{
		{"load", circuit.Branch{Load: &circuit.LoadSpec{PowerW: 60, RatedV: 12}}, 5},
		{"load without a voltage", circuit.Branch{Load: &circuit.LoadSpec{PowerW: 60}, Ohm: 60}, 0},
		{"coil", circuit.Branch{Ohm: 60}, 0.2},
		{"coil of unknown resistance", circuit.Branch{}, 0},
	} {
		if got := c.DrawA(&test.b); got != test.want {
			t.Errorf("%s: %g A, want %g A", test.name, got, test.want)
		}
	}
}
