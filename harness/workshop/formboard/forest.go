package formboard

import (
	"sort"

	"fusewright/harness/design"
)

// MostLimbs is how many runs a section holds, so that its drawing stays
// readable on a small sheet; a larger loom is parted at its breakouts. Our
// choice.
const MostLimbs = 10

// forest is the runs as trees, one for each joined loom.
type forest struct {
	places []*design.Place
	runs   map[*design.Place][]*Run // of the trees, in design order
	loose  map[*design.Place][]*Run // loops cut open, by the place they still hang on
	seen   map[*design.Place]bool
	source *design.Place
	made   []*Section
}

// grow keeps, of runs that form loops, those with the most wires; of equal ones
// those that come first. The others are cut open at their second place.
func (f *forest) grow(d *design.Design, runs []*Run) {
	f.places, f.source = d.Places, d.Battery.At
	f.runs, f.loose = map[*design.Place][]*Run{}, map[*design.Place][]*Run{}
	f.seen = map[*design.Place]bool{}
	order := append([]*Run(nil), runs...)
	sort.SliceStable(order, func(i, j int) bool {
		return len(order[i].Bundle.Wires) > len(order[j].Bundle.Wires)
	})
	group := map[*design.Place]*design.Place{}
	for _, r := range order {
		a, b := find(group, r.Bundle.Run.From), find(group, r.Bundle.Run.To)
		if a == b {
			r.LoopAt = r.Bundle.Run.To
			continue
		}
		group[a] = b
	}
	for _, r := range runs {
		from, to := r.Bundle.Run.From, r.Bundle.Run.To
		if r.LoopAt != nil {
			f.loose[from] = append(f.loose[from], r)
			continue
		}
		f.runs[from] = append(f.runs[from], r)
		f.runs[to] = append(f.runs[to], r)
	}
}

// find is the mark of a place's group, shortening the way to it.
func find(group map[*design.Place]*design.Place, p *design.Place) *design.Place {
	for group[p] != nil {
		if next := group[group[p]]; next != nil {
			group[p] = next
		}
		p = group[p]
	}
	return p
}

// sections parts every tree, the source's first.
func (f *forest) sections() []*Section {
	roots := append([]*design.Place{f.source}, f.places...)
	for _, p := range roots {
		if p != nil && !f.seen[p] && len(f.runs[p])+len(f.loose[p]) > 0 {
			f.seen[p] = true
			first := len(f.made)
			f.close(f.part(p))
			made := f.made[first:] // the pieces at the tips were finished first
			sort.SliceStable(made, func(i, j int) bool {
				return made[i].Limbs[0].Run.Number < made[j].Limbs[0].Run.Number
			})
		}
	}
	f.number()
	return f.made
}

// piece is a connected part of a tree that hangs on a spot.
type piece struct {
	root  *Spot
	spots []*Spot
	limbs []*Limb
}

// part cuts what hangs on a place into sections and returns the piece left over
// at the place itself.
func (f *forest) part(p *design.Place) *piece {
	open := newPiece(p)
	join := func(r *Run, sub *piece) {
		if len(sub.limbs) >= MostLimbs {
			f.close(sub)
			sub = newPiece(sub.root.Place)
		}
		if len(open.limbs)+len(sub.limbs)+1 > MostLimbs {
			f.close(open)
			open = newPiece(p)
		}
		open.hang(r, sub)
	}
	for _, r := range f.runs[p] {
		far := r.Bundle.Run.From
		if far == p {
			far = r.Bundle.Run.To
		}
		if !f.seen[far] {
			f.seen[far] = true
			join(r, f.part(far))
		}
	}
	for _, r := range f.loose[p] {
		end := newPiece(r.Bundle.Run.To)
		end.root.Copy = true
		join(r, end)
	}
	return open
}

func newPiece(p *design.Place) *piece {
	s := &Spot{Place: p}
	return &piece{root: s, spots: []*Spot{s}}
}

// hang joins a piece by a run.
func (p *piece) hang(r *Run, sub *piece) {
	l := &Limb{Run: r, From: p.root, To: sub.root, near: p.root, far: sub.root}
	if r.Bundle.Run.From != p.root.Place {
		l.From, l.To = sub.root, p.root
	}
	p.root.Limbs = append(p.root.Limbs, l)
	sub.root.Limbs = append([]*Limb{l}, sub.root.Limbs...)
	p.limbs = append(append(p.limbs, l), sub.limbs...)
	p.spots = append(p.spots, sub.spots...)
}

// close makes a section of a piece; one without runs is none.
func (f *forest) close(p *piece) {
	if len(p.limbs) == 0 {
		return
	}
	for i, s := range p.spots {
		s.index = i
	}
	f.made = append(f.made, &Section{Spots: p.spots, Limbs: p.limbs})
}

// number counts the sections and tells each spot in which others its place is.
func (f *forest) number() {
	in := map[*design.Place][]*Section{}
	for i, s := range f.made {
		s.Number = i + 1
		for _, spot := range s.Spots {
			if !spot.Copy {
				in[spot.Place] = append(in[spot.Place], s)
			}
		}
	}
	for _, s := range f.made {
		for _, spot := range s.Spots {
			for _, other := range in[spot.Place] {
				if other != s {
					spot.Others = append(spot.Others, other.Number)
				}
			}
		}
	}
}
