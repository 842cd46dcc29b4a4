package derivation

import (
	"fusewright/harness/network/circuit"
)

// asked lists the figures of a review in the order of its parts and wires.
func (b *book) asked() (list []Asked) {
	add := func(what string, make func(*book) *Tree) { list = append(list, Asked{what, make}) }
	for _, br := range b.c.Branches {
		if br.Kind == circuit.LoadBranch && br.Load.Load != nil && !br.Load.Standby {
			if _, in := b.worstDrop(br); in >= 0 {
				add("drop of "+br.Part.Name, func(b *book) *Tree { return b.dropTree(br) })
			}
		}
	}
	return list
}
