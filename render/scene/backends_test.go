package scene_test

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/referencetest"
	"fusewright/render/pdf"
	"fusewright/render/png"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
	"fusewright/render/svg"
)

func TestBackendsShowTheSamePicture(t *testing.T) {
	for _, sheet := range scenetest.Sheets() {
		name, _, _ := strings.Cut(sheet.Title, " ")
		t.Run(name, func(t *testing.T) { scenetest.SamePicture(t, sheet) })
	}
}

// TestCompareSeesADifference guards the comparison itself: a line moved by half
// a millimetre must not pass.
func TestCompareSeesADifference(t *testing.T) {
	draw := func(y float64) image.Image {
		s := scene.NewSheet(40, 20, "")
		s.Line(scene.Point{X: 2, Y: y}, scene.Point{X: 38, Y: y}, scene.Pen(0.25))
		picture, err := png.Draw(s, 150)
		if err != nil {
			t.Fatal(err)
		}
		return picture
	}
	if lost := scenetest.Compare(draw(10), draw(10)); lost != 0 {
		t.Errorf("same picture: %g", lost)
	}
	if lost := scenetest.Compare(draw(10), draw(10.5)); lost < 0.5 {
		t.Errorf("line moved by 0.5 mm: only %g of the pixels differ", lost)
	}
}

func TestPDFHoldsFontsAndWords(t *testing.T) {
	referencetest.Program(t, "pdffonts")
	referencetest.Program(t, "pdftotext")
	file := filepath.Join(t.TempDir(), "all.pdf")
	scenetest.Save(t, file, func(b *bytes.Buffer) error { return pdf.Write(b, document()) })

	fonts := strings.Split(strings.TrimSpace(run(t, "pdffonts", file)), "\n")[2:]
	if len(fonts) != len(scene.Faces) {
		t.Errorf("%d fonts, want %d:\n%s", len(fonts), len(scene.Faces), strings.Join(fonts, "\n"))
	}
	for _, font := range fonts {
		// Columns: name, type (two words), encoding, embedded, subset, unicode.
		columns := strings.Fields(font)
		if got := strings.Join(columns[len(columns)-5:len(columns)-2], " "); got != "yes yes yes" {
			t.Errorf("font not embedded, not a subset or without Unicode map: %s", font)
		}
	}
	text := run(t, "pdftotext", "-layout", file, "-")
	for _, word := range scenetest.Words {
		if !strings.Contains(text, word) {
			t.Errorf("pdftotext does not find %q", word)
		}
	}
}

func TestPDFIsSound(t *testing.T) {
	referencetest.Program(t, "qpdf")
	file := filepath.Join(t.TempDir(), "all.pdf")
	scenetest.Save(t, file, func(b *bytes.Buffer) error { return pdf.Write(b, document()) })
	run(t, "qpdf", "--check", file)
	outline := run(t, "qpdf", "--json", "--json-key=outlines", file)
	for _, title := range []string{"Lines", "Areas", "Texts"} {
		if !strings.Contains(outline, `"`+title+`"`) {
			t.Errorf("no bookmark %q in %s", title, outline)
		}
	}
}

func document() *scene.Document {
	return &scene.Document{
		Title: "All sheets Ω", Author: "nobody", Subject: "conformance", Sheets: scenetest.Sheets(),
	}
}

// TestSameBytes draws in fresh processes, because the order of Go's maps is
// drawn anew in each.
func TestSameBytes(t *testing.T) {
	if os.Getenv("SCENE_PRINT_SUMS") != "" {
		fmt.Println("sums", sums(t))
		return
	}
	want := sums(t)
	for range 20 {
		again := exec.Command(os.Args[0], "-test.run=^TestSameBytes$")
		again.Env = append(os.Environ(), "SCENE_PRINT_SUMS=1")
		out, err := again.Output()
		if err != nil {
			t.Fatal(err)
		}
		if got, _, _ := strings.Cut(string(out), "\n"); got != "sums "+want {
			t.Fatalf("a fresh process gives other bytes:\n%s\nwant\nsums %s", got, want)
		}
	}
}

func sums(t *testing.T) string {
	var all bytes.Buffer
	var line []string
	add := func(name string, err error) {
		if err != nil {
			t.Fatal(err)
		}
		line = append(line, fmt.Sprintf("%s %x", name, sha256.Sum256(all.Bytes())))
		all.Reset()
	}
	for _, sheet := range scenetest.Sheets() {
		add("svg", svg.Write(&all, sheet))
		add("png", png.Write(&all, sheet, 72))
	}
	add("pdf", pdf.Write(&all, document()))
	return strings.Join(line, " ")
}

func run(t *testing.T, program string, args ...string) string {
	t.Helper()
	var problems bytes.Buffer
	command := exec.Command(program, args...)
	command.Stderr = &problems
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, problems.String())
	}
	return string(out)
}
