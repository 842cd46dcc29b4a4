package fault_test

import (
	"fmt"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

func build(t testing.TB, src []byte) *circuit.Circuit {
	t.Helper()
	d, err := design.Read("design.yaml", src, library.Default())
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// BenchmarkStudy is every short, lost return, weld and exposure of a harness.
func BenchmarkStudy(b *testing.B) {
	for _, wires := range []int{40, 100, 1000, 10_000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			c := build(b, synth.YAML(wires, 1))
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
			c := build(b, synth.YAML(wires, 1))
			sols := solve.All(c, solve.Options{})
			faults := fault.Compute(c)
			b.ReportAllocs()
			for b.Loop() {
				protection.Compute(c, sols, faults)
			}
		})
	}
}
