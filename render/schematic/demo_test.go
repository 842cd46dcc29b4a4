package schematic

import (
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/synth"
)

// planned lays a design out with its findings.
func planned(t testing.TB, name string, text []byte, opt Options) *drawing {
	t.Helper()
	review := read(t, name, text)
	if full, err := harness.Assess(review.Design); err == nil {
		review = full
	} else {
		t.Fatalf("%s: %v", name, err)
	}
	d, err := plan(review, opt)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return d
}

// Every demo design, on every size of paper, with and without findings, keeps
// the rules of the drawing.
func TestDemoDesigns(t *testing.T) {
	names, err := filepath.Glob("../../designs/*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no demo designs: %v", err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, size := range []string{"A4", "A3", "Letter", "Tabloid"} {
			for _, bare := range []bool{false, true} {
				label := filepath.Base(name) + " " + size
				if bare {
					label += " without findings"
				}
				t.Run(label, func(t *testing.T) {
					f := examine(t, planned(t, name, text, Options{Size: size, NoFindings: bare}), 10)
					t.Logf("%+v", f)
				})
			}
		}
	}
}

// Generated harnesses of many sizes keep the rules too; the seeds are fixed.
func TestGeneratedHarnesses(t *testing.T) {
	sum := figures{}
	most := 100
	switch {
	case os.Getenv("FUSEWRIGHT_REFERENCE") == "required":
		most = 500
	case testing.Short():
		most = 20
	}
	for seed := range most {
		wires := 8 + seed*7%90
		size := []string{"A4", "A3", "Letter", "Tabloid"}[seed%4]
		d := planned(t, "generated.yaml", synth.YAML(wires, int64(seed)), Options{Size: size})
		f := examine(t, d, 3)
		if t.Failed() {
			t.Fatalf("seed %d, %d wires, %s", seed, wires, size)
		}
		sum.sheets += f.sheets
		sum.wires += f.wires
		sum.bends += f.bends
		sum.crossings += f.crossings
	}
	t.Logf("%d harnesses: %+v", most, sum)
}
