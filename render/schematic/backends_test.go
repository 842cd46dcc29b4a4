package schematic

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

	"fusewright/render/pdf"
	"fusewright/render/png"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
	"fusewright/render/svg"
)

const lookDPI = 150

// maxLost is the share of inked pixels that may lack a like one beside them in
// the other picture; see package scene's own test.
const maxLost = 0.015

// viewers draw a sheet through a back-end and an outside program.
var viewers = []struct {
	name, program string
	draw          func(t *testing.T, sheet *scene.Sheet, dir string) string
}{
	{"SVG by rsvg-convert", "rsvg-convert", func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "sheet.png")
		save(t, in, func(b *bytes.Buffer) error { return svg.Write(b, sheet) })
		call(t, "rsvg-convert", "-d", fmt.Sprint(lookDPI), "-p", fmt.Sprint(lookDPI), "-o", out, in)
		return out
	}},
	{"SVG by chromium", "chromium", func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.svg"), filepath.Join(dir, "sheet.png")
		save(t, in, func(b *bytes.Buffer) error { return svg.Write(b, sheet) })
		size := fmt.Sprintf("--window-size=%.0f,%.0f", math.Round(sheet.WidthMM/25.4*96), math.Round(sheet.HeightMM/25.4*96))
		call(t, "chromium", "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", size,
			fmt.Sprintf("--force-device-scale-factor=%g", lookDPI/96.0), "--user-data-dir="+dir,
			"--screenshot="+out, "file://"+in)
		return out
	}},
	{"PDF by pdftocairo", "pdftocairo", func(t *testing.T, sheet *scene.Sheet, dir string) string {
		in, out := filepath.Join(dir, "sheet.pdf"), filepath.Join(dir, "sheet")
		save(t, in, func(b *bytes.Buffer) error { return pdf.WriteSheet(b, sheet) })
		call(t, "pdftocairo", "-r", fmt.Sprint(lookDPI), "-png", "-singlefile", in, out)
		return out + ".png"
	}},
}

// The sheets of the demo designs look the same in every back-end.
func TestBackendsShowTheSameSheets(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		sheets := planned(t, name, text, Options{}).paint()
		for i, sheet := range sheets {
			sheet = unlinked(sheet)
			ours, err := png.Draw(sheet, lookDPI)
			if err != nil {
				t.Fatal(err)
			}
			for _, v := range viewers {
				t.Run(fmt.Sprintf("%s sheet %d %s", name, i+1, v.name), func(t *testing.T) {
					scenetest.Need(t, v.program)
					theirs := open(t, v.draw(t, sheet, t.TempDir()))
					apart := ours.Bounds().Size().Sub(theirs.Bounds().Size())
					if apart.X*apart.X > 4 || apart.Y*apart.Y > 4 {
						t.Fatalf("size %v, ours %v", theirs.Bounds().Size(), ours.Bounds().Size())
					}
					lost := scenetest.Compare(ours, theirs)
					t.Logf("%.3f %% of the inked pixels differ", 100*lost)
					if lost > maxLost {
						t.Errorf("%.2f %% of the inked pixels differ (at most %.2f %%)", 100*lost, 100*maxLost)
					}
				})
			}
		}
	}
}

// unlinked is a sheet that can stand alone: its links lead to other sheets.
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

func save(t *testing.T, file string, to func(*bytes.Buffer) error) {
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
