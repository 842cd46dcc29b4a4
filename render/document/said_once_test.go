package document

import (
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/reviewtest"
)

func reviewed(t testing.TB, name string) *harness.Review {
	t.Helper()
	return reviewtest.File(t, "../../designs/"+name+".yaml")
}

// A fuse before a block feeds the block by name; a way of it names its loads.
func TestFuseBeforeABlockNamesIt(t *testing.T) {
	r := reviewed(t, "fen-runner")
	found := map[string]string{}
	for _, k := range cards(r.Circuit) {
		for _, row := range k.rows {
			found[row.position] = row.feeds
		}
	}
	if got := found["F1 main, battery tray"]; got != "all of X2 rear" {
		t.Errorf("F1 feeds %q", got)
	}
	if got := found["way 1 F3"]; got != "left lamp, right lamp" {
		t.Errorf("F3 feeds %q", got)
	}
}

// Loads with the same figures share a picture, and every load is on one.
func TestAlikeLoadsShareAPicture(t *testing.T) {
	r := reviewed(t, "fen-runner")
	var all []*profile
	for _, part := range r.Circuit.Parts {
		if p := profileOf(r, part); part.Kind == circuit.Load && p != nil {
			all = append(all, p)
		}
	}
	usual, n := usualOf(all), 0
	for _, p := range alike(r, all, usual) {
		n += 1 + len(p.same)
		for _, text := range p.same {
			ref, _, _ := strings.Cut(text, " ")
			for _, q := range all {
				_, nominal, worst := q.figures(r)
				if _, a, b := p.figures(r); q.part.Ref == ref && strings.Join(append(a, b...), " ") != strings.Join(append(nominal, worst...), " ") {
					t.Errorf("%s is not as %s", ref, p.part.Ref)
				}
			}
		}
	}
	if n != len(all) {
		t.Errorf("%d of %d loads are told of", n, len(all))
	}
}
