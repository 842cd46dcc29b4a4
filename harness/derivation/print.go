package derivation

import (
	"math"
	"slices"

	"fusewright/harness/design/problem"
)

// finish turns a figure into its tree, with what it is held against and others that the answer
// names: digits first, then the texts, from the root down; a value met again is not taken apart
// again.
func (t *Tree) finish(root, limit *value, also ...*value) *Tree {
	roots := []*value{root}
	if limit != nil {
		roots = append(roots, limit)
	}
	settle(append(roots, also...)...)
	w := writer{seen: map[*value]*Step{}}
	t.Root = w.step(root)
	if limit != nil {
		t.Limit = w.step(limit)
	}
	for _, x := range also {
		t.Also = append(t.Also, w.step(x))
	}
	rests := root.restsOn()
	for i, share := range rests {
		if share > 0 {
			part := &value{v: share * root.v, dim: root.dim, digits: 3}
			t.Rests = append(t.Rests, Rest{onWords[i], share, part.text(), i >= onMemory})
		}
	}
	t.Unsure = root.unsure()
	return t
}

// noMargin says where a margin is less than what is unsure of a figure.
func (t *Tree) noMargin(root, limit *value) {
	rests := root.restsOn()
	if limit != nil && math.Abs(limit.v-root.v) < rests.unsure()*math.Abs(root.v) {
		t.Notes = append(t.Notes, "The margin is less than what rests on values marked ?: treat it as none.")
	}
}

type writer struct{ seen map[*value]*Step }

func (w *writer) step(x *value) *Step {
	number, unit, _, _ := x.print()
	weak := x.weakest()
	rests := x.restsOn()
	s := &Step{Label: x.label, Value: join(number, unit), Formula: x.printed(), Number: x.v / x.scale().factor,
		Unit: unit, Mark: x.mark, Source: x.source, Unsure: rests.unsure(), Off: x.off}
	if weak != nil && weak != x {
		s.Weakest, s.WeakestWhy = weak.mark, weak.label
	}
	s.at(x.pos)
	if first := w.seen[x]; first != nil {
		s.first, s.Above = first, len(x.from) > 0
		return s
	}
	w.seen[x] = s
	for i, y := range x.from {
		if !slices.Contains(x.from[:i], y) {
			s.From = append(s.From, w.step(y))
		}
	}
	return s
}

func (s *Step) at(p problem.Pos) { s.File, s.Line = p.File, p.Line }
