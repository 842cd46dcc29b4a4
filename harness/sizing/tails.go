package sizing

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// tailM is the length of a tail into a holder: out of its way, and no run of its own
// (common practice, no source).
const (
	tailM    = 0.15
	tailText = "150 mm"
)

// tails are the trials of a short tail behind what takes no thicker wire, with a splice
// to thicker wire that goes on from there.
func (s *search) tails(w *view, about *concerned) (list []change) {
	for _, b := range about.loads {
		for _, x := range w.v.c.MainFeed(b.A).Wires() {
			l, ok := s.homes[homeOf(x)]
			if !ok || l.role != circuit.FeedWire || len(*l.feeds) != 1 || x.LengthM <= 2*tailM || !w.kept(x) {
				continue
			}
			list = append(list, change{what: fmt.Sprintf("a tail of %s behind %s, which takes no wire thicker than %s, spliced to thicker wire",
				tailText, x.From.Part.Name, x.Spec.Size.Label), tells: []home{l.home}, do: func(u *undo) { s.tail(u, &(*l.feeds)[0]) }})
		}
	}
	return list
}

// kept tells whether the end at its source keeps an open wire from being thicker, and
// the other end does not.
func (w *view) kept(x *circuit.Wire) bool {
	sizes := x.Spec.Type.Sizes
	for i := range sizes {
		if z := sizes[i]; x.Spec.SizeAuto && z.AreaMm2 > x.Spec.Size.AreaMm2*1.001 {
			ends := w.ends(x, z)
			return ends[0].none && !ends[1].none
		}
	}
	return false
}

// tail feeds a wire from a splice at the end of a tail.
func (s *search) tail(u *undo, f *design.Feed) {
	at := &design.Splice{Common: design.Common{Name: f.From.Part.PartName() + " tail", At: f.From.Part.PartPlace(), Pos: f.Wire.Pos}}
	keep(u, &s.d.Splices)
	keep(u, f)
	tail := *f
	tail.Wire.LengthM = design.Quantity{Value: tailM, Text: tailText}
	at.FedBy = []design.Feed{tail}
	s.d.Splices = append(s.d.Splices[:len(s.d.Splices):len(s.d.Splices)], at)
	f.From = design.Ref{Text: at.Name, Part: at, Pos: f.From.Pos}
}
