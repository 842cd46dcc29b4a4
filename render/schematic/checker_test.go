package schematic

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness/review/compare"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/sign"
)

// The geometry checks find what they are meant to find.
func TestChecksFindFaults(t *testing.T) {
	style := scene.TextStyle{SizeMM: lettering.SmallMM}
	cases := []struct {
		name string
		draw func(s *scene.Sheet)
		want string
	}{
		{"text on text", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 20, Y: 20}, "left lamp", style)
			s.TextAt(scene.Point{X: 24, Y: 21}, "right lamp", style)
		}, "meets text"},
		{"text on a wire", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 20, Y: 20}, "left lamp", style)
			s.Line(scene.Point{X: 10, Y: 19}, scene.Point{X: 60, Y: 19}, scene.Pen(0.5))
		}, "meets"},
		{"text on a circle", func(s *scene.Sheet) {
			pen := scene.Pen(0.35)
			s.TextAt(scene.Point{X: 20, Y: 20}, "lamp", style)
			s.Circle(scene.Point{X: 20, Y: 20}, 3, &pen, nil)
		}, "meets"},
		{"sign of a change on a band", func(s *scene.Sheet) {
			sign.Band(s, compare.Added, "W1", []scene.Point{{X: 10, Y: 20}, {X: 60, Y: 20}})
			sign.DrawChange(s, &sign.Entry{Number: 1, Change: &compare.Mark{What: compare.Added}}, 30, 18)
		}, "lies on band-W1"},
		{"sign on sign", func(s *scene.Sheet) {
			for k := range 2 {
				sign.DrawChange(s, &sign.Entry{Number: k + 1, Change: &compare.Mark{What: compare.Changed}}, 30+5*float64(k), 30)
			}
		}, "lies on change-2"},
		{"small text", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 20, Y: 20}, "lamp", scene.TextStyle{SizeMM: 2.5})
		}, "capitals"},
		{"thin line", func(s *scene.Sheet) {
			s.Line(scene.Point{X: 10, Y: 19}, scene.Point{X: 60, Y: 19}, scene.Pen(0.2))
		}, "line of 0.20 mm"},
		{"outside the frame", func(s *scene.Sheet) {
			s.Line(scene.Point{X: 10, Y: 19}, scene.Point{X: 400, Y: 19}, scene.Pen(0.5))
		}, "leaves the frame"},
		{"nothing wrong", func(s *scene.Sheet) {
			s.TextAt(scene.Point{X: 20, Y: 18}, "left lamp", style)
			s.Line(scene.Point{X: 10, Y: 20}, scene.Point{X: 60, Y: 20}, scene.Pen(0.5))
		}, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s := scene.NewSheet(297, 210, "")
			c.draw(s)
			faults := strings.Join(checkGeometry(s), "; ")
			if c.want == "" && faults != "" || !strings.Contains(faults, c.want) {
				t.Errorf("faults %q, want %q", faults, c.want)
			}
		})
	}
}

// A wire moved off its pin, or laid along another, is seen.
func TestChecksReadTheWiring(t *testing.T) {
	text, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		name  string
		spoil func(p *arrange.Page)
		want  bool
	}{
		{"as drawn", func(*arrange.Page) {}, false},
		{"end off its pin", func(p *arrange.Page) { p.Lines[2].Pts[len(p.Lines[2].Pts)-1].X -= 2 }, true},
		{"start off its pin", func(p *arrange.Page) { p.Lines[1].Pts[0].X += 2 }, true},
		{"missing", func(p *arrange.Page) { p.Lines = p.Lines[1:] }, true},
		{"on another wire", func(p *arrange.Page) { p.Lines[0].Pts = append(p.Lines[0].Pts, p.Lines[3].Pts[0]) }, true},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := planned(t, "fen-runner.yaml", text, Options{Size: "A3"})
			d.Paint()
			c.spoil(d.Pages[0])
			if faults := checkNets(d); (len(faults) > 0) != c.want {
				t.Errorf("faults %v, want some: %v", faults, c.want)
			}
		})
	}
}

// A return that ends elsewhere, begins elsewhere or is missing is seen.
func TestChecksReadReturns(t *testing.T) {
	text, err := os.ReadFile("../../designs/reed-skiff.yaml")
	if err != nil {
		t.Fatal(err)
	}
	// W22 is a load's, W21 a coil's, W31 a ground bar's.
	move := func(point int) func(*scene.Path) {
		return func(p *scene.Path) { p.Points[(point+len(p.Points))%len(p.Points)].X += 2.5 }
	}
	cases := []struct {
		name, wire string
		spoil      func(*scene.Path)
		want       string
	}{
		{"as drawn", "", nil, ""},
		{"load's end moved", "W22", move(-1), "W22 ends at"},
		{"load's start moved", "W22", move(0), "W22 does not begin"},
		{"coil's start moved", "W21", move(0), "W21 does not begin"},
		{"bar's end moved", "W31", move(-1), "W31 ends at"},
		{"bar's start moved", "W31", func(p *scene.Path) { p.Points[0].Y -= 30 }, "W31 begins at"},
		{"missing", "W22", func(p *scene.Path) { p.Stroke = &scene.Stroke{WidthMM: 0.3} }, "W22 is drawn 0 times"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := planned(t, "reed-skiff.yaml", text, Options{Size: "A3"})
			sheets := d.Paint()
			for _, s := range sheets {
				inside := ""
				for _, item := range s.Items {
					if item.Begin != nil {
						inside = item.Begin.ID
					}
					if item.Path != nil && inside == "wire-"+c.wire && item.Path.Stroke != nil && item.Path.Stroke.WidthMM == 0.5 {
						c.spoil(item.Path)
					}
				}
			}
			faults := strings.Join(checkReturns(d, sheets), "; ")
			if c.want == "" && faults != "" || !strings.Contains(faults, c.want) {
				t.Errorf("faults %q, want %q", faults, c.want)
			}
		})
	}
}
