package document_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/purchase"
	"fusewright/render/document"
	"fusewright/render/scene"
)

func allText(sheets []*scene.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Text != nil {
				b.WriteString(item.Text.String + "\n")
			}
		}
	}
	return b.String()
}

// lamps is a design whose figures do not move, with more lines at its end.
func lamps(t *testing.T, more string) *harness.Review {
	t.Helper()
	src, err := os.ReadFile("testdata/lamps.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return reviewtest.Of(t, append(src, "\n"+more...))
}

// TestFeetReachThePapers: W4 is 1.285 m, 50.6 in, and its ends are stripped 7 mm,
// 9/32 in; in the CSV the metres stay.
func TestFeetReachThePapers(t *testing.T) {
	r := lamps(t, "sheet: {lengths: ft}\n")
	cut := allText(document.CutList(r))
	bill := allText(document.Bill(r, purchase.List(r.Circuit)))
	var csv bytes.Buffer
	if err := document.CutListCSV(&csv, lengths.Of(r.Design), cutting.List(r.Circuit)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, text, want, not string }{
		{"cut list", cut, "4 ft 2 5/8 in", "1.285"},
		{"strip lengths", cut, "9/32", "strip mm"},
		{"bill", bill, " ft\n", " m\n"},
		{"csv", csv.String(), ",1.285,", "\x00"},
		{"csv, last column", csv.String(), ",4 ft 2 5/8 in\n", "\x00"},
	} {
		if !strings.Contains(c.text, c.want) || strings.Contains(c.text, c.not) {
			t.Errorf("%s: want %q and no %q in\n%s", c.name, c.want, c.not, c.text)
		}
	}
}

// TestBillSaysWhatPricesMiss: a price whose wording fits no item is not passed
// over.
func TestBillSaysWhatPricesMiss(t *testing.T) {
	for _, c := range []struct{ name, prices, want string }{
		{"no prices", "", "No prices: the design gives none."},
		{"one that fits", "prices: {\"micro make 12 V, coil with resistor\": 4 EUR, \"power make 12 V, coil with resistor\": 9 EUR}\n",
			`A price is given for "micro make 12 V, coil with resistor"`},
	} {
		r := lamps(t, c.prices)
		if text := allText(document.Bill(r, purchase.List(r.Circuit))); !strings.Contains(strings.ReplaceAll(text, "\n", " "), c.want) {
			t.Errorf("%s: no %q in\n%s", c.name, c.want, text)
		}
	}
}

// TestCoverShowsTheWorstCase: the number of the cover is that of the worst case, with
// the smaller one at nominal values beside it.
func TestCoverShowsTheWorstCase(t *testing.T) {
	r := demo(t, "reed-skiff.yaml")
	text := strings.ReplaceAll(allText(document.Dossier(r, "Dossier", nil).Sheets), "\n", " ")
	if !strings.Contains(text, "voltage drop nearest to its limit 7.0 %") || !strings.Contains(text, "3.0 % allowed. With fuses and contacts 8.3 %, in the worst case 11 %.") {
		t.Errorf("the mast lamp's worst case is 11 %% and 8.3 %% at nominal, but the cover says\n%s", text)
	}
}

// TestPetrolVapour: every page says that petrol vapour is near where a place has it, on
// land too, and no page where none has; the cover says more.
func TestPetrolVapour(t *testing.T) {
	for vapour, want := range map[string]bool{"": false, "petrol vapour: no": false, "petrol vapour: yes": true} {
		src := example.Design("places:\n  battery tray: {ambient: 40 °C}\n  rear: {ambient: 35 °C, " + vapour + "}\n")
		r := reviewtest.Of(t, []byte(src))
		for _, sheets := range [][]*scene.Sheet{document.FuseCard(r), document.Findings(r), document.Sources(r)} {
			for i, s := range sheets {
				if text := allText([]*scene.Sheet{s}); strings.Contains(text, "Petrol vapour: no sparks.") != want {
					t.Errorf("%q, page %d: %s", vapour, i+1, text)
				}
			}
		}
		if text := allText(document.Dossier(r, "Dossier", nil).Sheets); strings.Contains(text, "Petrol vapour explodes") != want {
			t.Errorf("%q, cover: %s", vapour, text)
		}
	}
}
