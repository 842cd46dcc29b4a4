package layout

import (
	"math"
	"slices"

	"fusewright/harness/workshop/formboard"
	"fusewright/render/frame"
	"fusewright/render/scene"
)

// phrase is a line of words with its look.
type phrase struct {
	text   string
	face   scene.Face
	sizeMM float64
}

// block is words that stand together, with a numbered ring at the left when
// ring is not empty.
type block struct {
	ring  string
	lines []phrase
	group scene.Group // round the words; none without a class

	w, h float64 // see size
}

const (
	ringMM     = 2.9 // radius of a numbered ring
	ringGap    = 1.2 // ring to words
	blockLine  = 3.7 // from line to line
	blockDown  = 0.8 // below the last baseline
	blockUp    = 2.5 // above the first
	mostReach  = 110.0
	leaderPast = 3.2 // a label further off gets a leader
)

// add adds lines of small words.
func (b *block) add(lines ...string) {
	for _, line := range lines {
		b.lines = append(b.lines, phrase{line, scene.Regular, frame.SmallMM})
	}
}

// size is the rectangle that a block takes.
func (b *block) size() (w, h float64) {
	if b.h > 0 { // asked for at every place that is tried
		return b.w, b.h
	}
	for _, l := range b.lines {
		w = math.Max(w, scene.TextWidthMM(l.text, l.sizeMM, l.face))
	}
	if len(b.lines) > 0 {
		h = blockUp + blockDown + blockLine*float64(len(b.lines)-1)
	}
	if b.ring != "" {
		gap := ringGap
		if len(b.lines) == 0 {
			gap = 0
		}
		w, h = w+2*ringMM+gap, math.Max(h, 2*ringMM)
	}
	b.w, b.h = w, h
	return w, h
}

// label finds the nearest free place for a block around an anchor and draws it,
// with a leader when it stands off. The anchor is inside something of the given
// radius; preferDeg is the direction tried first; bands of own may be crossed
// by the leader.
func (p *picture) label(anchor scene.Point, radius, preferDeg float64, own []*formboard.Limb, b *block) bool {
	return p.labelAny([]scene.Point{anchor}, radius, preferDeg, own, b)
}

// labelAny is label with a choice of anchors: near places at any of them go
// before far ones, and leaders across dimension lines come last.
func (p *picture) labelAny(anchors []scene.Point, radius, preferDeg float64, own []*formboard.Limb, b *block) bool {
	for _, step := range []struct {
		over        crossing
		least, most float64
	}{{nothing, 0, 8}, {nothing, 8, 26}, {dimensions, 0, 26}, {nothing, 26, 60}, {dimensions, 26, 60},
		{bands, 0, 40}, {bands, 40, mostReach}} {
		for _, anchor := range anchors {
			if p.labelled(anchor, radius, preferDeg, own, b, step.over, step.least, step.most) {
				return true
			}
		}
	}
	p.lost++
	return false
}

// crossing is what a leader may cross.
type crossing int

const (
	nothing crossing = iota
	dimensions
	bands // dimensions and runs
)

// labelled is label within a range of reach.
func (p *picture) labelled(anchor scene.Point, radius, preferDeg float64, own []*formboard.Limb, b *block,
	over crossing, least, most float64) bool {
	for reach := math.Max(radius+1.4, least); reach < most; reach = reach*1.15 + 0.6 {
		for _, deg := range around(preferDeg) {
			s := b.stand(anchor, reach, deg)
			if area := rectShape(s.area.Grow(0.8)); p.full && !p.window.Contains(s.area.Grow(1)) || !p.free(area) || p.crosses(area) {
				continue
			}
			from, to := s.leader(b, anchor, radius)
			led := b.ring != "" || math.Hypot(to.X-from.X, to.Y-from.Y) > leaderPast
			way := lineShape(along(from, to, 0.4, 0), to, 0.5)
			if led && (p.taken.meets(way) || over < bands && !p.free(way, own...) || over < dimensions && p.crosses(way) ||
				way.meets(rectShape(s.words))) {
				continue
			}
			if b.group.Class != "" {
				p.sheet.Begin(b.group)
			}
			p.paintBlock(b, s)
			p.taken.add(rectShape(s.area.Grow(0.3)))
			if led {
				p.leader(from, to, anchor, own)
				p.taken.add(lineShape(from, to, 0.5))
			}
			if b.group.Class != "" {
				p.sheet.End()
			}
			return true
		}
	}
	return false
}

// leader draws a leader; one to a run ends in a dot inside the run.
func (p *picture) leader(from, to, anchor scene.Point, own []*formboard.Limb) {
	if len(own) > 0 {
		p.sheet.Dot(anchor, 0.5, scene.Ink)
		from = anchor
	}
	p.sheet.Line(from, to, scene.Pen(dimensionMM))
}

// stood is where a block stands: all of it, its words, its ring's centre.
type stood struct {
	area, words scene.Rect
	ring        scene.Point
	left        bool // words at the left of the ring
}

// stand puts a block at a distance from an anchor in a direction: its nearest
// edge there or, when it has a ring, the edge of the ring.
func (b *block) stand(anchor scene.Point, reach, deg float64) stood {
	w, h := b.size()
	ux, uy := direction(deg)
	if b.ring == "" {
		r := scene.Rect{X: anchor.X + ux*(reach+w/2) - w/2, Y: anchor.Y + uy*(reach+h/2) - h/2, W: w, H: h}
		return stood{area: r, words: r}
	}
	c := scene.Point{X: anchor.X + ux*(reach+ringMM), Y: anchor.Y + uy*(reach+ringMM)}
	s := stood{area: scene.Rect{X: c.X - ringMM, Y: c.Y - h/2, W: w, H: h}, ring: c, left: ux < -1e-9}
	s.words = scene.Rect{X: c.X + ringMM + 0.6, Y: s.area.Y, W: w - 2*ringMM - 0.6, H: h}
	if s.left {
		s.area.X = c.X + ringMM - w
		s.words.X = s.area.X
	}
	if len(b.lines) == 0 {
		s.words = scene.Rect{}
	}
	return s
}

// leader runs from the edge of what is meant to the ring or, without one, to
// the nearest point of the words.
func (s stood) leader(b *block, anchor scene.Point, radius float64) (from, to scene.Point) {
	r := s.area
	to = scene.Point{X: math.Max(r.X, math.Min(r.Right(), anchor.X)), Y: math.Max(r.Y, math.Min(r.Bottom(), anchor.Y))}
	if b.ring != "" {
		to = along(s.ring, anchor, ringMM, 0)
	} else if math.Hypot(to.X-anchor.X, to.Y-anchor.Y) > radius+1 {
		to = along(to, anchor, 0.6, 0)
	}
	return along(anchor, to, radius, 0), to
}

// around is directions by their turn from the preferred one.
func around(prefer float64) []float64 {
	const step = 15
	list := []float64{prefer}
	for turn := float64(step); turn <= 180; turn += step {
		list = append(list, prefer+turn, prefer-turn)
	}
	return list
}

func (p *picture) paintBlock(b *block, s stood) {
	x, align := s.area.X, scene.Left
	if b.ring != "" {
		pen := scene.Pen(outlineMM)
		c := s.ring
		p.sheet.Circle(c, ringMM, &pen, nil)
		p.sheet.TextIn(scene.Rect{X: c.X - ringMM, Y: c.Y - ringMM, W: 2 * ringMM, H: 2 * ringMM}, b.ring,
			scene.TextStyle{SizeMM: ringSize(b.ring), Face: scene.Bold, Align: scene.Middle, Colour: scene.Ink})
		x = c.X + ringMM + ringGap
		if s.left {
			x, align = c.X-ringMM-ringGap, scene.Right
		}
	}
	y := s.area.Y + (s.area.H-blockUp-blockDown-blockLine*float64(len(b.lines)-1))/2 + blockUp
	for _, l := range b.lines {
		p.sheet.TextAt(scene.Point{X: x, Y: y}, l.text,
			scene.TextStyle{SizeMM: l.sizeMM, Face: l.face, Align: align, Colour: scene.Ink})
		y += blockLine
	}
}

// ringSize keeps long numbers inside the ring, at the least size allowed.
func ringSize(s string) float64 {
	return scene.FitSizeMM(s, frame.NormalMM, 2.86, 2*ringMM-1.2, scene.Bold)
}

// nameSpot writes a place's name at its nail, in the widest gap between runs.
func (p *picture) nameSpot(s *formboard.Spot) {
	b := &block{lines: []phrase{{s.Place.Name, scene.Bold, frame.NormalMM}}, group: scene.Group{Class: "name"}}
	for _, l := range s.Limbs {
		if p.tip(l) == s {
			words := p.unit.Dim(l.Run.Length) + " " + p.unit.Small()
			b.add("end of run " + number(l.Run) + ", " + words)
			b.group = scene.Group{Class: "dimension", Title: words}
		}
	}
	b.add(spotWords(s)...)
	p.label(p.at(s.At), p.nailMM(s), widestGap(s), nil, b)
}

// widestGap is the direction furthest from all runs at a spot.
func widestGap(s *formboard.Spot) float64 {
	var at []float64
	for _, l := range s.Limbs {
		far := l.Far(s)
		deg := math.Atan2(s.At.Y-far.At.Y, far.At.X-s.At.X) * 180 / math.Pi
		at = append(at, math.Mod(deg+720, 360))
	}
	slices.Sort(at)
	best, wide := 90.0, 0.0
	for i := range at {
		next := at[(i+1)%len(at)]
		gap := math.Mod(next-at[i]+360, 360)
		if len(at) == 1 {
			gap = 360
		}
		if gap > wide+1e-9 {
			best, wide = at[i]+gap/2, gap
		}
	}
	return best
}

// nameRun puts a run's number in a ring beside it, with as many words as the
// picture's detail allows.
func (p *picture) nameRun(l *formboard.Limb) {
	a, b := p.ends(l)
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	blk := &block{ring: number(l.Run), group: scene.Group{Class: "name"}}
	if l.Broken() {
		blk.lines = lengthLines(p.unit, l)
	}
	blk.add(runLines(p.unit, l.Run, p.detail)...)
	prefer := math.Atan2(a.Y-b.Y, b.X-a.X)*180/math.Pi - 90
	if math.Mod(prefer+720, 360) < 180 {
		prefer += 180 // dimensions stand above; begin below
	}
	var anchors []scene.Point
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
		at := along(a, b, share*long, 0)
		if !p.inBreak(l, at) && p.free(lineShape(along(a, b, share*long-0.6, 0), along(a, b, share*long+0.6, 0), 2*p.half(l.Run)), l) {
			anchors = append(anchors, at)
		}
	}
	if len(anchors) == 0 {
		anchors = shares(a, b, 0.2, 0.8, 0.5, 0.4, 0.6)
	}
	p.labelAny(anchors, p.half(l.Run)+0.2, prefer, []*formboard.Limb{l}, blk)
}
