package circuit

import (
	"slices"

	"fusewright/harness/design"
)

// Parallel are the wires that lie side by side with one, itself included, in the order of
// their numbers: equal, between the same terminals, each with its share of the current. Of a
// wire alone it is that one.
func (w *Wire) Parallel() []*Wire {
	if w.Spec.Parallel < 2 || w.From == nil {
		return []*Wire{w}
	}
	var list []*Wire
	for _, x := range w.From.Wires {
		if x.To == w.To && x.From == w.From && x.Role == w.Role && x.Spec.Parallel > 1 {
			list = append(list, x)
		}
	}
	slices.SortFunc(list, func(a, b *Wire) int { return design.Number{Label: a.Number}.Compare(design.Number{Label: b.Number}) })
	return list
}

// ShareA is what a branch has of a current that all which lie side by side with it carry.
func (b *Branch) ShareA(amps float64) float64 {
	if b.Wire == nil || b.Wire.Spec.Parallel < 2 {
		return amps
	}
	return amps / float64(b.Wire.Spec.Parallel)
}

// Abreast is a way with the wires that lie side by side with its own.
func Abreast(way []*Branch) []*Branch {
	if !slices.ContainsFunc(way, func(b *Branch) bool { return b.Wire != nil && b.Wire.Spec.Parallel > 1 }) {
		return way
	}
	var all []*Branch
	for _, b := range way {
		if b.Wire == nil {
			all = append(all, b)
			continue
		}
		for _, w := range b.Wire.Parallel() {
			if !slices.Contains(all, w.Branch) {
				all = append(all, w.Branch)
			}
		}
	}
	return all
}
