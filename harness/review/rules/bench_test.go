package rules_test

import (
	"fmt"
	"testing"

	"fusewright/harness"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/budget"
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
				d := buildtest.Design(b, src)
				if _, err := harness.Assess(d); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func input(t testing.TB, src []byte) *rules.Input {
	t.Helper()
	c := buildtest.Circuit(t, src)
	sols := solve.All(c, solve.Options{})
	return &rules.Input{Circuit: c, Solutions: sols, Budget: budget.Compute(c, sols)}
}
