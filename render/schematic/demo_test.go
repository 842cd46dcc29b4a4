package schematic

import (
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/schematic/paint"
)

// assessed reads a design and makes its findings.
func assessed(t testing.TB, name string, text []byte) *harness.Review {
	t.Helper()
	full, err := harness.Assess(reviewtest.Built(t, text).Design)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return full
}

// demo is the review of a demo design.
func demo(t testing.TB, name string) *harness.Review {
	t.Helper()
	text, err := os.ReadFile("../../designs/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	return assessed(t, name+".yaml", text)
}

// planned lays a design out with its findings.
func planned(t testing.TB, name string, text []byte, opt Options) *paint.Drawing {
	t.Helper()
	d, err := plan(assessed(t, name, text), opt)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return d
}

// laidOut lays a review out in one way of drawing it.
func laidOut(t testing.TB, review *harness.Review, v variant) *paint.Drawing {
	t.Helper()
	sheet := &review.Design.Sheet
	saved := *sheet
	defer func() { *sheet = saved }()
	sheet.PlaceBoxes, sheet.Lengths = v.places, v.lengths
	d, err := plan(review, v.Options)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Every demo design, on every size of paper and in every way of drawing it, keeps the rules
// of the drawing; large ones in each way on a small and a large paper.
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
		review := assessed(t, name, text)
		large := len(review.Circuit.Wires) > 40
		for k, size := range []string{"A4", "A3", "Letter", "Tabloid"} {
			for i, v := range variants(review) {
				if large && i%2 != k/2 {
					continue
				}
				t.Run(filepath.Base(name)+" "+size+v.name, func(t *testing.T) {
					v.Size = size
					d := laidOut(t, review, v)
					t.Logf("%+v", examine(t, d, 10))
				})
			}
		}
	}
}

// Generated harnesses of many sizes keep the rules too; the seeds are fixed. The fewest
// have each paper with each way of drawing twice.
func TestGeneratedHarnesses(t *testing.T) {
	sum := figures{}
	most := 2 * 4 * 7
	switch {
	case referencetest.Required():
		most = 500
	case testing.Short():
		most = 20
	}
	for seed := range most {
		wires := 8 + seed*7%90
		size := []string{"A4", "A3", "Letter", "Tabloid"}[seed%4]
		review := assessed(t, "generated.yaml", synth.YAML(wires, int64(seed)))
		list := variants(review)
		v := list[seed/4%len(list)]
		v.Size = size
		f := examine(t, laidOut(t, review, v), 3)
		if t.Failed() {
			t.Fatalf("seed %d, %d wires, %s%s", seed, wires, size, v.name)
		}
		sum.sheets += f.sheets
		sum.wires += f.wires
		sum.bends += f.bends
		sum.crossings += f.crossings
	}
	t.Logf("%d harnesses: %+v", most, sum)
}

// A switch of a library type with positions has no marks of its own; each output has its row.
func TestSwitchWithPositionsIsDrawn(t *testing.T) {
	const name = "../../testdata/rules/ok/positions.yaml"
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	review := assessed(t, name, text)
	for _, v := range variants(review) {
		t.Run(v.name, func(t *testing.T) { examine(t, laidOut(t, review, v), 3) })
	}
}
