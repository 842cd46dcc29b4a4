package corner_test

import (
	"fmt"
	"testing"

	"fusewright/harness/network/corner"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
)

// BenchmarkCorners solves every situation of a harness at nominal and in the
// three worst states, wires warm.
func BenchmarkCorners(b *testing.B) {
	for _, wires := range []int{40, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := buildtest.Circuit(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			for b.Loop() {
				corner.Compute(c)
			}
		})
	}
}
