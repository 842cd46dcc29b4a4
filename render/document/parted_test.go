package document_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/render/document"
)

// A wire that a connector in the loom parts is cut, connected and labelled in its pieces,
// never whole; ways without a wire are said to be spare; no reel gives less than its longest
// piece.
func TestPapersOfAPartedLoom(t *testing.T) {
	for _, name := range []string{"sedge-sloop", "hay-wain"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		r := circuitOnly(t, name, text)
		count := map[string]map[string]int{}
		for paper, sheets := range papers {
			count[paper] = map[string]int{}
			for _, word := range strings.Fields(allText(sheets(r))) {
				count[paper][word]++
			}
		}
		pieces := 0
		for _, w := range r.Circuit.Wires {
			if len(w.Pieces) == 0 {
				continue
			}
			for _, p := range w.Pieces {
				pieces++
				if n := count["cut list"][p.Number]; n != 2 { // its row and its label's text
					t.Errorf("%s: %s stands in the cut list %d times", name, p.Number, n)
				}
				if n := count["connections"][p.Number]; n < 2 {
					t.Errorf("%s: %s has %d ends in the connections", name, p.Number, n)
				}
				if n := count["labels"][p.Number]; n < 2 {
					t.Errorf("%s: %s has %d labels", name, p.Number, n)
				}
			}
			for paper := range papers {
				if n := count[paper][w.Number]; n > 0 {
					t.Errorf("%s: %s stands whole in the %s", name, w.Number, paper)
				}
			}
		}
		if pieces == 0 {
			t.Errorf("%s: nothing is parted", name)
		}
		if said := strings.Join(strings.Fields(allText(connections(r))), " "); !strings.Contains(said, "12 none spare, stays empty") {
			t.Errorf("%s: its spare way is not said to be one", name)
		}
		if said := strings.Join(strings.Fields(allText(document.CutList(r))), " "); name == "sedge-sloop" && !strings.Contains(said, "BN brown 1 0.19 0.185 m") {
			t.Errorf("the reel of the bilge fuse's feed: %s", said[strings.Index(said, "From the reels"):])
		}
	}
}
