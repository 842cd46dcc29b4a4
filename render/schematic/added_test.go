package schematic

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
)

// spareLine is that of a spare way.
var spareLine = regexp.MustCompile(`(?m)^ +\d+: spare\n`)

// A load that is added to a design with numbers moves no part to another sheet and few on
// theirs; what is drawn is as right as any other drawing.
func TestAddedLoadKeepsPlaces(t *testing.T) {
	allStay, all := 0, 0
	for _, name := range []string{"fen-runner", "reed-skiff", "hay-wain"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		bare := strings.ReplaceAll(string(text), "fuse block 6 way", "fuse block 12 way")
		bare = spareLine.ReplaceAllString(bare, "") // the block has room that it does not list
		numbered := withNumbers(t, reviewtest.Built(t, []byte(bare)), bare)
		for _, size := range []string{"A4", "A3"} {
			draw := func(text string) map[string]place {
				d, err := plan(reviewtest.Built(t, []byte(text)), Options{Size: size})
				if err != nil {
					t.Fatal(err)
				}
				for _, fault := range faultsOf(d) {
					t.Errorf("%s %s: %s", name, size, fault)
				}
				return placesOf(d)
			}
			before := draw(numbered)
			stay, sheets, of := 0, 0, 0
			for n := range 3 {
				after := draw(addInNewWay(numbered, n))
				if _, drawn := after["added one"]; !drawn {
					t.Errorf("%s %s: what was added is not drawn", name, size)
				}
				for part, at := range before {
					if after[part].sheet == at.sheet {
						sheets++
					}
				}
				s, o := kept(before, after)
				stay, of = stay+s, of+o
			}
			if sheets != of {
				t.Errorf("%s %s: %d of %d parts stay on their sheet", name, size, sheets, of)
			}
			allStay, all = allStay+stay, all+of
		}
	}
	if share := 100 * float64(allStay) / float64(all); share < 95 {
		t.Errorf("%.1f %% of the parts stay, want 95 %%", share)
	} else {
		t.Logf("%.1f %% of the parts stay", share)
	}
}
