package document_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
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
	r := reviewtest.Of(t, []byte(src))
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

// A fuse behind an isolator's output names the battery there, the first one too.
func TestFuseCardOfAnIsolator(t *testing.T) {
	card := strings.NewReplacer("|", " ").Replace(strings.Join(said(document.FuseCard(reviewtest.Of(t, []byte(buildtest.Machines)))), " "))
	for _, want := range []string{"charging to battery: live at both sides", "charging to battery house: live at both sides", "starboard to battery house: live at both sides"} {
		if !strings.Contains(card, want) {
			t.Errorf("the card lacks %q:\n%s", want, card)
		}
	}
}

// A charger's fuse is between it and the battery that it charges, and the alternator's between that and the first
// one: neither stands in a link of two batteries, and each has both sides live.
func TestFuseCardOfChargers(t *testing.T) {
	text, err := os.ReadFile("../../designs/hay-wain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src := strings.Replace(string(text), "  hot derating: 20 %\n", "  hot derating: 20 %\n  at: engine bay\n  fed by: machine fuse\n  wire: {size: 35 mm², length: 1 m}\n", 1)
	src = strings.Replace(src, "fuses:\n", "fuses:\n  machine fuse: {type: class T, rating: 200 A, at: engine bay, fed by: battery, wire: {size: 35 mm², length: 150 mm}}\n", 1)
	card := strings.Join(said(document.FuseCard(reviewtest.Of(t, []byte(src)))), " ")
	for _, want := range []string{"booster to battery house: live at both sides", "roof charger to battery house: live at both sides", "charging system: live at both sides"} {
		if !strings.Contains(strings.NewReplacer("|", " ").Replace(card), want) {
			t.Errorf("the card lacks %q:\n%s", want, card)
		}
	}
	if strings.Contains(card, "charging link") {
		t.Errorf("the card speaks of a link of two batteries:\n%s", card)
	}
}
