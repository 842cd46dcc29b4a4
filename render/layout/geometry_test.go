package layout

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// many calls a check with the demo designs and 100 made harnesses; sizes go
// round, and American sizes are drawn in inches. From the hundredth on the numbers of wires
// come again, the other way round: those are drawn where reference programs are required.
func many(t *testing.T, check func(t *testing.T, r *harness.Review, b *formboard.Board)) {
	run := func(name string, r *harness.Review) {
		t.Run(name, func(t *testing.T) { check(t, r, formboard.Lay(r.Circuit)) })
	}
	for name, r := range demos(t) {
		for _, size := range []string{"A4", "A3", "Letter", "Tabloid"} {
			r.Design.Sheet.Size, r.Design.Sheet.Lengths = size, lengthsOn(size)
			run(name+" "+size, r)
		}
	}
	sizes := []string{"", "A3", "Letter", "Tabloid"}
	most := 100
	if referencetest.Required() {
		most = 200
	}
	for seed := range most {
		wires := 3 + seed*seed%198
		if seed == len(looms) {
			looms = append(looms, reviewtest.Built(t, synth.YAML(wires, int64(seed))))
		}
		r := looms[seed]
		r.Design.Sheet.Size = sizes[seed%len(sizes)]
		r.Design.Sheet.Lengths = lengthsOn(r.Design.Sheet.Size)
		r.Design.Sheet.LongRuns = []string{"", "whole"}[seed/4%2]
		run(fmt.Sprintf("made, %d wires, seed %d", wires, seed), r)
	}
}

// looms are the made harnesses, read once: that takes longer than to draw them.
var looms []*harness.Review

func lengthsOn(size string) string {
	if size == "Letter" || size == "Tabloid" {
		return "ft"
	}
	return ""
}

func TestSheets(t *testing.T) {
	many(t, func(t *testing.T, r *harness.Review, b *formboard.Board) {
		sheets, err := Draw(r, b)
		if err != nil {
			t.Fatal(err)
		}
		paper, err := frame.PaperOf(r.Design.Sheet.Size)
		if err != nil {
			t.Fatal(err)
		}
		drawn := map[string]int{}
		for _, s := range sheets {
			inside(t, s, paper.Inner())
			clear(t, s)
			trueToScale(t, s, lengths.Of(r.Design), drawn)
		}
		runs := map[string]int{}
		for _, run := range b.Runs {
			runs[lengths.Of(r.Design).Dim(run.Length)]++
		}
		// Inches are wider: a crowded board may lose one, and then says so.
		if said := strings.Contains(allText(sheets), "found no room"); fmt.Sprint(runs) != fmt.Sprint(drawn) &&
			!(said && lengths.Of(r.Design).Feet()) {
			t.Errorf("dimensions %v, runs %v", drawn, runs)
		}
	})
}

// A length written by mistake is drawn all the same, so that it is seen; pages at
// full size are left out where they would be more than a thousand, which is said.
func TestFarTooLong(t *testing.T) {
	for _, c := range []struct {
		runs int
		full bool
	}{{1, true}, {2, false}, {40, false}} {
		var src strings.Builder
		src.WriteString("fusewright: 1\ntitle: far\nvehicle: invented\nsystem: 12 V\npractice: off-road\n" +
			"battery: {chemistry: AGM, capacity: 14 Ah, at: p0}\nplaces: {p0: {}")
		for i := range c.runs {
			fmt.Fprintf(&src, ", p%d: {}", i+1)
		}
		src.WriteString("}\nruns:\n")
		for i := range c.runs {
			fmt.Fprintf(&src, "  - {from: p%d, to: p%d, length: 200 m}\n", i, i+1)
		}
		fmt.Fprintf(&src, "loads:\n  lamp: {power: 5 W, at: p%d, fed by: battery, wire: {size: 1 mm²}, returns to: battery negative, "+
			"return wire: {size: 1 mm²}}\n", c.runs)
		r := reviewtest.Built(t, []byte(src.String()))
		r.Design.Sheet.LongRuns = "whole"
		board := formboard.Lay(r.Circuit)
		sheets, err := Draw(r, board)
		if err != nil {
			t.Errorf("%d runs of 200 m: %v", c.runs, err)
			continue
		}
		said := strings.Contains(allText(sheets), "at full size; they are not made")
		if pages, _ := FullSize(r, board); len(pages) > 0 != c.full || said == c.full {
			t.Errorf("%d runs of 200 m: %d pages at full size, said %v", c.runs, len(pages), said)
		}
	}
}

func TestFullSize(t *testing.T) {
	many(t, func(t *testing.T, r *harness.Review, b *formboard.Board) {
		if len(r.Circuit.Wires) > 60 && len(r.Circuit.Wires)%4 != 0 {
			t.Skip("large boards: every fourth is enough")
		}
		pages, err := FullSize(r, b)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range pages {
			if err := s.Validate(); err != nil {
				t.Fatal(err)
			}
			if !s.Frame().Grow(-3).Contains(s.Bounds()) {
				t.Errorf("%s: %+v leaves the page", s.Title, s.Bounds())
			}
			clear(t, s)
		}
		covered(t, r, b)
		covered(t, r, formboard.LayBroken(r.Circuit))
	})
}

// covered holds that the windows of the pages together show every part of every
// run, and that neighbours overlap by what the index says.
func covered(t *testing.T, r *harness.Review, b *formboard.Board) {
	t.Helper()
	paper, err := frame.PaperOf(r.Design.Sheet.Size)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range b.Sections {
		tl := newTiling(r, b, s, paper)
		for _, l := range s.Limbs {
			for i := 0.0; i <= 1; i += 0.01 {
				at := scene.Point{X: l.From.At.X + i*(l.To.At.X-l.From.At.X), Y: l.From.At.Y + i*(l.To.At.Y-l.From.At.Y)}
				found := false
				for _, page := range tl.order {
					o, w := tl.origin(page[0], page[1]), tl.window()
					found = found || scene.Rect{X: o.X, Y: o.Y, W: w.W, H: w.H}.Contains(scene.Rect{X: at.X, Y: at.Y})
				}
				if !found {
					t.Fatalf("run %d: no page shows %v", l.Run.Number, at)
				}
			}
		}
		a, c := tl.origin(0, 0), tl.origin(1, 1)
		if w := tl.window(); math.Abs(a.X+w.W-c.X-overlapMM) > 1e-9 || math.Abs(a.Y+w.H-c.Y-overlapMM) > 1e-9 {
			t.Errorf("windows at %v and %v do not overlap by %g mm", a, c, overlapMM)
		}
	}
}

// inside holds everything within the frame, but for the frame's own group.
func inside(t *testing.T, s *scene.Sheet, in scene.Rect) {
	t.Helper()
	if err := s.Validate(); err != nil {
		t.Fatal(err)
	}
	framed, depth := false, 0
	for _, item := range s.Items {
		switch {
		case item.Begin != nil:
			depth++
			framed = framed || item.Begin.Class == "frame"
		case item.End:
			if depth--; depth == 0 {
				framed = false
			}
		case !framed && !in.Contains(item.Bounds()):
			t.Errorf("%s: %+v leaves the frame %+v (%s)", s.Title, item.Bounds(), in, itemText(item))
		}
		if item.Text != nil && item.Text.SizeMM*0.69 < 1.95 {
			t.Errorf("%s: %q is only %g mm high", s.Title, item.Text.String, item.Text.SizeMM)
		}
	}
}

func itemText(item scene.Item) string {
	if item.Text != nil {
		return item.Text.String
	}
	return "a line"
}

// clear holds that no words lie on other words or on a line.
func clear(t *testing.T, s *scene.Sheet) {
	t.Helper()
	var words, lines crowd
	var texts []string
	for _, item := range s.Items {
		switch {
		case item.Path != nil && item.Path.Stroke != nil:
			lines.add(strokes(item.Path)...)
		case item.Text != nil && item.Text.String != "":
			shape := textShape(*item.Text)
			if words.meets(shape) {
				t.Errorf("%s: %q lies on other words", s.Title, item.Text.String)
			}
			words.add(shape)
			texts = append(texts, item.Text.String)
		}
	}
	for i, shape := range words.shapes {
		if lines.meets(shape) {
			t.Errorf("%s: %q lies on a line", s.Title, texts[i])
		}
	}
}

// strokes are the lines of a path, curves as short straight pieces.
func strokes(p *scene.Path) []shape {
	var out []shape
	var start, at scene.Point
	next := 0
	for _, v := range p.Verbs {
		switch v {
		case scene.Move:
			start, at = p.Points[next], p.Points[next]
			next++
		case scene.Close:
			out = append(out, lineShape(at, start, p.Stroke.WidthMM))
		case scene.Cubic:
			c := p.Points[next : next+3]
			from := at
			for i := 1; i <= 8; i++ {
				u := float64(i) / 8
				v := 1 - u
				to := scene.Point{X: v*v*v*from.X + 3*v*v*u*c[0].X + 3*v*u*u*c[1].X + u*u*u*c[2].X,
					Y: v*v*v*from.Y + 3*v*v*u*c[0].Y + 3*v*u*u*c[1].Y + u*u*u*c[2].Y}
				out = append(out, lineShape(at, to, p.Stroke.WidthMM))
				at = to
			}
			next += 3
		default:
			out = append(out, lineShape(at, p.Points[next], p.Stroke.WidthMM))
			at = p.Points[next]
			next++
		}
	}
	return out
}

var scaleOf = regexp.MustCompile(`scale 1:(\d+)$`)

// trueToScale measures every dimension between its arrows and holds it, times
// the scale, against its number; it counts the numbers.
func trueToScale(t *testing.T, s *scene.Sheet, u lengths.Unit, drawn map[string]int) {
	t.Helper()
	scale := 0.0
	for i, item := range s.Items {
		if item.Begin == nil {
			continue
		}
		if m := scaleOf.FindStringSubmatch(item.Begin.Title); m != nil {
			scale, _ = strconv.ParseFloat(m[1], 64)
		}
		if item.Begin.Class != "dimension" {
			continue
		}
		words := strings.TrimSuffix(item.Begin.Title, " "+u.Small())
		drawn[words]++
		var tips []scene.Point
		said := ""
		for _, in := range s.Items[i+1:] {
			if in.End {
				break
			}
			if in.Path != nil && in.Path.Fill != nil {
				tips = append(tips, in.Path.Points[0])
			}
			if in.Text != nil {
				said += in.Text.String + " "
			}
		}
		if !strings.Contains(said, words+" ") {
			t.Errorf("%s: dimension %s says %q", s.Title, words, said)
		}
		if len(tips) == 2 {
			want, near := dimensionMm(u, words)
			if got := scale * math.Hypot(tips[0].X-tips[1].X, tips[0].Y-tips[1].Y); math.Abs(got-want) > near {
				t.Errorf("%s: dimension %s measures %g mm", s.Title, words, got)
			}
		}
	}
}

// dimensionMm reads a dimension back, and how far it may be rounded.
func dimensionMm(u lengths.Unit, words string) (mm, near float64) {
	if !u.Feet() {
		mm, _ = strconv.ParseFloat(words, 64)
		return mm, 0.051
	}
	for _, word := range strings.Fields(words) {
		top, bottom, cut := strings.Cut(word, "/")
		v, _ := strconv.ParseFloat(top, 64)
		if cut {
			parts, _ := strconv.ParseFloat(bottom, 64)
			v /= parts
		}
		mm += 25.4 * v
	}
	return mm, 25.4/32 + 0.001
}

func allText(sheets []*scene.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Text != nil {
				b.WriteString(item.Text.String + " ")
			}
		}
	}
	return b.String()
}
