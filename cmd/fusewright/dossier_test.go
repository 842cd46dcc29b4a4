package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/synth"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/scene/scenetest"
)

// TestDossierOfDemos binds every paper of the demo designs: each section has
// pages, every link leads somewhere, part numbers lead to the schematic, and the
// dossier's page number meets no other text, on framed sheets either.
func TestDossierOfDemos(t *testing.T) {
	for _, name := range demos {
		r, all := drawnOf(t, name)
		sections := sectionsOf(r, all, "")
		for _, s := range sections {
			if len(s.Sheets) == 0 {
				t.Errorf("%s: %s has no pages", name, s.Title)
			}
		}
		doc := document.Dossier(r, "Dossier", sections)
		if err := doc.Validate(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		toParts := 0
		for i, s := range doc.Sheets {
			for _, problem := range scenetest.Texts(s, s.Frame().Grow(-5)) {
				if strings.Contains(problem, `"dossier `) {
					t.Errorf("%s, page %d: %s", name, i+1, problem)
				}
			}
			for _, item := range s.Items {
				if item.Begin != nil && strings.HasPrefix(item.Begin.Link, "part-") {
					toParts++
				}
			}
		}
		if toParts < len(r.Circuit.Parts) {
			t.Errorf("%s: only %d links to %d parts", name, toParts, len(r.Circuit.Parts))
		}
	}
}

// TestDossierIsSound opens the dossier with qpdf and finds its words with pdftotext.
func TestDossierIsSound(t *testing.T) {
	referencetest.Program(t, "qpdf")
	referencetest.Program(t, "pdftotext")
	var b bytes.Buffer
	r, all := drawnOf(t, demos[0])
	if err := writeDossier(r, all, "")(&b); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "dossier.pdf")
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command("qpdf", "--check", file).CombinedOutput(); err != nil {
		t.Errorf("qpdf: %v\n%s", err, out)
	}
	text, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Three numbers that matter", "Contents", "Cautions", "dossier 1/", "Bench test", "°C", "mΩ", "Sources"} {
		if !bytes.Contains(text, []byte(want)) {
			t.Errorf("pdftotext does not find %q", want)
		}
	}
}

// BenchmarkDossier40 makes every paper of a harness of 40 wires and the PDF of
// all, the review done and the graph engine warm.
func BenchmarkDossier40(b *testing.B) {
	r := review(b, synth.YAML(40, 1))
	pages := 0
	for b.Loop() {
		all := papersOf(b, r)
		doc := document.Dossier(r, "Dossier", sectionsOf(r, all, ""))
		var out bytes.Buffer
		if err := pdf.Write(&out, doc); err != nil {
			b.Fatal(err)
		}
		pages = len(doc.Sheets)
	}
	b.ReportMetric(float64(pages), "pages")
}
