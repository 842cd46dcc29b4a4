// Package crossref knows where everything stands in the whole set of sheets, and
// how the sheets name one another.
package crossref

import (
	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
)

// Sheets is where everything stands in the whole set of sheets, and how they
// name one another.
type Sheets struct {
	*arrange.Arrangement
	Refs    map[*circuit.Terminal]*crossing
	shown   map[string][]*cell.Cell // by references and wire numbers, in page order
	Earlier *Sheets                 // of the earlier design, which follow; nil = none

	Numbers []int // sheet of each page in the whole set; nil = in order, 0 = left out
	Total   int   // sheets of the whole set; 0 = these alone
}

func Of(a *arrange.Arrangement) *Sheets {
	s := &Sheets{Arrangement: a, Refs: map[*circuit.Terminal]*crossing{}}
	s.addReferences()
	s.noteShown()
	return s
}

// crossing is where a terminal appears on several sheets.
type crossing struct {
	Home  *cell.Cell   // shows the terminal itself
	From  *cell.Cell   // flag beside it
	Aways []*cell.Cell // flags on other sheets, or elsewhere on this one
}

// Number is the sheet of a page, or of a page of lists after them; 0 when it is
// left out.
func (s *Sheets) Number(index int) int {
	if s.Numbers == nil {
		return index + 1
	}
	return s.Numbers[index]
}

// addReferences notes where each terminal that stands on several places stands.
func (s *Sheets) addReferences() {
	for _, p := range s.Pages {
		for _, c := range p.Cells {
			switch c.Kind {
			case cell.Out:
				s.crossingOf(c.Term).From = c
			case cell.In:
				x := s.crossingOf(c.Term)
				x.Aways = append(x.Aways, c)
			}
		}
	}
	for t, x := range s.Refs {
		x.Home = s.Outs[t]
	}
}

func (s *Sheets) crossingOf(t *circuit.Terminal) *crossing {
	x := s.Refs[t]
	if x == nil {
		x = &crossing{}
		s.Refs[t] = x
	}
	return x
}
