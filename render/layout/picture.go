package layout

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
)

// scales are the reductions of ISO 5455 in order, with the full size in front; the
// last ones are for lengths written by mistake, which must be seen to be mended.
var scales = []int{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000}

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
	section    *formboard.Section
	unit       lengths.Unit
	name       string  // "1:10"
	ratio      float64 // mm on paper for each mm on the board
	detail     detail
	namesFirst bool       // before dimensions, where these take the room they need
	anyhow     bool       // goes on when words find no room
	room       scene.Rect // what it must fit, wherever it stands
	sheet      *scene.Sheet
	bands      map[*formboard.Limb]shape
	order      []*formboard.Limb
	boxes      []scene.Rect // of the bands, in that order
	taken      crowd        // words, nails, leaders
	marks      crowd        // clamps
	lines      crowd        // of dimensions
	extends    crowd        // their extension lines
	lost       int          // labels that found no room

	// Pages at full size: bands as wide as the bundles, moved by shift, words
	// inside the window only.
	full   bool
	shift  scene.Point
	window scene.Rect
}

// between are intermediate scales, which ISO 5455 allows where the recommended
// ones cannot be used.
var between = []int{3, 4, 15, 25, 30, 40, 75, 150, 250, 300, 400}

// mostScales is how many scales are tried, from the largest at which the loom
// itself is inside the sheet: words need more room the smaller it is drawn.
const mostScales = 3

// fit draws the section at the largest scale that leaves it inside the field,
// with as much written at the runs as that allows. Recommended scales go
// first, unless they leave most of the field empty. Where words find no room at
// any, the picture counts them as lost.
func (d *drawing) fit(s *formboard.Section) (*picture, error) {
	field := d.paper.Field()
	p := d.fitOf(s, scales, field)
	if p == nil || p.lonely(field) {
		beside := field
		if p != nil {
			beside.H *= pictureShare // the tables stay on the sheet
		}
		if larger := d.fitOf(s, between, beside); larger != nil && (p == nil || larger.ratio > p.ratio && larger.detail <= p.detail) {
			p = larger
		}
	}
	if p != nil {
		return p, nil
	}
	for _, scale := range scales {
		p := newPicture(s, d.unit, scale, numberOnly)
		p.anyhow, p.room = true, field
		p.draw()
		if p.within() {
			return p, nil
		}
	}
	return nil, fmt.Errorf("layout: section %d does not fit the sheet at any scale", s.Number)
}

// fitOf draws the section at the largest of some scales at which it fits; nil when it fits
// at none.
func (d *drawing) fitOf(s *formboard.Section, scales []int, field scene.Rect) *picture {
	wide, high := s.Size()
	tried := 0
	for _, scale := range scales {
		if ratio := 1 / float64(scale); wide*ratio > field.W || high*ratio > field.H {
			continue
		}
		if tried++; tried > mostScales {
			break
		}
		if p := d.fitAt(s, scale, field); p != nil {
			return p
		}
	}
	return nil
}

// pictureShare is the share of the field's height that a picture may take at a scale
// between the recommended ones; emptyShare is how little a lonely one takes of both sides.
const pictureShare, emptyShare = 0.62, 0.6

// lonely tells whether a picture leaves most of the field empty.
func (p *picture) lonely(field scene.Rect) bool {
	b := p.sheet.Bounds()
	return b.W < emptyShare*field.W && b.H < emptyShare*field.H
}

// fitAt draws the section at a scale; nil when the field cannot hold it.
func (d *drawing) fitAt(s *formboard.Section, scale int, field scene.Rect) *picture {
	for _, way := range []struct {
		level      detail
		namesFirst bool
	}{{wireLists, false}, {diameters, false}, {numberOnly, false}, {numberOnly, true}} {
		p := newPicture(s, d.unit, scale, way.level)
		p.namesFirst, p.room = way.namesFirst, field
		p.draw()
		if p.lost == 0 && p.within() {
			return p
		}
	}
	return nil
}

func newPicture(s *formboard.Section, u lengths.Unit, scale int, level detail) *picture {
	return &picture{section: s, unit: u, name: fmt.Sprintf("1:%d", scale), ratio: 1 / float64(scale), detail: level,
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
	// A run shorter than shortMM on paper has little choice of where its number goes.
	const shortMM = 25.0
	short := func(l *formboard.Limb) bool { return l.Run.Length*p.ratio < shortMM }
	dimensions := p.each(p.dimension, func(l *formboard.Limb) bool { return p.tip(l) == nil })
	nameShort := p.each(p.nameRun, func(l *formboard.Limb) bool { return short(l) && p.tip(l) == nil })
	nameLong := p.each(p.nameRun, func(l *formboard.Limb) bool { return !short(l) })
	steps := []func(){dimensions, nameShort, p.nameSpots, nameLong}
	if p.namesFirst {
		steps = []func(){nameShort, p.nameSpots, dimensions, nameLong}
	}
	for _, step := range steps {
		if step(); !p.anyhow && (p.lost > 0 || !p.within()) {
			return
		}
	}
}

// within tells whether the picture still fits its room.
func (p *picture) within() bool {
	b := p.sheet.Bounds()
	return b.W <= p.room.W && b.H <= p.room.H
}

// each does something for the runs of the section that are meant.
func (p *picture) each(do func(*formboard.Limb), meant func(*formboard.Limb) bool) func() {
	return func() {
		for _, l := range p.section.Limbs {
			if meant(l) {
				do(l)
			}
		}
	}
}

func (p *picture) nameSpots() {
	for _, s := range p.section.Spots {
		p.nameSpot(s)
	}
}

const tipMM = 16.0 // see tip

// tip is the free end of a run so short on paper that its number and length
// stand with the name of that end; nil for other runs.
func (p *picture) tip(l *formboard.Limb) *formboard.Spot {
	if p.full || l.Run.Length*p.ratio >= tipMM {
		return nil
	}
	for _, s := range []*formboard.Spot{l.To, l.From} {
		if !s.Breakout() {
			return s
		}
	}
	return nil
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
		if p.boxes[i].Overlaps(box) && !slices.Contains(but, l) && s.meets(p.bands[l]) {
			return false
		}
	}
	return true
}

// crosses tells whether an outline meets the lines of a dimension.
func (p *picture) crosses(s shape) bool { return p.lines.meets(s) || p.extends.meets(s) }
