package scenetest_test

import (
	"strings"
	"testing"

	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
)

// TestTextsSeesEachFault guards the check itself.
func TestTextsSeesEachFault(t *testing.T) {
	style := scene.TextStyle{SizeMM: 3}
	draw := func(fill func(*scene.Sheet)) []string {
		s := scene.NewSheet(100, 50, "")
		fill(s)
		return scenetest.Texts(s, s.Frame().Grow(-5))
	}
	cases := []struct {
		name, want string
		fill       func(*scene.Sheet)
	}{
		{"clean", "", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 10, Y: 10}, "first", style)
			s.TextAt(scene.Point{X: 10, Y: 14}, "second", style)
		}},
		{"too small", "capitals 1.72 mm high", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 10, Y: 10}, "small", scene.TextStyle{SizeMM: 2.5})
		}},
		{"outside", "reaches outside", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 90, Y: 10}, "too far right", style)
		}},
		{"over each other", "lie over each other", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 10, Y: 10}, "page", style)
			s.TextAt(scene.Point{X: 12, Y: 11.5}, "over it", style)
		}},
		{"turned over", "lie over each other", func(s *scene.Sheet) {
			turned := style
			turned.Turn = 90
			s.TextAt(scene.Point{X: 10, Y: 30}, "level", style)
			s.TextAt(scene.Point{X: 14, Y: 40}, "upright text", turned)
		}},
		{"blank text counts for nothing", "", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 10, Y: 10}, "page", style)
			s.TextAt(scene.Point{X: 10, Y: 10}, "  ", style)
		}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := strings.Join(draw(c.fill), "\n")
			if (c.want == "") != (got == "") || !strings.Contains(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}
