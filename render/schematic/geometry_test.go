package schematic

import (
	"fmt"
	"math"
	"sort"
	"strings"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/route"
)

// drawn is a sheet taken apart into what the geometry tests compare.
type drawn struct {
	sheet *scene.Sheet
	items []piece
}

// piece is a primitive with the group it belongs to.
type piece struct {
	item  scene.Item
	group *scene.Group
}

func takeApart(s *scene.Sheet) *drawn {
	d := &drawn{sheet: s}
	var open []*scene.Group
	for _, item := range s.Items {
		switch {
		case item.Begin != nil:
			open = append(open, item.Begin)
		case item.End:
			open = open[:len(open)-1]
		default:
			p := piece{item: item}
			if len(open) > 0 {
				p.group = open[len(open)-1]
			}
			d.items = append(d.items, p)
		}
	}
	return d
}

// inkOf is what a text covers: descenders count only where it has some.
func inkOf(t *scene.Text) scene.Rect {
	r := scene.InkBox(*t)
	if t.Turn == 0 && !strings.ContainsAny(t.String, "gjpqyQ,;()[]{}µ|_ÇçŞş/") {
		r.H = t.At.Y + 0.02*t.SizeMM - r.Y
	}
	return r
}

// strokes gives the pieces of a path as thin rectangles, curves in short chords;
// a filled path gives its bounds.
func strokes(p *scene.Path) []scene.Rect {
	if p.Fill != nil {
		return []scene.Rect{p.Bounds()}
	}
	half := p.Stroke.WidthMM / 2
	var list []scene.Rect
	var at, start scene.Point
	i := 0
	add := func(b scene.Point) {
		steps := 1
		if at.X != b.X && at.Y != b.Y { // oblique: in short pieces
			steps = 8
		}
		for k := range steps {
			f, g := float64(k)/float64(steps), float64(k+1)/float64(steps)
			x0, y0 := at.X+(b.X-at.X)*f, at.Y+(b.Y-at.Y)*f
			x1, y1 := at.X+(b.X-at.X)*g, at.Y+(b.Y-at.Y)*g
			r := scene.Rect{X: math.Min(x0, x1), Y: math.Min(y0, y1), W: math.Abs(x1 - x0), H: math.Abs(y1 - y0)}
			list = append(list, r.Grow(half))
		}
		at = b
	}
	for _, v := range p.Verbs {
		switch v {
		case scene.Move:
			at, start = p.Points[i], p.Points[i]
			i++
		case scene.Line:
			add(p.Points[i])
			i++
		case scene.Cubic:
			from := at
			for k := 1; k <= 8; k++ {
				add(onCubic(from, p.Points[i], p.Points[i+1], p.Points[i+2], float64(k)/8))
			}
			i += 3
		case scene.Close:
			add(start)
		}
	}
	return list
}

func onCubic(a, b, c, d scene.Point, t float64) scene.Point {
	u := 1 - t
	f := func(a, b, c, d float64) float64 { return u*u*u*a + 3*u*u*t*b + 3*u*t*t*c + t*t*t*d }
	return scene.Point{X: f(a.X, b.X, c.X, d.X), Y: f(a.Y, b.Y, c.Y, d.Y)}
}

// checkGeometry finds what an eye would object to on one sheet.
func checkGeometry(s *scene.Sheet) (faults []string) {
	d := takeApart(s)
	complain := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	type box struct {
		r    scene.Rect
		what string
		id   string
	}
	var texts, lines, bands []box
	frame := scene.Rect{X: 4.5, Y: 4.5, W: s.WidthMM - 9, H: s.HeightMM - 9}
	for _, p := range d.items {
		id := ""
		class := ""
		if p.group != nil {
			id, class = p.group.ID, p.group.Class
		}
		if !frame.Contains(p.item.Bounds()) {
			complain("%s leaves the frame: %+v", id, p.item.Bounds())
		}
		if t := p.item.Text; t != nil {
			if c := scene.CapHeightMM(t.SizeMM, t.Face); c < 2 {
				complain("text %q has capitals of %.2f mm", t.String, c)
			}
			texts = append(texts, box{inkOf(t).Grow(-0.02), t.String, id})
			continue
		}
		if st := p.item.Path.Stroke; st != nil && st.WidthMM < 0.25 {
			complain("line of %.2f mm in %s", st.WidthMM, id)
		}
		if f := p.item.Path.Fill; class == "band" && f != nil && p.item.Path.Stroke == nil && f.Colour.R >= 196 && f.Colour.B >= 168 && f.Colour.G >= 212 {
			bands = append(bands, box{p.item.Bounds(), class, id}) // words are legible on it
			continue
		}
		if (class == "finding" || class == "change") && p.item.Path.Fill != nil {
			// A sign holds its own number; its area stands for a symbol.
			lines = append(lines, box{p.item.Bounds(), "flag", id})
			continue
		}
		for _, r := range strokes(p.item.Path) {
			lines = append(lines, box{r, class, id})
		}
	}
	for i, a := range lines {
		if a.what != "flag" {
			continue // lines may cross: only signs are held against all others
		}
		for _, b := range bands {
			if a.r.Overlaps(b.r) {
				complain("%s lies on %s at %.0f,%.0f", a.id, b.id, a.r.X, a.r.Y)
			}
		}
		for k, b := range lines {
			if (b.what == "wire" || b.what == "band" || b.what == "flag" && k > i) && a.r.Overlaps(b.r) {
				complain("%s lies on %s at %.0f,%.0f", a.id, b.id, a.r.X, a.r.Y)
			}
		}
	}
	for i, a := range texts {
		for _, b := range texts[i+1:] {
			if a.r.Overlaps(b.r) {
				complain("text %q meets text %q at %.0f,%.0f", a.what, b.what, a.r.X, a.r.Y)
			}
		}
		for _, b := range lines {
			if b.what == "flag" && b.id == a.id {
				continue
			}
			if crossedOut := b.what == "band" && strings.TrimPrefix(a.id, "part-") == strings.TrimPrefix(b.id, "band-"); !crossedOut && a.r.Overlaps(b.r) {
				complain("text %q meets %s of %s at %.0f,%.0f", a.what, b.what, b.id, a.r.X, a.r.Y)
			}
		}
	}
	return faults
}

// checkSymbols finds wires that run through the symbol of a part, and parts
// that stand on each other.
func checkSymbols(d *paint.Drawing, p *arrange.Page) (faults []string) {
	boxes := symbolBoxes(d, p)
	for _, l := range p.Lines {
		for k := 1; k < len(l.Pts); k++ {
			r := rectOf(l.Pts[k-1], l.Pts[k])
			for c, list := range boxes {
				for _, b := range list {
					if r.Overlaps(b) {
						faults = append(faults, fmt.Sprintf("line %v–%v of %s runs through %s", l.Pts[k-1], l.Pts[k], parts.TerminalName(l.Net.Term), c.Part.Ref))
					}
				}
			}
		}
	}
	for c, list := range boxes {
		for q, other := range boxes {
			if c.Part.Index >= q.Part.Index {
				continue
			}
			for _, a := range list {
				for _, b := range other {
					if a.Overlaps(b) {
						faults = append(faults, c.Part.Ref+" stands on "+q.Part.Ref)
					}
				}
			}
		}
	}
	sort.Strings(faults)
	return faults
}

// rectOf is a line as a rectangle without ends, in modules.
func rectOf(a, b route.Spot) scene.Rect {
	const thin = 0.05
	x, y := float64(min(a.X, b.X)), float64(min(a.Y, b.Y))
	return scene.Rect{X: x - thin, Y: y - thin, W: float64(route.Distance(a.X, b.X)) + 2*thin, H: float64(route.Distance(a.Y, b.Y)) + 2*thin}
}

// symbolBoxes is the body of every part on a page, in modules, a little within
// the pins so that wires may end on them.
func symbolBoxes(d *paint.Drawing, p *arrange.Page) map[*cell.Cell][]scene.Rect {
	boxes := map[*cell.Cell][]scene.Rect{}
	for _, c := range p.Cells {
		if c.Kind != cell.Part || c.Empty {
			continue
		}
		y, x := float64(c.Rows[0].Y), float64(c.X)
		switch c.Part.Kind {
		case circuit.Battery:
			low := float64(c.Rows[1].Y)
			boxes[c] = []scene.Rect{{X: x + 0.3, Y: low - 1.2, W: float64(c.Cellar) - 1.5, H: c.Rows[1].Bottom - 0.5}}
		case circuit.Relay:
			if c.Coil {
				body := cell.CoilBody(c.Geometry)
				boxes[c] = []scene.Rect{{X: x + 0.2, Y: y + body.Y, W: body.W - 0.4, H: body.H}}
				continue
			}
			if c.Mate != nil {
				boxes[c] = []scene.Rect{{X: x + 0.2, Y: y - 1, W: cell.RelayBody - 0.4, H: 1.2}}
				continue
			}
			boxes[c] = []scene.Rect{{X: x + 0.2, Y: y + c.Geometry.Roof, W: cell.RelayBody - 0.4, H: float64(c.Geometry.Floor) - c.Geometry.Roof}}
		case circuit.Switch:
			if len(c.Ways) > 0 { // drawn as a block, with its positions
				last := float64(c.Rows[len(c.Rows)-1].Y)
				boxes[c] = []scene.Rect{{X: x + 1.2, Y: y - 1.5, W: float64(c.Body) - 1.4, H: last - y + 3}}
				continue
			}
			boxes[c] = symbolBox(d, c, x, y)
		case circuit.Block, circuit.Diode:
			if len(c.Ways) == 0 { // a single diode
				boxes[c] = symbolBox(d, c, x, y)
				continue
			}
			last := float64(c.Rows[len(c.Rows)-1].Y)
			boxes[c] = []scene.Rect{{X: x + 1.2, Y: y - 1.5, W: cell.BlockRight - 1.4, H: last - y + 3}}
		default:
			boxes[c] = symbolBox(d, c, x, y)
		}
	}
	return boxes
}

// symbolBox is the box of a symbol in its conductor, and that of the plug before it.
func symbolBox(d *paint.Drawing, c *cell.Cell, x, y float64) []scene.Rect {
	s := parts.SymbolOf(d.Set, c.Part)
	boxes := []scene.Rect{{X: x + float64(c.Inset) + 0.2, Y: y + s.Body.Y, W: s.Body.W - 0.4, H: s.Body.H}}
	if c.Plugged() {
		boxes = append(boxes, scene.Rect{X: x + 0.2, Y: y - 0.5, W: labels.PlugM - 0.4, H: 1})
	}
	return boxes
}

// checkAllDrawn tells of wires and parts of the circuit that are on no sheet.
func checkAllDrawn(d *paint.Drawing, sheets []*scene.Sheet) (faults []string) {
	ids := map[string]bool{}
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Begin != nil {
				ids[item.Begin.ID] = true
			}
		}
	}
	for _, w := range d.Circuit.Wires {
		if !ids["wire-"+w.Number] {
			faults = append(faults, "wire "+w.Number+" is not drawn")
		}
	}
	for _, c := range d.List {
		if c.Sheet == 0 {
			faults = append(faults, c.Part.Ref+" is on no sheet")
		}
	}
	return faults
}

// faultsOf draws a review and finds everything wrong with it.
func faultsOf(d *paint.Drawing) (faults []string) {
	sheets := d.Paint()
	for i, s := range sheets {
		if err := s.Validate(); err != nil {
			faults = append(faults, fmt.Sprintf("sheet %d: %v", i+1, err))
		}
		for _, f := range append(checkGeometry(s), checkRoom(s)...) {
			faults = append(faults, fmt.Sprintf("sheet %d: %s", i+1, f))
		}
	}
	for _, p := range d.Pages {
		for _, f := range checkSymbols(d, p) {
			faults = append(faults, fmt.Sprintf("sheet %d: %s", p.Index+1, f))
		}
		if p.Height > d.Rows || p.Width() > d.Columns {
			faults = append(faults, fmt.Sprintf("sheet %d: %d × %d modules on %d × %d", p.Index+1, p.Width(), p.Height, d.Columns, d.Rows))
		}
	}
	faults = append(faults, checkNets(d)...)
	faults = append(faults, checkReturns(d, sheets)...)
	faults = append(faults, checkDrawnAsRouted(d, sheets)...)
	return append(faults, checkAllDrawn(d, sheets)...)
}

// examine draws a review and reports everything wrong with it.
func examine(t *testing.T, d *paint.Drawing, most int) figures {
	t.Helper()
	faults := faultsOf(d)
	for i, f := range faults {
		if i >= most {
			t.Errorf("… and %d more", len(faults)-most)
			break
		}
		t.Error(f)
	}
	return count(d)
}
