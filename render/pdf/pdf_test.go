package pdf_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"

	"fusewright/harness/proof/referencetest"
	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
)

// TestWidthsAgainstCoreFont compares every printable ASCII letter with the
// widths of Adobe's Core 14 font Helvetica, which gofpdf carries, and to which
// the embedded family is made equal.
func TestWidthsAgainstCoreFont(t *testing.T) {
	core := gofpdf.New("P", "mm", "A4", "")
	for face, style := range map[scene.Face]string{scene.Regular: "", scene.Bold: "B", scene.Italic: "I"} {
		core.SetFont("Helvetica", style, 10)
		core.SetFontUnitSize(100)
		for r := ' '; r <= '~'; r++ {
			got, want := scene.TextWidthMM(string(r), 100, face), core.GetStringWidth(string(r))
			// The table has thousandths of the size; the quotes and the bar
			// are drawn differently in the two families.
			if !strings.ContainsRune("'\"|`", r) && math.Abs(got-want) > 0.1 {
				t.Errorf("face %d, %q: %.2f, want %.2f", face, r, got, want)
			}
		}
	}
}

// mixed is a document of pages of different sizes with a link on each.
func mixed() *scene.Document {
	d := &scene.Document{Title: "Mixed 680 Ω", Author: "A. Nobody", Subject: "sizes", Date: time.Date(2024, 5, 6, 0, 0, 0, 0, time.UTC)}
	for i, size := range [][2]float64{{210, 297}, {420, 297}, {100, 50}} {
		s := scene.NewSheet(size[0], size[1], fmt.Sprintf("Page %d Ω", i+1))
		s.ID = fmt.Sprintf("page-%d", i+1)
		s.Begin(scene.Group{ID: "link", Link: fmt.Sprintf("page-%d", 3-i)})
		s.TextAt(scene.Point{X: 10, Y: 20}, "to the other", scene.TextStyle{SizeMM: 4})
		s.End()
		s.Begin(scene.Group{ID: fmt.Sprintf("low-%d", i+1), Link: "low-2"})
		s.TextAt(scene.Point{X: 10, Y: 40}, "to the low one", scene.TextStyle{SizeMM: 4})
		s.End()
		d.Sheets = append(d.Sheets, s)
	}
	return d
}

func TestPagesBookmarksLinks(t *testing.T) {
	referencetest.Program(t, "qpdf")
	referencetest.Program(t, "pdfinfo")
	file := filepath.Join(t.TempDir(), "mixed.pdf")
	var b bytes.Buffer
	if err := pdf.Write(&b, mixed()); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	info := output(t, "pdfinfo", "-l", "3", file)
	for _, want := range []string{
		"Mixed 680 Ω", "A. Nobody", "sizes", "2024", "Pages:           3",
		"1 size:  595.28 x 841.89", "2 size:  1190.55 x 841.89", "3 size:  283.46 x 141.73",
	} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo does not tell %q:\n%s", want, info)
		}
	}
	checkOutline(t, file)
	output(t, "qpdf", "--check", file)
}

// checkOutline demands a bookmark per sheet that leads to the top of its page.
func checkOutline(t *testing.T, file string) {
	t.Helper()
	var parsed struct {
		Outlines []struct {
			Title string
			Dest  []any
			Page  int `json:"destpageposfrom1"`
		}
	}
	if err := json.Unmarshal([]byte(output(t, "qpdf", "--json", "--json-key=outlines", file)), &parsed); err != nil {
		t.Fatal(err)
	}
	heights := []float64{297, 297, 50}
	if len(parsed.Outlines) != len(heights) {
		t.Fatalf("%d bookmarks", len(parsed.Outlines))
	}
	for i, mark := range parsed.Outlines {
		want := heights[i] * 72 / 25.4
		top, _ := mark.Dest[3].(float64)
		if mark.Page != i+1 || mark.Title != fmt.Sprintf("u:Page %d Ω", i+1) && mark.Title != fmt.Sprintf("Page %d Ω", i+1) || math.Abs(top-want) > 0.1 {
			t.Errorf("bookmark %d: %+v, want page %d at %.2f", i, mark, i+1, want)
		}
	}
}

func TestLinksLeadToTheirPages(t *testing.T) {
	var b bytes.Buffer
	if err := pdf.Write(&b, mixed()); err != nil {
		t.Fatal(err)
	}
	file := b.String()
	if got := strings.Count(file, "/Subtype /Link"); got != 6 {
		t.Errorf("%d links, want 6", got)
	}
	// gofpdf numbers page n as object 1+2n.
	for page, want := range map[int]int{1: 1, 2: 1 + 3, 3: 1} {
		if got := strings.Count(file, fmt.Sprintf("/Dest [%d 0 R /XYZ 0 ", 1+2*page)) - 1; got != want {
			t.Errorf("%d links to page %d, want %d", got, page, want)
		}
	}
}

func TestRefusals(t *testing.T) {
	broken := scene.NewSheet(50, 50, "")
	broken.End()
	for name, d := range map[string]*scene.Document{
		"no sheets":   {},
		"nil sheet":   {Sheets: []*scene.Sheet{nil}},
		"broken":      {Sheets: []*scene.Sheet{broken}},
		"many sheets": {Sheets: make([]*scene.Sheet, 3)},
	} {
		var b bytes.Buffer
		if err := pdf.Write(&b, d); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", name, err, b.Len())
		}
	}
}

func output(t *testing.T, program string, args ...string) string {
	t.Helper()
	out, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, out)
	}
	return string(out)
}

func BenchmarkWrite2000(b *testing.B) {
	sheet := scenetest.Crowded(2000)
	for b.Loop() {
		if err := pdf.Write(io.Discard, &scene.Document{Sheets: []*scene.Sheet{sheet}}); err != nil {
			b.Fatal(err)
		}
	}
}
