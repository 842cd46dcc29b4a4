package document_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/ride"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/formboard"
	"fusewright/harness/workshop/purchase"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
)

// dossierPapers makes every paper of this package, in the order of the dossier.
func dossierPapers(t testing.TB, r *harness.Review) []document.Section {
	t.Helper()
	var rides []*ride.Result
	for _, each := range r.Design.Rides {
		result, err := ride.Simulate(r.Circuit, each, ride.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rides = append(rides, result)
	}
	var list []document.Section
	add := func(title string, sheets []*scene.Sheet, err error) {
		if err != nil {
			t.Fatalf("%s: %v", title, err)
		}
		list = append(list, document.Section{Title: title, Sheets: sheets})
	}
	add("Cut list", document.CutList(r), nil)
	add("Connection table", document.Connections(r, formboard.Lay(r.Circuit)), nil)
	add("Bill of materials", document.Bill(r, purchase.List(r.Circuit)), nil)
	add("Fuse card", document.FuseCard(r), nil)
	sheets, err := document.Budget(r)
	add("Charging budget", sheets, err)
	if len(rides) > 0 {
		sheets, err = document.Rides(r, rides)
		add("Rides", sheets, err)
	}
	sheets, err = document.Study(r)
	add("Fault and protection study", sheets, err)
	sheets, err = document.Profiles(r)
	add("Voltage along each circuit", sheets, err)
	sheets, err = document.Loading(r)
	add("Wire loading", sheets, err)
	add("Findings", document.Findings(r), nil)
	add("Bench test", document.Bench(r, bench.Make(r.Circuit)), nil)
	add("Sources", document.Sources(r), nil)
	return list
}

func demo(t testing.TB, name string) *harness.Review {
	t.Helper()
	return reviewtest.File(t, "../../designs/"+name)
}

// designs are the demo designs and some that nobody built.
func designs(t *testing.T) map[string]*harness.Review {
	t.Helper()
	list := map[string]*harness.Review{}
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		list[name] = demo(t, name)
	}
	for _, wires := range []int{3, 9, 24, 40, 90} {
		for seed := range int64(2) {
			name := fmt.Sprintf("synth %d wires, seed %d", wires, seed)
			list[name] = reviewtest.Of(t, synth.YAML(wires, seed))
		}
	}
	for seed := range int64(4) {
		list[fmt.Sprintf("random %d", seed)] = reviewtest.Of(t, synth.Random(seed))
	}
	list["one fuse for all"] = reviewtest.Of(t, oneFuse(300))
	return list
}

// oneFuse is a design of so many lamps behind one fuse: lists of them are longer
// than a page.
func oneFuse(lamps int) []byte {
	var b strings.Builder
	b.WriteString("fusewright: 1\ntitle: One fuse\nvehicle: none\nsystem: 12 V\npractice: off-road\n" +
		"battery: {chemistry: AGM, capacity: 20 Ah, at: deck}\nplaces: {deck: {ambient: 30 °C}}\nwire: {size: 1 mm²}\n" +
		"fuses: {all: {rating: 15 A, at: deck, fed by: battery}}\ngrounds: {stud: {kind: frame stud, at: deck}}\nloads:\n")
	for i := range lamps {
		fmt.Fprintf(&b, "  lamp%03d: {power: 200 mW, at: deck, fed by: all, returns to: stud}\n", i+1)
	}
	return []byte(b.String())
}

// TestLongRows: what a fuse feeds is named whole, though it fills more than a page.
func TestLongRows(t *testing.T) {
	r := reviewtest.Of(t, oneFuse(300))
	sheets := document.FuseCard(r)
	text := ""
	for _, s := range sheets {
		text += strings.ReplaceAll(textOf(t, s), "\n", " ")
	}
	for i := range 300 {
		if name := fmt.Sprintf("lamp%03d", i+1); !strings.Contains(text, name) {
			t.Errorf("the fuse card does not name %q", name)
		}
	}
	if len(sheets) < 2 || strings.Count(text, "15 A") != 1 {
		t.Errorf("%d sheets, the fuse stands %d times (expected once on several)", len(sheets), strings.Count(text, "15 A"))
	}
}

// pageMarginMM is the least free edge of a page: what printers leave white.
const pageMarginMM = 6.0

// TestTextsOfAllPages: on no page of the dossier does a text meet another, leave
// the page or fall under the least height.
func TestTextsOfAllPages(t *testing.T) {
	for name, r := range designs(t) {
		t.Run(name, func(t *testing.T) {
			doc := document.Dossier(r, "Dossier", dossierPapers(t, r))
			for i, s := range doc.Sheets {
				problems := scenetest.Texts(s, s.Frame().Grow(-pageMarginMM))
				for k, p := range problems {
					if k == 6 {
						t.Errorf("page %d, %s: and %d more", i+1, s.Title, len(problems)-k)
						break
					}
					t.Errorf("page %d, %s: %s", i+1, s.Title, p)
				}
			}
		})
	}
}

// TestNoOrphanHeading: below each heading of a page something stands in its column.
func TestNoOrphanHeading(t *testing.T) {
	const headMM, columnMM = 3.9, 80.0
	for name, r := range designs(t) {
		for i, s := range document.Dossier(r, "Dossier", dossierPapers(t, r)).Sheets {
			foot := s.HeightMM - 23
			for _, item := range s.Items {
				head := item.Text
				if head == nil || head.SizeMM != headMM || head.Face != scene.Bold {
					continue
				}
				followed := false
				for _, other := range s.Items {
					if o := other.Text; o != nil && o.At.Y > head.At.Y+0.5 && o.At.Y < foot && o.At.X > head.At.X-1 &&
						o.At.X < head.At.X+columnMM && (o.SizeMM != headMM || o.Face != scene.Bold) {
						followed = true
					}
				}
				if !followed {
					t.Errorf("%s, page %d: %q has nothing under it", name, i+1, head.String)
				}
			}
		}
	}
}

// TestDossier: pages are numbered over the whole, the contents lead to the first
// page of each section, numbers in tables lead to what a drawing shows, and the
// sheets given stay as they were.
func TestDossier(t *testing.T) {
	r := demo(t, "fen-runner.yaml")
	drawing := scene.NewSheet(297, 210, "Drawing")
	for _, id := range []string{"part-F1", "wire-W7"} {
		drawing.Begin(scene.Group{ID: id, Class: "part"})
		drawing.TextAt(scene.Point{X: 50, Y: 50}, id, scene.TextStyle{SizeMM: 3})
		drawing.End()
	}
	sections := append([]document.Section{{Title: "Drawing", Sheets: []*scene.Sheet{drawing}}, {Title: "Empty"}}, dossierPapers(t, r)...)
	items := len(drawing.Items)
	doc := document.Dossier(r, "Dossier", sections)
	if err := doc.Validate(); err != nil {
		t.Fatal(err)
	}
	if len(drawing.Items) != items || drawing.ID != "" {
		t.Error("the sheet given was changed")
	}
	links := map[string]int{}
	for i, s := range doc.Sheets {
		if want := fmt.Sprintf("dossier-page-%d", i+1); s.ID != want {
			t.Errorf("page %d has the ID %q, want %q", i+1, s.ID, want)
		}
		text := textOf(t, s)
		if want := fmt.Sprintf("dossier %d/%d", i+1, len(doc.Sheets)); !strings.Contains(text, want) {
			t.Errorf("page %d does not say %q", i+1, want)
		}
		if strings.Contains(text, "page 1 of 1") {
			t.Errorf("page %d of the dossier says that it is all there is", i+1)
		}
		for _, item := range s.Items {
			if item.Begin != nil {
				links[item.Begin.Link]++
			}
		}
	}
	page := 2
	front := textOf(t, doc.Sheets[0])
	for _, s := range sections {
		if len(s.Sheets) == 0 {
			if strings.Contains(front, s.Title+"\n") {
				t.Errorf("the contents name %q, which has no pages", s.Title)
			}
			continue
		}
		if !strings.Contains(front, s.Title+"\n") || links[fmt.Sprintf("dossier-page-%d", page)] == 0 {
			t.Errorf("the contents do not lead to %q on page %d", s.Title, page)
		}
		if got := doc.Sheets[page-1].Title; got != s.Title {
			t.Errorf("page %d is %q, want %q", page, got, s.Title)
		}
		page += len(s.Sheets)
	}
	if links["part-F1"] == 0 || links["wire-W7"] == 0 || links["dossier-page-1"] != len(doc.Sheets) {
		t.Errorf("links to part %d, to wire %d, to the contents %d of %d pages",
			links["part-F1"], links["wire-W7"], links["dossier-page-1"], len(doc.Sheets))
	}
}

// TestDossierSameBytes: the same design gives the same bytes.
func TestDossierSameBytes(t *testing.T) {
	var first, second bytes.Buffer
	for _, b := range []*bytes.Buffer{&first, &second} {
		r := demo(t, "reed-skiff.yaml")
		if err := pdf.Write(b, document.Dossier(r, "Dossier", dossierPapers(t, r))); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two runs give different bytes")
	}
}

// TestBenchSheets: every wire, fuse, load and block of the demo designs stands on
// the bench sheets, with the cautions before the first table.
func TestBenchSheets(t *testing.T) {
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		r := demo(t, name)
		var all strings.Builder
		for _, s := range document.Bench(r, bench.Make(r.Circuit)) {
			all.WriteString(textOf(t, s))
		}
		text := strings.ReplaceAll(all.String(), "\n", " ")
		for _, row := range cutting.List(r.Circuit) {
			if !strings.Contains(text, row.Number+" ") {
				t.Errorf("%s: wire %s is missing", name, row.Number)
			}
		}
		for _, b := range r.Circuit.Branches {
			if b.Fuse != nil && b.Fuse.Ref != "" && !strings.Contains(text, b.Fuse.Ref+" ") {
				t.Errorf("%s: fuse %s is missing", name, b.Fuse.Ref)
			}
		}
		for _, l := range r.Design.Loads {
			if !strings.Contains(text, l.Name) {
				t.Errorf("%s: load %s is missing", name, l.Name)
			}
		}
		if c, f := strings.Index(text, "Isolate the battery before the tests"), strings.Index(text, "continuity, plug by plug"); c < 0 || f < c {
			t.Errorf("%s: the cautions do not come first", name)
		}
	}
}

// TestLoadingShowsEveryWire: each wire has a bar, is hardly loaded or is said to have no
// limit.
func TestLoadingShowsEveryWire(t *testing.T) {
	r := reviewtest.Of(t, synth.YAML(90, 1))
	sheets, err := document.Loading(r)
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, s := range sheets {
		all.WriteString(textOf(t, s))
	}
	words := strings.FieldsFunc(all.String(), func(r rune) bool { return strings.ContainsRune(" \n,.", r) })
	for _, w := range r.Circuit.Wires {
		if !slices.Contains(words, w.Number) {
			t.Errorf("%s is missing", w.Number)
		}
	}
}

// TestProfilesShowEveryLoad: each load has a picture or is said to be never on.
func TestProfilesShowEveryLoad(t *testing.T) {
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		r := demo(t, name)
		sheets, err := document.Profiles(r)
		if err != nil {
			t.Fatal(err)
		}
		var all strings.Builder
		for _, s := range sheets {
			all.WriteString(textOf(t, s))
		}
		for _, l := range r.Design.Loads {
			if !strings.Contains(all.String(), l.Name) {
				t.Errorf("%s: %s is missing", name, l.Name)
			}
		}
	}
}

// BenchmarkDossier makes the papers of this package and the PDF of a harness of
// 40 wires, the review done.
func BenchmarkDossier(b *testing.B) {
	r := reviewtest.Of(b, synth.YAML(40, 1))
	pages := 0
	for b.Loop() {
		var out bytes.Buffer
		doc := document.Dossier(r, "Dossier", dossierPapers(b, r))
		if err := pdf.Write(&out, doc); err != nil {
			b.Fatal(err)
		}
		pages = len(doc.Sheets)
	}
	b.ReportMetric(float64(pages), "pages")
}
