package schematic

import (
	"fmt"
	"math"

	"slices"
	"strings"
	"testing"

	"fusewright/render/scene"
)

// Room that an eye wants between words, in mm.
const (
	rowRoom    = 2.0 // one text height, between a ground's name and the next row's words
	numberRoom = 2.0 // between a terminal's number and a length
	lineRoom   = 0.3 // between words and an upright line beside them
)

var terminalNumbers = []string{"30", "85", "86", "87", "87a"}

// worded is a text from its base to the top of its capitals, with its group.
type worded struct {
	r     scene.Rect
	text  string
	id    string
	class string
}

func wordsOf(d *drawn) (list []worded) {
	for _, p := range d.items {
		if t := p.item.Text; t != nil && p.group != nil {
			r := inkOf(t)
			r.Y = t.At.Y - scene.CapHeightMM(t.SizeMM, t.Face)
			r.H = t.At.Y - r.Y
			list = append(list, worded{r, t.String, p.group.ID, p.group.Class})
		}
	}
	return list
}

// besides tells whether two boxes share a stretch of their widths.
func besides(a, b scene.Rect) bool { return a.X < b.Right() && b.X < a.Right() }

// level tells whether two boxes share a stretch of their heights.
func level(a, b scene.Rect) bool { return a.Y < b.Bottom() && b.Y < a.Bottom() }

// checkRoom finds words that are drawn clear of everything and yet hard to read.
func checkRoom(s *scene.Sheet) (faults []string) {
	d := takeApart(s)
	list := wordsOf(d)
	complain := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	for _, a := range list {
		if a.class == "list" {
			continue
		}
		if strings.HasSuffix(a.text, "…") {
			complain("%q of %s is cut", a.text, a.id)
		}
		if a.class == "ground" && !strings.HasPrefix(a.id, "ground-post") {
			faults = append(faults, checkGroundName(d, a)...)
		}
		for _, b := range list {
			switch gap := b.r.Y - a.r.Bottom(); {
			case b.id == a.id || b.class == "list":
			case a.class == "ground" && besides(a.r, b.r) && gap > -1 && gap < rowRoom:
				complain("%.2f mm between ground name %q and %q at %.0f,%.0f", gap, a.text, b.text, a.r.X, a.r.Y)
			}
			if slices.Contains(terminalNumbers, a.text) && (b.class == "wire" || b.class == "label") && level(a.r, b.r) {
				if gap := math.Max(a.r.X-b.r.Right(), b.r.X-a.r.Right()); gap < numberRoom {
					complain("%.2f mm between terminal number %s and %q", gap, a.text, b.text)
				}
			}
		}
	}
	for _, p := range d.items {
		if p.item.Path == nil || p.group == nil || p.group.Class != "wire" {
			continue
		}
		for _, r := range strokes(p.item.Path) {
			if r.H < 1 {
				continue
			}
			for _, a := range list {
				if a.r.Overlaps(scene.Rect{X: r.X - lineRoom, Y: r.Y, W: r.W + 2*lineRoom, H: r.H}) {
					complain("%q touches %s", a.text, p.group.ID)
				}
			}
		}
	}
	return faults
}

// checkGroundName finds the name of a ground that does not stand under its sign.
func checkGroundName(d *drawn, name worded) (faults []string) {
	under := false
	for _, p := range d.items {
		if p.item.Path == nil || p.group == nil || p.group.ID != name.id {
			continue
		}
		b := p.item.Bounds()
		if b.Bottom() > name.r.Y {
			under = false
			break
		}
		under = under || besides(b, name.r)
	}
	if under {
		return nil
	}
	return []string{fmt.Sprintf("ground name %q does not stand under its sign", name.text)}
}

// Words that are too near or cut are seen.
func TestChecksFindNarrowRoom(t *testing.T) {
	style := func(s *scene.Sheet, x, y float64, words string) {
		s.TextAt(scene.Point{X: x, Y: y}, words, scene.TextStyle{SizeMM: 2.95})
	}
	in := func(s *scene.Sheet, id, class string, draw func()) {
		s.Begin(scene.Group{ID: id, Class: class, Title: id})
		draw()
		s.End()
	}
	for _, c := range []struct {
		name string
		draw func(s *scene.Sheet)
		want string
	}{
		{"ground above a label", func(s *scene.Sheet) {
			in(s, "ground-X1", "ground", func() {
				style(s, 20, 20, "X1 stud")
				s.Line(scene.Point{X: 25, Y: 14}, scene.Point{X: 25, Y: 17}, scene.Pen(0.5))
			})
			in(s, "wire-W1", "wire", func() { style(s, 20, 24, "W1 1 mm²") })
		}, "between ground name"},
		{"ground far above", func(s *scene.Sheet) {
			in(s, "ground-X1", "ground", func() {
				style(s, 20, 20, "X1 stud")
				s.Line(scene.Point{X: 25, Y: 14}, scene.Point{X: 25, Y: 17}, scene.Pen(0.5))
			})
			in(s, "wire-W1", "wire", func() { style(s, 20, 24.1, "W1 1 mm²") })
		}, ""},
		{"ground beside its sign", func(s *scene.Sheet) {
			in(s, "ground-X1", "ground", func() {
				style(s, 20, 20, "X1 stud")
				s.Line(scene.Point{X: 40, Y: 14}, scene.Point{X: 40, Y: 17}, scene.Pen(0.5))
			})
		}, "under its sign"},
		{"cut", func(s *scene.Sheet) {
			in(s, "part-K4", "part", func() { style(s, 20, 20, "12 V, with …") })
		}, "is cut"},
		{"number beside a length", func(s *scene.Sheet) {
			in(s, "part-K1", "part", func() { style(s, 20, 20, "30") })
			in(s, "wire-W1", "wire", func() { style(s, 12, 20, "0.5 m") })
		}, "terminal number 30"},
		{"words beside a line", func(s *scene.Sheet) {
			in(s, "part-X4", "part", func() { style(s, 20, 20, "X4") })
			in(s, "wire-W1", "wire", func() { s.Line(scene.Point{X: 19.6, Y: 10}, scene.Point{X: 19.6, Y: 30}, scene.Pen(0.5)) })
		}, "touches wire-W1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := scene.NewSheet(297, 210, "")
			c.draw(s)
			faults := strings.Join(checkRoom(s), "; ")
			if c.want == "" && faults != "" || !strings.Contains(faults, c.want) {
				t.Errorf("faults %q, want %q", faults, c.want)
			}
		})
	}
}
