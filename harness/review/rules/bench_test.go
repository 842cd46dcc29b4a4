package rules_test

import (
	"fmt"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/budget"
	"fusewright/library"
)

var sizes = []int{10, 100, 1000, 10_000}

// BenchmarkCheck is every rule on a solved design.
func BenchmarkCheck(b *testing.B) {
	for _, wires := range sizes {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			in := input(b, synth.YAML(wires, 1))
			b.ReportAllocs()
			for b.Loop() {
				rules.Check(in)
			}
		})
	}
}

// BenchmarkReadSolveCheck is the whole way from text to findings.
func BenchmarkReadSolveCheck(b *testing.B) {
	for _, wires := range append([]int{40}, sizes...) {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			src := synth.YAML(wires, 1)
			b.ReportAllocs()
			for b.Loop() {
				d, err := design.Read("synth.yaml", src, library.Default())
				if err != nil {
					b.Fatal(err)
				}
				if _, err := harness.Assess(d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func input(t testing.TB, src []byte) *rules.Input {
	t.Helper()
	d, err := design.Read("synth.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	sols := solve.All(c, solve.Options{})
	return &rules.Input{Circuit: c, Solutions: sols, Budget: budget.Compute(c, sols)}
}
