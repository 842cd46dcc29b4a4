package dxf

import (
	"bytes"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/fuzztest"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
)

var update = flag.Bool("update", false, "rewrite the expected drawings")

func write(t testing.TB, s *scene.Sheet) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t testing.TB, s *scene.Sheet) *file {
	t.Helper()
	f, err := parse(write(t, s))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Every sheet of the conformance suite reads back: names used are declared,
// everything lies where the sheet has it, all words are there.
func TestSheetsReadBack(t *testing.T) {
	for _, s := range scenetest.Sheets() {
		t.Run(s.Title, func(t *testing.T) {
			f := read(t, s)
			if v := f.header["$ACADVER"]; len(v) != 1 || v[0].value != "AC1009" {
				t.Errorf("release %v", v)
			}
			checkNames(t, f)
			checkPlaces(t, s, f)
			checkWords(t, s, f)
			if !bytes.Equal(write(t, s), write(t, s)) {
				t.Error("two writings differ")
			}
		})
	}
}

func checkNames(t *testing.T, f *file) {
	t.Helper()
	known := map[string]bool{}
	for table, code := range map[string]int{"LAYER": 8, "LTYPE": 6, "STYLE": 7} {
		for _, r := range f.tables[table] {
			known[table+r.first(2)] = true
		}
		for _, e := range f.entities {
			if name := e.first(code); name != "" && !known[table+name] {
				t.Errorf("%s %q of a %s is not declared", table, name, e.kind)
			}
		}
	}
	open := false
	for _, e := range f.entities {
		switch e.kind {
		case "POLYLINE":
			open = true
		case "SEQEND":
			open = false
		case "VERTEX":
			if !open {
				t.Fatal("vertex outside a polyline")
			}
		}
	}
	if open {
		t.Error("polyline without an end")
	}
}

// checkPlaces: the box of the file is the box of the sheet's paths, y upwards.
// Control points lie outside their curves, so arcs give a box a little smaller.
func checkPlaces(t *testing.T, s *scene.Sheet, f *file) {
	t.Helper()
	var want, got scene.Rect
	for _, item := range s.Items {
		if p := item.Path; p != nil && (p.Stroke != nil || p.Fill != nil && p.Fill.Colour != (scene.RGB{R: 255, G: 255, B: 255})) {
			bare := *p
			bare.Stroke = nil
			want = want.Union(bare.Bounds())
		}
	}
	for _, e := range f.entities {
		if e.kind == "TEXT" || e.kind == "POLYLINE" {
			continue
		}
		for _, p := range e.points(t) {
			got = got.Union(scene.Rect{X: p.X, Y: s.HeightMM - p.Y, W: 1e-9, H: 1e-9})
		}
	}
	const slack = 0.6 // mm, of control points beyond the arcs of these sheets
	if math.Abs(want.X-got.X) > slack || math.Abs(want.Y-got.Y) > slack ||
		math.Abs(want.Right()-got.Right()) > slack || math.Abs(want.Bottom()-got.Bottom()) > slack {
		t.Errorf("box %v, want %v", got, want)
	}
}

func checkWords(t *testing.T, s *scene.Sheet, f *file) {
	t.Helper()
	var want, got []string
	for _, item := range s.Items {
		if item.Text != nil && scene.Clean(item.Text.String) != "" {
			want = append(want, scene.Clean(item.Text.String))
		}
	}
	for _, e := range f.entities {
		if e.kind == "TEXT" {
			got = append(got, shown(e.first(1)))
		}
	}
	if strings.Join(want, "\n") != strings.Join(got, "\n") {
		t.Errorf("texts %q\nwant %q", got, want)
	}
}

// A small sheet, group by group.
func TestGolden(t *testing.T) {
	s := scene.NewSheet(60, 40, "Small")
	pen := scene.Pen(0.5)
	s.Begin(scene.Group{ID: "w1", Class: "wire"})
	s.Line(scene.Point{X: 5, Y: 5}, scene.Point{X: 30, Y: 5}, pen.Dashed(2, 1))
	s.Polyline([]scene.Point{{X: 5, Y: 10}, {X: 30, Y: 10}, {X: 30, Y: 20}}, pen.In(scene.RGB{R: 255}))
	s.End()
	s.Begin(scene.Group{Class: "part"})
	s.Rect(scene.Rect{X: 40, Y: 5, W: 10, H: 5}, &pen, scene.Paint(scene.RGB{R: 0xC0, G: 0xC0, B: 0xC0}))
	s.TextAt(scene.Point{X: 45, Y: 20}, "R1 4.7 Ω 20 °C", scene.TextStyle{SizeMM: 3, Align: scene.Middle, Turn: 90})
	s.End()
	golden(t, "testdata/small.dxf", write(t, s))
}

func golden(t *testing.T, file string, got []byte) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) {
		t.Errorf("%s differs:\n%s", file, got)
	}
}

// Every point of a flattened circle lies within the tolerance, and so does the
// middle of every straight piece.
func TestCirclesStayRound(t *testing.T) {
	for _, radius := range []float64{0.4, 3, 60, 400} {
		s := scene.NewSheet(1000, 1000, "Circle")
		centre := scene.Point{X: 500, Y: 500}
		pen := scene.Pen(0.2)
		s.Circle(centre, radius, &pen, nil)
		var ring []scene.Point
		for _, e := range read(t, s).entities {
			if e.kind == "VERTEX" {
				ring = append(ring, e.points(t)...)
			}
		}
		if len(ring) < 8 {
			t.Fatalf("radius %g: %d points", radius, len(ring))
		}
		// A cubic is within 0.03 % of the circle it stands for.
		slack := ToleranceMM + 3e-4*radius + 1e-4
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			mid := scene.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
			if off := math.Abs(distance(p, centre) - radius); off > slack {
				t.Fatalf("radius %g: a point %g mm off", radius, off)
			}
			if off := math.Abs(distance(mid, centre) - radius); off > slack {
				t.Fatalf("radius %g: a chord %g mm off", radius, off)
			}
		}
	}
}

// Triangles of an area add up to it.
func TestTrianglesFillTheArea(t *testing.T) {
	for _, c := range []struct {
		name   string
		points []scene.Point
		want   float64
	}{
		{"square", []scene.Point{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 0, Y: 4}}, 16},
		{"square the other way", []scene.Point{{X: 0, Y: 4}, {X: 4, Y: 4}, {X: 4, Y: 0}, {X: 0, Y: 0}}, 16},
		{"arrow head", []scene.Point{{X: 0, Y: 0}, {X: 4, Y: 2}, {X: 0, Y: 4}, {X: 1, Y: 2}}, 6},
		{"with a point in line", []scene.Point{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 4}}, 8},
		{"comb", []scene.Point{{X: 0, Y: 0}, {X: 5, Y: 0}, {X: 5, Y: 3}, {X: 4, Y: 3}, {X: 4, Y: 1}, {X: 3, Y: 1},
			{X: 3, Y: 3}, {X: 2, Y: 3}, {X: 2, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: 3}, {X: 0, Y: 3}}, 11},
	} {
		triangles, ok := triangulate(c.points)
		sum := 0.0
		for _, tr := range triangles {
			sum += cross(tr[0], tr[1], tr[2]) / 2
		}
		if !ok || math.Abs(sum-c.want) > 1e-9 {
			t.Errorf("%s: %g mm² in %d triangles (%v), want %g", c.name, sum, len(triangles), ok, c.want)
		}
	}
}

func TestCrossedOutlineKeepsItsLine(t *testing.T) {
	s := scene.NewSheet(50, 50, "Ring")
	p := scene.Path{Fill: scene.Paint(scene.RGB{R: 200})}
	for _, corner := range []float64{5, 10} { // a square with a square hole
		p.MoveTo(scene.Point{X: corner, Y: corner})
		p.LineTo(scene.Point{X: 40 - corner, Y: corner})
		p.LineTo(scene.Point{X: 40 - corner, Y: 40 - corner})
		p.LineTo(scene.Point{X: corner, Y: 40 - corner})
		p.Close()
	}
	s.Path(p)
	kinds := map[string]int{}
	for _, e := range read(t, s).entities {
		kinds[e.kind]++
	}
	if kinds["SOLID"] != 0 || kinds["POLYLINE"] != 2 || kinds["VERTEX"] != 8 {
		t.Errorf("entities %v, want two outlines of four corners", kinds)
	}
}

func TestEscape(t *testing.T) {
	for text, want := range map[string]string{
		"20 °C":           "20 %%dC",
		"±5 %":            "%%p5 %",
		"1.5 mm²":         `1.5 mm\U+00B2`,
		"4.7 Ω":           `4.7 \U+03A9`,
		"%%d":             `\U+0025\U+0025d`,
		`C:\U+0041`:       `C:\U+005CU+0041`,
		"^J":              `\U+005EJ`,
		"5%°":             `5\U+0025%%d`,
		"a\nb\x1b[2J\x00": "a b [2J ",
	} {
		if got := Escape(text); got != want {
			t.Errorf("Escape(%q) = %q, want %q", text, got, want)
		}
		if back := shown(Escape(text)); back != scene.Clean(text) {
			t.Errorf("%q is shown as %q", text, back)
		}
	}
}

func FuzzEscape(f *testing.F) {
	f.Add(scenetest.Hostile)
	f.Add("%%c%%%°%d ^ \\U+00B0")
	f.Fuzz(func(t *testing.T, text string) {
		fuzztest.Within(t, func() {
			got := Escape(text)
			for i := range len(got) {
				if got[i] < ' ' || got[i] > '~' {
					t.Fatalf("%q gives byte %#x", text, got[i])
				}
			}
			if back := shown(got); back != scene.Clean(text) {
				t.Fatalf("%q is shown as %q, want %q", text, back, scene.Clean(text))
			}
		})
	})
}

func TestColours(t *testing.T) {
	for want, c := range map[int]scene.RGB{
		7: scene.Ink, 1: {R: 255}, 3: {G: 255}, 5: {B: 255}, 9: {R: 192, G: 192, B: 192},
	} {
		if got := colourNumber(c); got != want {
			t.Errorf("%v has number %d, want %d", c, got, want)
		}
	}
}

func TestBadSheetWritesNothing(t *testing.T) {
	s := scene.NewSheet(50, 50, "Bad")
	s.Line(scene.Point{X: math.NaN()}, scene.Point{X: 5}, scene.Pen(0.2))
	var b bytes.Buffer
	if err := Write(&b, s); err == nil || b.Len() > 0 {
		t.Errorf("error %v, %d bytes", err, b.Len())
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestWriteErrorIsTold(t *testing.T) {
	if err := Write(failing{}, scenetest.Sheets()[0]); err != io.ErrClosedPipe {
		t.Errorf("error %v", err)
	}
}

func ExampleWrite() {
	s := scene.NewSheet(100, 50, "Board")
	s.Begin(scene.Group{Class: "board"})
	s.Line(scene.Point{X: 10, Y: 10}, scene.Point{X: 90, Y: 10}, scene.Pen(0.5))
	s.End()
	if err := Write(io.Discard, s); err != nil {
		panic(err)
	}
	// Output:
}

func BenchmarkWrite2000(b *testing.B) {
	s := scenetest.Crowded(2000)
	for b.Loop() {
		if err := Write(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
