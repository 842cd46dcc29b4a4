package harness_test

import (
	"fmt"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
)

// BenchmarkAssess is the way from text to findings and each stage of it alone,
// on realistic harnesses. "all" is reading and every stage; "assess" the stages
// alone.
func BenchmarkAssess(b *testing.B) {
	for _, wires := range []int{10, 40, 100, 1000, 10_000} {
		stages(b, fmt.Sprint(wires), synth.YAML(wires, 1))
	}
}

// BenchmarkForms is the same on harnesses of one extreme form. The whole process
// of check took, in seconds of processor time and MiB, on two cores of a busy
// machine (2026-11):
//
//	wires         1 000       10 000       20 000 (the most that are read)
//	star        0.15  46    0.86  142     1.8   238
//	chain       0.19  50    1.7   178     4.3   349
//	ladder      0.25  49    2.5   239     7.3   585
//	wide-block  0.13  48    1.0   151     2.0   276
//
// Star and wide-block grow with the wires. On chain and ladder the ways home and
// the wires that share them are listed for each load, which grows with the
// square, at some nanoseconds each.
func BenchmarkForms(b *testing.B) {
	for _, form := range synth.Forms {
		for _, wires := range []int{100, 1000, 10_000} {
			stages(b, fmt.Sprintf("%s/%d", form, wires), form.YAML(wires, 1))
		}
	}
}

// stages runs each stage on a design.
func stages(b *testing.B, name string, src []byte) {
	read := func() *design.Design {
		d := buildtest.Design(b, src)
		return d
	}
	assess := func(d *design.Design) *harness.Review {
		r, err := harness.Assess(d)
		if err != nil {
			b.Fatal(err)
		}
		return r
	}
	b.Run(name, func(b *testing.B) {
		r := assess(read())
		c, sols := r.Circuit, r.Solutions
		run := func(stage string, work func()) {
			b.Run(stage, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					work()
				}
			})
		}
		run("all", func() { assess(read()) })
		run("assess", func() { assess(r.Design) })
		run("read", func() { read() })
		run("build", func() {
			if _, err := circuit.Build(r.Design); err != nil {
				b.Fatal(err)
			}
		})
		plain := func(int) solve.Options { return solve.Options{} }
		run("solve", func() { warm.New(c).All(solve.Prepare(c), plain, nil) })
		run("corner", func() { corner.Compute(c) })
		run("budget", func() { budget.Compute(c, sols) })
		run("fault", func() { fault.Compute(c) })
		run("protection", func() { protection.Compute(c, sols, r.Faults) })
		run("rules", func() {
			rules.Check(&rules.Input{Circuit: c, Solutions: sols, Budget: r.Budget, Faults: r.Faults,
				Protection: r.Protection, Overloads: overload.Compute(c, r.Corners.Every(), r.Faults), Corners: r.Corners})
		})
	})
}

// BenchmarkRemedies is a review of a boat with many faults and all trials against
// them. It took 0.6 s of processor time for 70 trials (2026-11, two cores of a busy
// machine).
func BenchmarkRemedies(b *testing.B) {
	src := buildtest.File(b, "../designs/reed-skiff.yaml")
	b.ReportAllocs()
	for b.Loop() {
		r := reviewtest.Of(b, src)
		b.ReportMetric(float64(r.Remedies().Trials), "trials/op")
	}
}
