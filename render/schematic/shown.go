package schematic

import (
	"slices"

	"fusewright/harness/network/circuit"
)

// refsOf is every reference and wire number that a cell shows. The generator and
// the vehicle's loads stand with the battery.
func refsOf(c *circuit.Circuit, of *cell) (refs []string) {
	refs = append(refs, of.part.Ref)
	for _, w := range of.ways {
		refs = append(refs, w.ref)
	}
	for _, in := range of.inlets {
		if in.wire != nil {
			refs = append(refs, in.wire.Number)
		}
	}
	for _, w := range of.returns {
		refs = append(refs, w.Number)
	}
	if of.part.Kind == circuit.Battery {
		g, v := sourceParts(c)
		for _, q := range []*circuit.Part{g, v} {
			if q != nil {
				refs = append(refs, q.Ref)
			}
		}
	}
	return refs
}

// noteShown files the cells of all pages under what they show.
func (s *sheets) noteShown() {
	s.shown = map[string][]*cell{}
	for _, p := range s.pages {
		for _, c := range p.cells {
			if c.kind == partCell {
				for _, ref := range refsOf(s.circuit, c) {
					s.shown[ref] = append(s.shown[ref], c)
				}
			}
		}
	}
}

// on tells whether something of an entry is drawn on a page.
func (s *sheets) on(p *page, m *marked) bool {
	return slices.ContainsFunc(m.refs, func(ref string) bool { return slices.ContainsFunc(s.shown[ref], p.holds) })
}

// drawn tells whether something of an entry is drawn on any page.
func (s *sheets) drawn(m *marked) bool {
	return slices.ContainsFunc(m.refs, func(ref string) bool { return s.shown[ref] != nil })
}

// placeOf is sheet and zone of what an entry is about: in this drawing, else in
// that of the earlier design.
func (s *sheets) placeOf(m *marked) string {
	for _, ref := range m.refs {
		if list := s.shown[ref]; list != nil {
			return s.where(list[0])
		}
	}
	if s.earlier != nil && !s.signs.asWas {
		return s.earlier.placeOf(s.earlier.signs.list[m.number-1])
	}
	return ""
}
