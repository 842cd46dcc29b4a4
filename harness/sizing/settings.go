package sizing

import (
	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// fuseSettings are the keys of a fuse that were left open.
func (x *slot) fuseSettings() []Setting {
	c := x.fuses[x.at]
	rating := quantity.Plain(c.rating.RatingA, quantity.Current)
	if x.way != nil {
		return []Setting{{"fuse", rating}}
	}
	var list []Setting
	if x.fuse.TypeAuto {
		list = append(list, Setting{"type", c.kind.Name})
	}
	if x.fuse.RatingAuto {
		list = append(list, Setting{"rating", rating})
	}
	return list
}

// crimpChoices are the crimp parts that the design asks to have chosen by name.
func crimpChoices(s *search) []*Choice {
	var list []*Choice
	seen := map[string]bool{}
	for _, w := range s.best.verdict.c.Wires {
		for _, e := range []struct {
			auto bool
			key  string
			part *library.Terminal
		}{{w.Spec.FromAuto, "from", w.FromEnd}, {w.Spec.ToAuto, "to", w.ToEnd}} {
			l, ok := s.homes[homeOf(w)]
			if !e.auto || e.part == nil || !ok {
				continue
			}
			c := &Choice{Kind: CrimpPart, Part: w.Number + ", " + e.key, Pos: w.Spec.Pos, Value: e.part.Name,
				Path: append(l.path(), "ends"), Set: []Setting{{e.key, e.part.Name}},
				Decided: "the kind of the part it goes to and the wire's size"}
			if id := w.Spec.Pos.String() + e.key; !seen[id] {
				seen[id] = true
				list = append(list, c)
			}
		}
	}
	return list
}
