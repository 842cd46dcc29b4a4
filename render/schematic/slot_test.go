package schematic

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
)

// slotsOf are the empty cells of a drawing's pages.
func slotsOf(t *testing.T, r *harness.Review, opt Options) (n int, of labels.Slots) {
	t.Helper()
	d, err := plan(r, opt)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range d.Pages {
		for _, c := range p.Cells {
			if c.Empty && c.Kind == cell.Part {
				n++
			}
		}
	}
	return n, d.Slots
}

// The slot of a load that is gone is kept while its number is: not in the next revision,
// and a row alone where more than half of a sheet would be empty. A switch that feeds nothing keeps one.
func TestSlots(t *testing.T) {
	text, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	plain := string(text)
	numbered := withNumbers(t, reviewtest.Built(t, text), plain)
	without := func(text string, n int) string {
		for range n {
			text = remove(text, 0)
		}
		return text
	}
	next := func(text string) string { return strings.Replace(text, "\nrevision: B", "\nrevision: C", 1) }
	for _, tt := range []struct {
		name, text string
		want       int
		of         labels.Slots
	}{
		{"as it is", numbered, 0, labels.WholeSlots},
		{"a lamp at a splice gone", without(numbered, 1), 1, labels.WholeSlots},
		{"without numbers", without(plain, 1), 0, labels.WholeSlots},
		{"in the next revision", next(without(numbered, 1)), 0, labels.WholeSlots},
		{"both lamps gone", without(numbered, 2), 2, labels.WholeSlots},
		{"five of six loads gone, a row each", without(numbered, 5), 5, labels.LeanSlots},
		{"the load of a switch gone, without numbers", remove(plain, 2), 1, labels.LeanSlots},
	} {
		t.Run(tt.name, func(t *testing.T) {
			n, of := slotsOf(t, reviewtest.Built(t, []byte(tt.text)), Options{})
			if n != tt.want || of != tt.of {
				t.Errorf("%d slots, measured as %d; want %d and %d", n, of, tt.want, tt.of)
			}
		})
	}
}

// A drawing with slots keeps the rules as any other: nothing stands in them, and no wire,
// flag or joint leads there.
func TestSlotsAreEmpty(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		numbered := withNumbers(t, reviewtest.Built(t, text), string(text))
		for n, size := range []string{"A4", "A3"} {
			review := assessed(t, name, []byte(remove(numbered, 2*n+1)))
			for _, v := range variants(review) {
				t.Run(name+" "+size+v.name, func(t *testing.T) {
					v.Size = size
					examine(t, laidOut(t, review, v), 10)
				})
			}
		}
	}
}
