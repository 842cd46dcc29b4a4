package scene_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/render/scene"
)

// TestWidths compares with the widths of Adobe's Core 14 font metrics, to which
// the embedded family is made metrically equal (Helvetica.afm and
// Helvetica-Bold.afm, in thousandths of the size; from memory).
func TestWidths(t *testing.T) {
	for _, test := range []struct {
		text string
		face scene.Face
		want float64
	}{
		{"0", scene.Regular, 556}, {"W", scene.Regular, 944}, {"i", scene.Regular, 222},
		{" ", scene.Regular, 278}, {"m", scene.Regular, 833}, {"@", scene.Regular, 1015},
		{"0", scene.Bold, 556}, {"W", scene.Bold, 944}, {"i", scene.Bold, 278}, {"m", scene.Bold, 889},
		{"0Wi", scene.Regular, 556 + 944 + 222},
	} {
		if got := scene.TextWidthMM(test.text, 1000, test.face); math.Abs(got-test.want) > 1.5 {
			t.Errorf("width of %q in face %d: %.1f, want %.0f", test.text, test.face, got, test.want)
		}
	}
	if w := scene.TextWidthMM("漢", 10, scene.Regular); w != scene.TextWidthMM("□", 10, scene.Regular) {
		t.Errorf("a rune without a glyph is %g wide, not as wide as its replacement", w)
	}
}

func TestMetrics(t *testing.T) {
	for _, face := range scene.Faces {
		up, cap := scene.AscentMM(1, face), scene.CapHeightMM(1, face)
		if !(up > cap && cap > 0.65 && cap < 0.75 && scene.DescentMM(1, face) > 0.15) {
			t.Errorf("face %d: ascent %g, capitals %g, descent %g", face, up, cap, scene.DescentMM(1, face))
		}
	}
}

func TestTextBox(t *testing.T) {
	width := scene.TextWidthMM("turned", 3, scene.Regular)
	up, down := scene.AscentMM(3, scene.Regular), scene.DescentMM(3, scene.Regular)
	for _, test := range []struct {
		turn  float64
		align scene.Align
		want  scene.Rect
	}{
		{0, scene.Left, scene.Rect{X: 10, Y: 20 - up, W: width, H: up + down}},
		{0, scene.Middle, scene.Rect{X: 10 - width/2, Y: 20 - up, W: width, H: up + down}},
		{0, scene.Right, scene.Rect{X: 10 - width, Y: 20 - up, W: width, H: up + down}},
		{90, scene.Left, scene.Rect{X: 10 - up, Y: 20 - width, W: up + down, H: width}},
		{-90, scene.Left, scene.Rect{X: 10 - down, Y: 20, W: up + down, H: width}},
		{180, scene.Left, scene.Rect{X: 10 - width, Y: 20 - down, W: width, H: up + down}},
		{450, scene.Right, scene.Rect{X: 10 - up, Y: 20, W: up + down, H: width}},
	} {
		got := scene.TextBox(scene.Text{At: scene.Point{X: 10, Y: 20}, String: "turned", SizeMM: 3, Turn: test.turn, Align: test.align})
		if math.Abs(got.X-test.want.X)+math.Abs(got.Y-test.want.Y)+math.Abs(got.W-test.want.W)+math.Abs(got.H-test.want.H) > 1e-9 {
			t.Errorf("turn %g, align %d: %+v, want %+v", test.turn, test.align, got, test.want)
		}
	}
}

func TestFitting(t *testing.T) {
	const text = "the quick brown fox jumps over averyveryverylongword\nand a second line"
	for _, width := range []float64{0, 1, 5, 12, 30, 80, 1000} {
		short := scene.Ellipsis(text, 3, width, scene.Regular)
		if scene.TextWidthMM(short, 3, scene.Regular) > width+1e-9 {
			t.Errorf("Ellipsis to %g mm is too wide: %q", width, short)
		}
		lines := scene.Wrap(text, 3, width, scene.Regular)
		for _, line := range lines {
			if width >= 3 && scene.TextWidthMM(line, 3, scene.Regular) > width+1e-9 {
				t.Errorf("Wrap to %g mm is too wide: %q", width, line)
			}
		}
		if got, want := strings.Join(strings.Fields(strings.Join(lines, "")), ""), strings.Join(strings.Fields(text), ""); got != want {
			t.Errorf("Wrap to %g mm lost letters: %q", width, got)
		}
	}
	if got := scene.Wrap("", 3, 10, scene.Regular); len(got) != 1 || got[0] != "" {
		t.Errorf("Wrap of nothing: %q", got)
	}
	if got := scene.FitSizeMM("0000000000", 10, 1, 27.8, scene.Regular); math.Abs(got-5) > 0.01 {
		t.Errorf("FitSizeMM = %g, want 5", got)
	}
}

func TestBounds(t *testing.T) {
	s := scene.NewSheet(100, 100, "")
	if got := s.Bounds(); got != (scene.Rect{}) {
		t.Errorf("empty sheet: %+v", got)
	}
	s.Circle(scene.Point{X: 50, Y: 50}, 10, nil, scene.Paint(scene.Ink))
	if got, want := s.Bounds(), (scene.Rect{X: 40, Y: 40, W: 20, H: 20}); math.Abs(got.X-want.X)+math.Abs(got.W-want.W) > 1e-9 {
		t.Errorf("circle: %+v, want %+v", got, want)
	}
	s.Line(scene.Point{X: 10, Y: 20}, scene.Point{X: 90, Y: 20}, scene.Pen(2))
	if got, want := s.Bounds(), (scene.Rect{X: 9, Y: 19, W: 82, H: 41}); got != want {
		t.Errorf("with line: %+v, want %+v", got, want)
	}
}

// TestArcIsRound holds every point of drawn arcs against the circle.
func TestArcIsRound(t *testing.T) {
	s := scene.NewSheet(100, 100, "")
	s.Arc(scene.Point{X: 50, Y: 50}, 20, 30, 300, scene.Pen(1))
	points := s.Items[0].Path.Points
	for i := 0; i+3 < len(points); i += 3 {
		for u := 0.0; u <= 1; u += 0.05 {
			v := 1 - u
			x := v*v*v*points[i].X + 3*v*v*u*points[i+1].X + 3*v*u*u*points[i+2].X + u*u*u*points[i+3].X
			y := v*v*v*points[i].Y + 3*v*v*u*points[i+1].Y + 3*v*u*u*points[i+2].Y + u*u*u*points[i+3].Y
			if r := math.Hypot(x-50, y-50); math.Abs(r-20) > 0.0003*20 {
				t.Errorf("radius %g at piece %d, %g", r, i/3, u)
			}
		}
	}
}

func TestValidate(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	line := func(s *scene.Sheet, x, width float64, dash ...float64) {
		s.Line(scene.Point{X: x}, scene.Point{Y: 1}, scene.Pen(width).Dashed(dash...))
	}
	for _, test := range []struct {
		name, want string
		make       func(s *scene.Sheet)
	}{
		{"good", "", func(s *scene.Sheet) { line(s, 1, 0.2, 1, 1) }},
		{"place NaN", "path through NaN", func(s *scene.Sheet) { line(s, nan, 1) }},
		{"place infinite", "path through +Inf", func(s *scene.Sheet) { line(s, inf, 1) }},
		{"far away", "path through 1e+06", func(s *scene.Sheet) { line(s, 1e6, 1) }},
		{"no width", "line width 0", func(s *scene.Sheet) { line(s, 1, 0) }},
		{"dash odd", "dash pattern", func(s *scene.Sheet) { line(s, 1, 1, 1) }},
		{"dash of nothing", "dash pattern", func(s *scene.Sheet) { line(s, 1, 1, 0, 0) }},
		{"dash below zero", "dash length -1", func(s *scene.Sheet) { line(s, 1, 1, -1, 5) }},
		{"text size", "text size 0", func(s *scene.Sheet) { s.TextAt(scene.Point{}, "x", scene.TextStyle{}) }},
		{"text turn", "turned by NaN", func(s *scene.Sheet) { s.TextAt(scene.Point{}, "x", scene.TextStyle{SizeMM: 1, Turn: nan}) }},
		{"no end", "1 groups without an end", func(s *scene.Sheet) { s.Begin(scene.Group{ID: "a"}) }},
		{"end alone", "not opened", func(s *scene.Sheet) { s.End() }},
		{"ID twice", `"a" is used twice`, func(s *scene.Sheet) {
			s.Begin(scene.Group{ID: "a"})
			s.Begin(scene.Group{ID: "a"})
			s.End()
			s.End()
		}},
		{"ID odd", "no plain XML name", func(s *scene.Sheet) { s.Begin(scene.Group{ID: `a"b`}); s.End() }},
		{"no start", "does not start with a move", func(s *scene.Sheet) {
			s.Path(scene.Path{Verbs: []scene.Verb{scene.Line}, Points: []scene.Point{{}}})
		}},
		{"points missing", "path with 1 points", func(s *scene.Sheet) {
			s.Path(scene.Path{Verbs: []scene.Verb{scene.Move, scene.Line}, Points: []scene.Point{{}}})
		}},
		{"two fields", "2 fields set", func(s *scene.Sheet) {
			s.Items = append(s.Items, scene.Item{End: true, Begin: &scene.Group{}})
		}},
		{"sheet size", "size NaN", func(s *scene.Sheet) { s.WidthMM = nan }},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := scene.NewSheet(100, 100, "test")
			test.make(s)
			err := s.Validate()
			if test.want == "" && err != nil || test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want)) {
				t.Errorf("got %v, want %q", err, test.want)
			}
		})
	}
}

func TestDeadLink(t *testing.T) {
	s := scene.NewSheet(100, 100, "test")
	s.Begin(scene.Group{ID: "a", Link: "nowhere"})
	s.End()
	err := (&scene.Document{Sheets: []*scene.Sheet{s}}).Validate()
	if err == nil || !strings.Contains(err.Error(), `"nowhere"`) {
		t.Errorf("got %v", err)
	}
	if err := (&scene.Document{}).Validate(); err == nil {
		t.Error("a document without sheets is valid")
	}
}

func ExampleSheet() {
	sheet := scene.NewSheet(60, 20, "One wire")
	sheet.Begin(scene.Group{ID: scene.ID("W1"), Class: "wire", Title: "wire W1"})
	sheet.Line(scene.Point{X: 5, Y: 10}, scene.Point{X: 55, Y: 10}, scene.Pen(0.5))
	sheet.TextAt(scene.Point{X: 5, Y: 9}, "W1 1.5 mm²", scene.TextStyle{SizeMM: 2.8})
	sheet.End()
	fmt.Println(sheet.Validate(), len(sheet.Items))
	// Output: <nil> 4
}

func ExampleEllipsis() {
	fmt.Println(scene.Ellipsis("heated grips, left and right", 2.8, 20, scene.Regular))
	// Output: heated grips,…
}

// A quantity is not torn, however narrow the line: it stands in it whole, and may be
// wider; other words are broken.
func TestWrapKeepsQuantities(t *testing.T) {
	const text = "cut 4 ft 2 5/8 in, strip 11/32 in, 3.0 % of 12 V in semitransparent sleeves"
	for width := 1.0; width < 60; width += 0.5 {
		lines := scene.Wrap(text, 3, width, scene.Regular)
		if got := strings.Join(lines, ""); strings.ReplaceAll(got, " ", "") != strings.ReplaceAll(text, " ", "") {
			t.Fatalf("%g mm: %q", width, lines)
		}
		for _, whole := range []string{"4 ft 2 5/8 in,", "11/32 in,", "3.0 %", "12 V"} {
			if !slices.ContainsFunc(lines, func(line string) bool { return strings.Contains(line, whole) }) {
				t.Errorf("%g mm: %q is torn: %q", width, whole, lines)
			}
		}
	}
}
