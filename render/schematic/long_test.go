package schematic

import (
	"fmt"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/placement"
)

// BenchmarkLong lays out and draws generated harnesses for the screen.
func BenchmarkLong(b *testing.B) {
	for _, wires := range []int{40, 1000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			review := reviewtest.Built(b, synth.YAML(wires, 1))
			for b.Loop() {
				placement.Forget()
				if _, err := Long(review); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
