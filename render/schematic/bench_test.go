package schematic

import (
	"fmt"
	"io"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/placement"
	"fusewright/render/svg"
)

// BenchmarkDraw lays out and draws generated harnesses as the first drawing of a run;
// findings are left out.
func BenchmarkDraw(b *testing.B) {
	for _, wires := range []int{10, 40, 100, 1000, 10000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			review := reviewtest.Built(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			sheets := 0
			for b.Loop() {
				placement.Forget()
				list, err := Draw(review, Options{})
				if err != nil {
					b.Fatal(err)
				}
				sheets = len(list)
			}
			b.ReportMetric(float64(sheets), "sheets")
		})
	}
}

// BenchmarkDrawSVG is a usual schematic from circuit to SVG text.
func BenchmarkDrawSVG(b *testing.B) {
	review := reviewtest.Built(b, synth.YAML(40, 1))
	for b.Loop() {
		placement.Forget()
		list, err := Draw(review, Options{})
		if err != nil {
			b.Fatal(err)
		}
		for _, s := range list {
			if err := svg.Write(io.Discard, s); err != nil {
				b.Fatal(err)
			}
		}
	}
}
