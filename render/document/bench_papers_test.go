package document_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/synth"
	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/formboard"
	"fusewright/library"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/scene"
)

// circuitOnly is a review with no more than the papers of the bench need.
func circuitOnly(t testing.TB, name string, text []byte) *harness.Review {
	t.Helper()
	d, err := design.Read(name, text, library.Default())
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return &harness.Review{Design: d, Circuit: c}
}

// samples are the demo designs and some made ones.
func samples(t testing.TB) map[string]*harness.Review {
	out := map[string]*harness.Review{}
	for _, name := range []string{"designs/fen-runner", "designs/reed-skiff", "testdata/corpus-clean-trade/20-day-boat"} { // feet, long names
		text, err := os.ReadFile("../../" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		out[name] = circuitOnly(t, name, text)
	}
	text, err := os.ReadFile("testdata/lamps.yaml")
	if err != nil {
		t.Fatal(err)
	}
	out["lamps"] = circuitOnly(t, "lamps", text)
	out["made of 3 wires"] = circuitOnly(t, "made", synth.YAML(3, 1))
	out["made of 120 wires"] = circuitOnly(t, "made", synth.YAML(120, 2))
	letter := circuitOnly(t, "made", synth.YAML(45, 3))
	letter.Design.Sheet.Size = "Letter"
	out["made, on Letter"] = letter
	return out
}

// papers are the documents under test.
var papers = map[string]func(*harness.Review) []*scene.Sheet{
	"connections": connections,
	"fuse card":   document.FuseCard,
	"labels":      document.Labels,
	"cut list":    document.CutList,
}

func connections(r *harness.Review) []*scene.Sheet {
	return document.Connections(r, formboard.Lay(r.Circuit))
}

// DOCUMENT_LOOK=FOLDER writes the papers there for looking at.
func TestPapersLook(t *testing.T) {
	folder := os.Getenv("DOCUMENT_LOOK")
	if folder == "" {
		t.Skip("writes pages only when DOCUMENT_LOOK names a folder")
	}
	for name, r := range samples(t) {
		for kind, draw := range papers {
			var b bytes.Buffer
			if err := pdf.Write(&b, &scene.Document{Title: kind, Sheets: draw(r)}); err != nil {
				t.Fatal(err)
			}
			file := strings.NewReplacer(" ", "-", ",", "").Replace(name + "-" + kind)
			if err := os.WriteFile(filepath.Join(folder, file+".pdf"), b.Bytes(), 0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// TestPapersStayOnThePage holds every word inside the page and off every other.
func TestPapersStayOnThePage(t *testing.T) {
	for name, r := range samples(t) {
		for kind, draw := range papers {
			t.Run(name+", "+kind, func(t *testing.T) {
				for _, s := range draw(r) {
					if err := s.Validate(); err != nil {
						t.Fatal(err)
					}
					apart(t, s)
				}
			})
		}
	}
}

// apart reports words that leave the page or lie on one another.
func apart(t *testing.T, s *scene.Sheet) {
	t.Helper()
	var boxes []scene.Rect
	var words []string
	for _, item := range s.Items {
		if item.Text == nil || item.Text.String == "" {
			continue
		}
		box := scene.InkBox(*item.Text)
		if !s.Frame().Grow(-3).Contains(box) {
			t.Errorf("%s: %q leaves the page", s.Title, item.Text.String)
		}
		for i, other := range boxes {
			if box.Overlaps(other) {
				t.Errorf("%s: %q lies on %q", s.Title, item.Text.String, words[i])
			}
		}
		boxes, words = append(boxes, box), append(words, item.Text.String)
	}
}

// said is every text of some sheets.
func said(sheets []*scene.Sheet) []string {
	var out []string
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Text != nil {
				out = append(out, item.Text.String)
			}
		}
	}
	return out
}

func TestConnectionsHaveEachWireTwice(t *testing.T) {
	for name, r := range samples(t) {
		t.Run(name, func(t *testing.T) {
			seen := map[string]int{}
			for _, text := range said(connections(r)) {
				if text == "Splices and taps" { // a table of its own
					break
				}
				seen[text]++
			}
			for _, w := range r.Circuit.Wires {
				if seen[w.Number] != 2 {
					t.Errorf("%s stands there %d times", w.Number, seen[w.Number])
				}
			}
		})
	}
}

func TestFuseCardHasEveryFuse(t *testing.T) {
	r := samples(t)["lamps"]
	got := strings.Join(said(document.FuseCard(r)), "|")
	for _, want := range []string{
		"X2 rear, under seat", "way 1 F3", "7.5 A blade C|brown", "left lamp, right lamp", "way 6|–", "|spare|",
		"F1 main, battery tray", "20 A blade C|yellow", "relay coil of keyed", "10 A factory",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the card lacks %q:\n%s", want, got)
		}
	}
}

func TestLabelsStandOnTheGrid(t *testing.T) {
	for name, r := range samples(t) {
		t.Run(name, func(t *testing.T) {
			stock := document.StockFor(r.Design.Sheet.Size)
			right := stock.LeftMM + float64(stock.Columns-1)*stock.PitchXMM + stock.WideMM
			bottom := stock.TopMM + float64(stock.Rows-1)*stock.PitchYMM + stock.HighMM
			if right > stock.Paper.Wide || bottom > stock.Paper.High || stock.PitchXMM < stock.WideMM || stock.PitchYMM < stock.HighMM {
				t.Fatalf("the grid %+v does not fit its paper", stock)
			}
			n, perSheet := 2*len(r.Circuit.Wires), stock.Columns*stock.Rows
			sheets := document.Labels(r)
			if want := (n + perSheet - 1) / perSheet; len(sheets) != want {
				t.Errorf("%d sheets for %d labels, want %d", len(sheets), n, want)
			}
			for _, s := range sheets {
				onLabels(t, s, stock)
			}
		})
	}
}

// onLabels reports words inside a label's group that leave its rectangle.
func onLabels(t *testing.T, s *scene.Sheet, stock document.Stock) {
	t.Helper()
	var label scene.Rect
	n := 0
	for _, item := range s.Items {
		switch {
		case item.Begin != nil:
			row, column := n/stock.Columns, n%stock.Columns
			n++
			label = scene.Rect{X: stock.LeftMM + float64(column)*stock.PitchXMM, Y: stock.TopMM + float64(row)*stock.PitchYMM,
				W: stock.WideMM, H: stock.HighMM}
		case item.End:
			label = scene.Rect{}
		case item.Text != nil && label != (scene.Rect{}):
			if !label.Grow(-1).Contains(scene.InkBox(*item.Text)) {
				t.Errorf("label %d: %q leaves it", n, item.Text.String)
			}
		}
	}
}

func TestLabelsCSV(t *testing.T) {
	r := samples(t)["lamps"]
	var b bytes.Buffer
	if err := document.LabelsCSV(&b, cutting.List(r.Circuit)); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 1+2*len(r.Circuit.Wires) {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	want := "W1 first W1  main feed G1:+ to F1:in battery battery tray RD 4 mm²"
	if got := strings.Join(rows[1], " "); got != want {
		t.Errorf("first row %q, want %q", got, want)
	}
}
