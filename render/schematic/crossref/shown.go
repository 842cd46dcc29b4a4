package crossref

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
)

// refsOf is every reference and wire number that a cell shows. The generator and
// the vehicle's loads stand with the battery.
func refsOf(c *circuit.Circuit, of *cell.Cell) (refs []string) {
	refs = append(refs, of.Part.Ref)
	for _, w := range of.Ways {
		refs = append(refs, w.Ref)
	}
	for _, in := range of.Inlets {
		if in.Wire != nil {
			refs = append(refs, in.Wire.Number)
		}
	}
	for _, w := range of.Returns {
		refs = append(refs, w.Number)
	}
	if of.Part.Kind == circuit.Battery {
		g, v := parts.SourceParts(c)
		for _, q := range []*circuit.Part{g, v} {
			if q != nil {
				refs = append(refs, q.Ref)
			}
		}
	}
	return refs
}

// noteShown files the cells of all pages under what they show.
func (s *Sheets) noteShown() {
	s.shown = map[string][]*cell.Cell{}
	for _, p := range s.Pages {
		for _, c := range p.Cells {
			if c.Kind == cell.Part {
				for _, ref := range refsOf(s.Circuit, c) {
					s.shown[ref] = append(s.shown[ref], c)
				}
			}
		}
	}
}

// On tells whether something of an entry is drawn on a page.
func (s *Sheets) On(p *arrange.Page, m *sign.Entry) bool {
	return slices.ContainsFunc(m.Refs, func(ref string) bool { return slices.ContainsFunc(s.shown[ref], p.Holds) })
}

// Drawn tells whether something of an entry is drawn on any page.
func (s *Sheets) Drawn(m *sign.Entry) bool {
	return slices.ContainsFunc(m.Refs, func(ref string) bool { return s.shown[ref] != nil })
}

// PlaceOf is sheet and zone of what an entry is about: in this drawing, else in
// that of the earlier design.
func (s *Sheets) PlaceOf(m *sign.Entry) string {
	for _, ref := range m.Refs {
		if list := s.shown[ref]; list != nil {
			return s.Where(list[0])
		}
	}
	if s.Earlier != nil && !s.Signs.AsWas {
		return s.Earlier.PlaceOf(s.Earlier.Signs.List[m.Number-1])
	}
	return ""
}
