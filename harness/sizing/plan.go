package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/review/finding"
)

// Plan is what was chosen for a design.
type Plan struct {
	Design  *design.Design
	Choices []*Choice // in the order of the design's sections
	Cost    Cost
	// Proven tells that nothing remains and that no cheaper sizes and ratings do;
	// otherwise the choices are the best that the heuristic found.
	Proven bool
	// Remaining are the findings about sizes and ratings that no choice found
	// avoids; see Explain for the ways out.
	Remaining []*finding.Finding
	Conflicts []*Conflict // set by Explain: what stands against mending them
	WaysOut   []*WayOut   // set by Explain, the cheapest first

	s *search
}

// Choice is one value chosen.
type Choice struct {
	Kind  Kind
	Part  string // "left lamp, return wire"
	Pos   problem.Pos
	Value string // as people say it: "blade C 15 A"
	// Path leads to the record in the file: sections, names, list indices. Set
	// are the keys of the record to set, in order.
	Path []string
	Set  []Setting

	// Set by Explain:
	Decided  string // the constraint that decided it, or the cost
	RunnerUp string // the next best candidate; empty when there is no other
	Lost     string // why it lost
	// MoreG is what the runner-up costs more, in grams of copper, where only the
	// cost stands against it; else 0.
	MoreG float64
}

// Setting is a key and its value.
type Setting struct{ Key, Value string }

// Complete chooses all that a design leaves open and fills it in. Nil without
// an error when nothing is open. The error is the circuit's list of problems,
// as circuit.Build gives it; the design is usable all the same. Choosing again
// gives the same.
func Complete(d *design.Design) (*Plan, error) {
	slots := collect(d)
	if len(slots) == 0 && !endsOpen(d) {
		return nil, nil
	}
	s := newSearch(d, slots)
	if err := s.run(); err != nil {
		return nil, err
	}
	p := &Plan{Design: d, Cost: s.best.cost, Proven: s.proven, Remaining: s.best.verdict.findings, s: s}
	for _, x := range slots {
		p.Choices = append(p.Choices, x.choice())
	}
	p.Choices = append(p.Choices, crimpChoices(s)...)
	return p, nil
}

// choice is a slot's present candidate as a Choice.
func (x *slot) choice() *Choice {
	c := &Choice{Kind: x.kind, Part: x.part, Pos: x.pos, Value: x.label(x.at), Path: x.path}
	switch x.kind {
	case WireSize:
		c.Set = []Setting{{"size", c.Value}}
	case Fuse:
		c.Set = x.fuseSettings()
	case RelayForm:
		c.Set = []Setting{{"form", c.Value}}
	case BlockType:
		c.Set = []Setting{{"type", c.Value}}
	case Plug:
		c.Set = []Setting{{"plug", c.Value}}
	case RunCover:
		c.Set = []Setting{{"cover", c.Value}}
	}
	return c
}
