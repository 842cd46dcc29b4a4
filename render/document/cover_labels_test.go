package document_test

import (
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/render/document"
)

// twoBatteries is assessed: a house battery behind a sensing relay.
func twoBatteries(t *testing.T) *harness.Review {
	t.Helper()
	return reviewtest.File(t, "../../testdata/rules/ok/house-by-sensing-relay.yaml")
}

// The cover names each battery, cuts nothing that it says of its three numbers, and the
// dossier's number stands on no label.
func TestCoverAndLabelsInTheDossier(t *testing.T) {
	r := twoBatteries(t)
	doc := document.Dossier(r, "Dossier", []document.Section{{Title: "Wire labels", Sheets: document.Labels(r)}})
	front := textOf(t, doc.Sheets[0])
	if !strings.Contains(front, "house 30 Ah AGM") || !strings.Contains(front, "first 20 Ah AGM") {
		t.Errorf("a battery is not named: %s", front)
	}
	if strings.Contains(front, "…") {
		t.Errorf("something is cut: %s", front)
	}
	stock := document.StockFor(r.Design.Sheet.Size)
	bottom := stock.TopMM + float64(stock.Rows-1)*stock.PitchYMM + stock.HighMM
	for _, s := range doc.Sheets[1:] {
		for _, item := range s.Items {
			if item.Text != nil && strings.HasPrefix(item.Text.String, "dossier ") && item.Text.At.Y-item.Text.SizeMM < bottom {
				t.Errorf("the number is at %.1f, the labels end at %.1f", item.Text.At.Y, bottom)
			}
		}
	}
}

// The cut list begins with the order of work, the forces of test crimps among it.
func TestOrderOfWorkComesFirst(t *testing.T) {
	text := ""
	for _, s := range document.CutList(twoBatteries(t)) {
		text += textOf(t, s)
	}
	order, force, list := strings.Index(text, "Order of work"), strings.Index(text, "A test crimp must"), strings.Index(text, "W1\n")
	if order < 0 || force < order || list < force {
		t.Errorf("order of work at %d, forces at %d, first wire at %d", order, force, list)
	}
}
