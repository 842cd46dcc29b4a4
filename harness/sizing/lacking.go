package sizing

import (
	"fmt"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// lacking says of each relay and block left open that nothing in the library bears
// what it carries where it stands.
func (s *search) lacking() (list []string) {
	w := s.look(s.best.verdict)
	for i, x := range s.slots {
		bears := map[Kind]func(i, k int) bool{RelayForm: w.contactsBear, BlockType: w.blockBears}[x.kind]
		if bears == nil || w.v.c.PartOf(x.owner) == nil || someBear(x, func(k int) bool { return bears(i, k) }) {
			continue
		}
		list = append(list, fmt.Sprintf("no %s in the library bears what %s carries, %s", x.kind, x.part,
			quantity.Format(w.mostA(w.v.c.PartOf(x.owner)), quantity.Current)))
	}
	return list
}

func someBear(x *slot, bears func(k int) bool) bool {
	for k := range x.count() {
		if bears(k) {
			return true
		}
	}
	return false
}

// mostA is the greatest current of a part's contacts or ways at nominal.
func (w *view) mostA(p *circuit.Part) (most float64) {
	for _, b := range p.Branches {
		most = max(most, w.amps[b.Index])
	}
	return most
}
