package fault_test

import (
	"fmt"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
)

// BenchmarkStudy is every short, lost return, weld and exposure of a harness.
func BenchmarkStudy(b *testing.B) {
	for _, wires := range []int{40, 100, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := buildtest.Circuit(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			for b.Loop() {
				fault.Compute(c)
			}
		})
	}
}

// BenchmarkProtection is every fuse against its wires, loads and the fuses above.
func BenchmarkProtection(b *testing.B) {
	for _, wires := range []int{40, 100, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := buildtest.Circuit(b, synth.YAML(wires, 1))
			sols := solve.All(c, solve.Options{})
			faults := fault.Compute(c)
			b.ReportAllocs()
			for b.Loop() {
				protection.Compute(c, sols, faults)
			}
		})
	}
}
