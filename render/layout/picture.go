package layout

import (
	"errors"
	"fmt"
	"math"

	"fusewright/harness/formboard"
	"fusewright/render/scene"
)

// scales are the reductions of ISO 5455 in order, with the full size in front.
var scales = []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000}

// detail is how much is written at each run; the table has all of it.
type detail int

const (
	wireLists  detail = iota // diameter, count, cover and wire numbers
	diameters                // the same without the numbers
	numberOnly               // the run's number
)

// picture is a section drawn to scale on a sheet of its own, without bounds;
// place moves it to where it belongs.
type picture struct {
	section *formboard.Section
	name    string  // "1:10"
	ratio   float64 // mm on paper for each mm on the board
	detail  detail
	sheet   *scene.Sheet
	bands   map[*formboard.Limb]shape
	order   []*formboard.Limb
	boxes   []scene.Rect // of the bands, in that order
	taken   crowd        // words, nails, leaders
	marks   crowd        // clamps
	lines   crowd        // of dimensions
	extends crowd        // their extension lines
	lost    int          // labels that found no room

	// Pages at full size: bands as wide as the bundles, moved by shift, words
	// inside the window only.
	full   bool
	shift  scene.Point
	window scene.Rect
}

// fit draws the section at the largest scale that leaves it inside the field,
// with as much written at the runs as that allows.
func (d *drawing) fit(s *formboard.Section) (*picture, error) {
	field := d.paper.Field()
	wide, high := s.Size()
	for _, scale := range scales {
		ratio := 1 / float64(scale)
		if wide*ratio > field.W || high*ratio > field.H {
			continue
		}
		for _, level := range []detail{wireLists, diameters, numberOnly} {
			p := newPicture(s, scale, level)
			p.draw()
			b := p.sheet.Bounds()
			if p.lost == 0 && b.W <= field.W && b.H <= field.H {
				return p, nil
			}
		}
	}
	return nil, errors.New("layout: a section does not fit the sheet at any scale; choose a larger sheet")
}

func newPicture(s *formboard.Section, scale int, level detail) *picture {
	return &picture{section: s, name: fmt.Sprintf("1:%d", scale), ratio: 1 / float64(scale), detail: level,
		sheet: scene.NewSheet(1, 1, ""), bands: map[*formboard.Limb]shape{}}
}

// at is a point of the board on the picture.
func (p *picture) at(q formboard.Point) scene.Point {
	return scene.Point{X: q.X*p.ratio + p.shift.X, Y: q.Y*p.ratio + p.shift.Y}
}

// half is half the width of a run's band: by its class or, at full size, by its
// diameter.
func (p *picture) half(r *formboard.Run) float64 {
	if p.full {
		return math.Max(0.6, r.OuterMm/2)
	}
	return halfMM[r.Class()]
}

func (p *picture) ends(l *formboard.Limb) (a, b scene.Point) { return p.at(l.From.At), p.at(l.To.At) }

// draw paints the loom and then finds room for dimensions and words, those with
// the least choice first. It gives up at the first that finds none.
func (p *picture) draw() {
	for i := len(p.section.Limbs) - 1; i >= 0; i-- { // the trunk on top
		p.order = append(p.order, p.section.Limbs[i])
	}
	for _, l := range p.order {
		p.bands[l] = p.band(l)
		p.boxes = append(p.boxes, p.bands[l].box())
		p.clamps(l)
	}
	for _, s := range p.section.Spots {
		p.nail(s)
	}
	for _, l := range p.section.Limbs {
		p.dimension(l)
	}
	for _, s := range p.section.Spots {
		if p.nameSpot(s); p.lost > 0 {
			return
		}
	}
	for _, l := range p.section.Limbs {
		if p.nameRun(l); p.lost > 0 {
			return
		}
	}
}

// place moves the picture to the top of a field, in the middle, and gives the y
// of its lower edge.
func (p *picture) place(on *scene.Sheet, field scene.Rect) (bottom float64) {
	b := p.sheet.Bounds()
	dx := math.Round((field.X+(field.W-b.W)/2-b.X)*100) / 100
	dy := field.Y - b.Y
	on.Begin(scene.Group{ID: "loom", Class: "loom", Title: "the loom on the board, scale " + p.name})
	for _, item := range p.sheet.Items {
		if item.Path != nil {
			for i := range item.Path.Points {
				item.Path.Points[i] = item.Path.Points[i].Add(scene.Point{X: dx, Y: dy})
			}
		}
		if item.Text != nil {
			item.Text.At = item.Text.At.Add(scene.Point{X: dx, Y: dy})
		}
		on.Items = append(on.Items, item)
	}
	on.End()
	return b.Bottom() + dy
}

// free tells whether an outline meets nothing; bands of the named limbs are
// left out.
func (p *picture) free(s shape, but ...*formboard.Limb) bool {
	if p.taken.meets(s) || p.marks.meets(s) {
		return false
	}
	box := s.box()
	for i, l := range p.order {
		if p.boxes[i].Overlaps(box) && !contains(but, l) && s.meets(p.bands[l]) {
			return false
		}
	}
	return true
}

// crosses tells whether an outline meets the lines of a dimension.
func (p *picture) crosses(s shape) bool { return p.lines.meets(s) || p.extends.meets(s) }

func contains(list []*formboard.Limb, l *formboard.Limb) bool {
	for _, m := range list {
		if m == l {
			return true
		}
	}
	return false
}
