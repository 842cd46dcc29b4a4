package scenetest

import (
	"bytes"
	"fmt"
	"image"
	stdpng "image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"fusewright/harness/proof/referencetest"
	"fusewright/render/pdf"
	"fusewright/render/png"
	"fusewright/render/scene"
	"fusewright/render/svg"
)

const dpi = 150

// maxLost is the share of inked pixels that may lack a like one beside them in
// the other picture. The worst measured is 1.51 %, the second and fourth sheet of a
// boat by rsvg-convert, which kerns pairs such as AV and knows neither
// font-kerning nor textLength: without their texts these sheets show 0.000 %.
// The other programs stay below 0.9 %.
const maxLost = 0.015

// viewer draws a sheet through a back-end and an outside program.
type viewer struct {
	name, program string
	apart         int // pixels by which the picture may be larger or smaller
	draw          func(t *testing.T, sheet *scene.Sheet, dir string) (file string)
}

var viewers = []viewer{
	{"SVG by rsvg-convert", "rsvg-convert", 1, func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "sheet.png")
		Save(t, in, func(b *bytes.Buffer) error { return svg.Write(b, sheet) })
		call(t, "rsvg-convert", "-d", fmt.Sprint(dpi), "-p", fmt.Sprint(dpi), "-o", out, in)
		return out
	}},
	{"SVG by chromium", "chromium", 2, func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "sheet.png")
		Save(t, in, func(b *bytes.Buffer) error { return svg.Write(b, sheet) })
		// A window has whole pixels of 1/96 inch.
		size := fmt.Sprintf("--window-size=%.0f,%.0f", math.Round(sheet.WidthMM/25.4*96), math.Round(sheet.HeightMM/25.4*96))
		call(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", size,
			fmt.Sprintf("--force-device-scale-factor=%g", dpi/96.0), "--user-data-dir="+dir,
			"--screenshot="+out, "file://"+in)
		return out
	}},
	{"PDF by pdftocairo", "pdftocairo", 1, func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.pdf"), filepath.Join(dir, "sheet")
		Save(t, in, func(b *bytes.Buffer) error { return pdf.Write(b, &scene.Document{Sheets: []*scene.Sheet{sheet}}) })
		call(t, "pdftocairo", "-r", fmt.Sprint(dpi), "-png", "-singlefile", in, out)
		return out + ".png"
	}},
}

// SamePicture draws a sheet through every back-end and compares the pictures that
// outside programs show with the PNG. Links to other sheets are left out.
func SamePicture(t *testing.T, sheet *scene.Sheet) {
	t.Helper()
	sheet = unlinked(sheet)
	ours, err := png.Draw(sheet, dpi)
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range viewers {
		t.Run(v.name, func(t *testing.T) {
			t.Parallel() // the programs mostly wait for their own start
			referencetest.Program(t, v.program)
			theirs := open(t, v.draw(t, sheet, t.TempDir()))
			apart := ours.Bounds().Size().Sub(theirs.Bounds().Size())
			if max(apart.X, -apart.X, apart.Y, -apart.Y) > v.apart {
				t.Fatalf("size %v, ours %v", theirs.Bounds().Size(), ours.Bounds().Size())
			}
			lost := Compare(ours, theirs)
			t.Logf("%.3f %% of the inked pixels differ", 100*lost)
			if lost > maxLost && (lost > mostLost || drawnLost(t, v, sheet) > mostDrawnLost) {
				t.Errorf("%.2f %% of the inked pixels differ (at most %.2f %%)", 100*lost, 100*maxLost)
			}
		})
	}
}

// mostLost is what texts alone may come to on a sheet full of them; what is drawn there
// must be the same then, to mostDrawnLost.
const mostLost, mostDrawnLost = 0.02, 0.0005

// drawnLost compares a sheet without its texts.
func drawnLost(t *testing.T, v viewer, sheet *scene.Sheet) float64 {
	t.Helper()
	drawn := *sheet
	drawn.Items = nil
	for _, item := range sheet.Items {
		if item.Text == nil {
			drawn.Items = append(drawn.Items, item)
		}
	}
	ours, err := png.Draw(&drawn, dpi)
	if err != nil {
		t.Fatal(err)
	}
	lost := Compare(ours, open(t, v.draw(t, &drawn, t.TempDir())))
	t.Logf("%.3f %% without texts", 100*lost)
	return lost
}

// unlinked is a sheet that can stand alone: its links may lead to other sheets.
func unlinked(s *scene.Sheet) *scene.Sheet {
	alone := *s
	alone.Items = nil
	for _, item := range s.Items {
		if item.Begin != nil {
			g := *item.Begin
			g.Link = ""
			item.Begin = &g
		}
		alone.Items = append(alone.Items, item)
	}
	return &alone
}

// Save writes what a back-end makes to a file.
func Save(t *testing.T, file string, to func(*bytes.Buffer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := to(&b); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

func call(t *testing.T, program string, args ...string) {
	t.Helper()
	if out, err := exec.Command(program, args...).CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", program, err, out)
	}
}

func open(t *testing.T, file string) image.Image {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	picture, err := stdpng.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	return picture
}
