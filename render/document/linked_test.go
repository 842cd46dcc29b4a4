package document_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/workshop/formboard"
	"fusewright/render/document"
)

// A house battery behind a sensing relay: the card says that both batteries feed the link, the
// connections that 86 is no wire of the machine, the cover how long its clock may run.
func TestPapersOfALink(t *testing.T) {
	text, err := os.ReadFile("../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src := strings.Replace(string(text), "situations:\n", "  clock: {power: 1.2 W, behaves: resistor, at: rear, fed by: lamp end, returns to: frame, stays live: \"keeps time\"}\nsituations:\n", 1)
	r := assess(t, "link.yaml", []byte(src))
	card := strings.Join(said(document.FuseCard(r)), "|")
	if n := strings.Count(card, "charging link, fed from"); n != 2 {
		t.Errorf("the card names the link %d times, want at both ends:\n%s", n, card)
	}
	if got := allText(document.Connections(r, formboard.Lay(r.Circuit))); !strings.Contains(strings.Join(strings.Fields(got), " "), "86 none not brought out: senses at 30") {
		t.Errorf("connections: %s", got)
	}
	cover := allText(document.Dossier(r, "Dossier", nil).Sheets)
	if want := "With the key off house gives"; !strings.Contains(cover, want) {
		t.Errorf("the cover lacks %q", want)
	}
	if !strings.Contains(cover, "Isolate every battery before work") {
		t.Error("the cautions speak of one battery")
	}
}
