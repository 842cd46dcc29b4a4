package schematic

import "fusewright/harness/network/circuit"

// sheets is where everything stands in the whole set of sheets, and how they
// name one another.
type sheets struct {
	*arrangement
	refs    map[*circuit.Terminal]*crossing
	shown   map[string][]*cell // by references and wire numbers, in page order
	earlier *sheets            // of the earlier design, which follow; nil = none

	numbers []int // sheet of each page in the whole set; nil = in order, 0 = left out
	total   int   // sheets of the whole set; 0 = these alone
}

func sheetsOf(a *arrangement) *sheets {
	s := &sheets{arrangement: a, refs: map[*circuit.Terminal]*crossing{}}
	s.addReferences()
	s.noteShown()
	return s
}

// crossing is where a terminal appears on several sheets.
type crossing struct {
	home  *cell   // shows the terminal itself
	from  *cell   // flag beside it
	aways []*cell // flags on other sheets, or elsewhere on this one
}

// number is the sheet of a page, or of a page of lists after them; 0 when it is
// left out.
func (s *sheets) number(index int) int {
	if s.numbers == nil {
		return index + 1
	}
	return s.numbers[index]
}

// addReferences notes where each terminal that stands on several places stands.
func (s *sheets) addReferences() {
	for _, p := range s.pages {
		for _, c := range p.cells {
			switch c.kind {
			case outCell:
				s.crossingOf(c.term).from = c
			case inCell:
				x := s.crossingOf(c.term)
				x.aways = append(x.aways, c)
			}
		}
	}
	for t, x := range s.refs {
		x.home = s.outs[t]
	}
}

func (s *sheets) crossingOf(t *circuit.Terminal) *crossing {
	x := s.refs[t]
	if x == nil {
		x = &crossing{}
		s.refs[t] = x
	}
	return x
}
