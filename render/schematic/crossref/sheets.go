// Package crossref knows where everything stands in the whole set of sheets, and
// how the sheets name one another.
package crossref

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
)

// Sheets is where everything stands in the whole set of sheets, and how they
// name one another.
type Sheets struct {
	*arrange.Arrangement
	Refs  map[*circuit.Terminal]*crossing
	shown map[string][]*cell.Cell // by references and wire numbers, in page order
}

// Of notes where the cells of all pages stand.
func Of(a *arrange.Arrangement) *Sheets {
	s := &Sheets{Arrangement: a, Refs: map[*circuit.Terminal]*crossing{}}
	s.addReferences()
	s.Note()
	return s
}

// crossing is where a terminal appears on several sheets.
type crossing struct {
	Home  *cell.Cell   // shows the terminal itself
	From  *cell.Cell   // flag beside it
	Aways []*cell.Cell // flags on other sheets, or elsewhere on this one
}

// addReferences notes where each terminal that stands on several places stands.
func (s *Sheets) addReferences() {
	for _, p := range s.Pages {
		for _, c := range p.Cells {
			if c.Empty || c.Kind != cell.Out && c.Kind != cell.In {
				continue
			}
			x := s.Refs[c.Term]
			if x == nil {
				x = &crossing{Home: s.Outs[c.Term]}
				s.Refs[c.Term] = x
			}
			if c.Kind == cell.Out {
				x.From = c
			} else {
				x.Aways = append(x.Aways, c)
			}
		}
	}
}

// refsOf is every reference and wire number that a cell shows. The generator,
// the vehicle's loads and the ground bars stand with the battery.
func refsOf(c *circuit.Circuit, of *cell.Cell) (refs []string) {
	refs = append(refs, of.Part.Ref)
	for _, w := range of.Ways {
		refs = append(refs, w.Ref)
	}
	for _, w := range of.Wires() {
		refs = append(refs, w.Number)
	}
	if of.Part.Kind == circuit.Battery {
		for _, w := range of.Returns {
			refs = append(refs, w.From.Part.Ref)
		}
		g, v := parts.SourceParts(c)
		for _, q := range []*circuit.Part{g, v} {
			if q != nil {
				refs = append(refs, q.Ref)
			}
		}
	}
	return refs
}

// Note files the cells of all pages under what they show.
func (s *Sheets) Note() {
	s.shown = map[string][]*cell.Cell{}
	for _, p := range s.Pages {
		for _, c := range p.Cells {
			if c.Kind == cell.Part && !c.Empty {
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

// PlaceOf is sheet and zone of what an entry is about.
func (s *Sheets) PlaceOf(m *sign.Entry) string {
	for _, ref := range m.Refs {
		if list := s.shown[ref]; list != nil {
			return s.Where(list[0])
		}
	}
	return ""
}
