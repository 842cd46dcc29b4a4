package bench_test

import (
	"fusewright/harness"
	"fusewright/harness/bench"
	"fusewright/harness/design"
	"fusewright/library"
	"fusewright/render/report"
	"os"
	"testing"
)

func TestDbg(t *testing.T) {
	f := os.Getenv("DBG")
	src, _ := os.ReadFile(f)
	d, err := design.Read("x", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	test := bench.Make(r.Circuit)
	report.WriteBench(os.Stdout, report.NewBench(report.New(r), test), test)
}
