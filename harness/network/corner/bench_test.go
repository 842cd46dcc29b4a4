package corner_test

import (
	"fmt"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/proof/synth"
	"fusewright/library"
)

func build(t testing.TB, src []byte) *circuit.Circuit {
	t.Helper()
	d, err := design.Read("test.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// BenchmarkCorners solves every situation of a harness at nominal and in the
// three worst states, wires warm.
func BenchmarkCorners(b *testing.B) {
	for _, wires := range []int{40, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := build(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			for b.Loop() {
				corner.Compute(c)
			}
		})
	}
}
