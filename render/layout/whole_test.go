package layout

import (
	"os"
	"testing"

	"fusewright/harness/design/lengths"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/workshop/formboard"
)

// TestWholeNames: the board on one sheet names every place and numbers every run, as
// the pages at full size do.
func TestWholeNames(t *testing.T) {
	for _, file := range []string{"../../designs/fen-runner.yaml", "../../designs/reed-skiff.yaml"} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		r := reviewtest.Built(t, text)
		board := formboard.Lay(r.Circuit)
		written := map[string]bool{}
		for _, s := range Whole(r, board) {
			for _, item := range s.Items {
				if item.Text != nil {
					written[item.Text.String] = true
				}
			}
		}
		for _, section := range board.Sections {
			for _, s := range section.Spots {
				if !written[s.Place.Name] {
					t.Errorf("%s: place %q is not named", file, s.Place.Name)
				}
			}
			for _, l := range section.Limbs {
				if !written[number(l.Run)] {
					t.Errorf("%s: run %s has no number", file, number(l.Run))
				}
			}
		}
	}
}

// The distance of clamps is said as a bench takes it: 24 in is 600 mm, not 609.6.
func TestAtMost(t *testing.T) {
	for mm, want := range map[float64]string{609.6: "600", 304.8: "300", 450: "450", 299.9: "290"} {
		if got := atMost(lengths.Unit{}, mm); got != want {
			t.Errorf("%g mm: %s, want %s", mm, got, want)
		}
	}
}
