package symbol

import (
	"bytes"
	"maps"
	"math"
	"os"
	"strings"
	"testing"

	"fusewright/render/scene"
	"fusewright/render/svg"
)

// catalogue draws every symbol of a set with its name on one sheet.
func catalogue(set *Set) *scene.Sheet {
	sheet := scene.NewSheet(210, 200, "symbols")
	for i, k := range set.Kinds() {
		s := set.Symbol(k)
		at := scene.Point{X: 12.5 + float64(i%6)*32.5, Y: 20 + float64(i/6)*25}
		s.Draw(NewPen(sheet, at), "NAV")
		sheet.TextAt(scene.Point{X: at.X - 5, Y: at.Y + 16}, string(k), scene.TextStyle{SizeMM: 2.4})
	}
	return sheet
}

// SYMBOL_SHEET=NAME writes the catalogue of each set for looking at.
func TestCatalogue(t *testing.T) {
	for _, set := range []*Set{IEC(), IEEE()} {
		var out bytes.Buffer
		if err := svg.Write(&out, catalogue(set)); err != nil {
			t.Fatal(err)
		}
		if name := os.Getenv("SYMBOL_SHEET"); name != "" {
			if err := os.WriteFile(name+" "+set.Name()+".svg", out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// Every symbol keeps to the grid and to its box, and no line is too thin.
func TestSymbolsKeepToTheGrid(t *testing.T) {
	for _, set := range []*Set{IEC(), IEEE()} {
		for _, k := range set.Kinds() {
			t.Run(set.Name()+" "+string(k), func(t *testing.T) { checkSymbol(t, k, set.Symbol(k)) })
		}
	}
}

func checkSymbol(t *testing.T, k Kind, s *Symbol) {
	if s.Kind != k {
		t.Fatalf("kind %q", s.Kind)
	}
	box := scene.Rect{X: s.Body.X * M, Y: s.Body.Y * M, W: s.Body.W * M, H: s.Body.H * M}
	sheet := scene.NewSheet(50, 50, "")
	s.Draw(NewPen(sheet, scene.Point{}), "NAV")
	for _, item := range sheet.Items {
		// Half a line width may stand over.
		if r := item.Bounds(); !box.Grow(0.7).Contains(r) {
			t.Errorf("drawn %v outside the body %v", r, box)
		}
		if item.Path != nil && item.Path.Stroke != nil && item.Path.Stroke.WidthMM < 0.25 {
			t.Errorf("line of %v mm", item.Path.Stroke.WidthMM)
		}
		if item.Text != nil && scene.CapHeightMM(item.Text.SizeMM, item.Text.Face) < 2 {
			t.Errorf("text of %v mm", item.Text.SizeMM)
		}
	}
}

// ends are the points on the grid at the edges of a symbol's body that its drawing
// touches: where conductors go on.
func ends(s *Symbol) map[scene.Point]bool {
	sheet := scene.NewSheet(50, 50, "")
	s.Draw(NewPen(sheet, scene.Point{}), "")
	found := map[scene.Point]bool{}
	for _, item := range sheet.Items {
		if item.Path == nil {
			continue
		}
		for _, q := range item.Path.Points {
			q.X, q.Y = q.X/M, q.Y/M
			if (q.X == s.Body.X || q.X == s.Body.Right()) && q.X == math.Round(q.X) && q.Y == math.Round(q.Y) {
				found[q] = true
			}
		}
	}
	return found
}

// Both sets have every kind, with the same body and the same ends of conductors, so
// that either fits a layout.
func TestSetsFitTheSameLayout(t *testing.T) {
	for _, k := range IEC().Kinds() {
		a, b := IEC().Symbol(k), IEEE().Symbol(k)
		if b.Kind != k || a.Body.W != b.Body.W || !maps.Equal(ends(a), ends(b)) {
			t.Errorf("%s: %v %v and %v %v", k, a.Body, ends(a), b.Body, ends(b))
		}
	}
	if got := ends(IEC().Symbol(Changeover)); !got[scene.Point{X: 4, Y: -2}] || !got[scene.Point{X: 4}] || !got[scene.Point{}] {
		t.Errorf("conductors of the changeover contact end at %v", got)
	}
}

func TestUnknownKind(t *testing.T) {
	if got := IEC().Symbol("unheard of").Kind; got != Electronics {
		t.Errorf("unknown kind gives %q", got)
	}
	if !strings.Contains(IEC().Name(), "60617") {
		t.Error(IEC().Name())
	}
}
