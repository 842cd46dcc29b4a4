package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// Plan is what was chosen for a design.
type Plan struct {
	Design  *design.Design
	Choices []*Choice // in the order of the design's sections
	Cost    Cost
	// LeftG is the copper of the whole harness that is bought and not cut, in grams: no
	// part of the cost.
	LeftG float64
	// Proven tells that nothing remains and that no cheaper sizes and ratings do;
	// otherwise the choices are the best that the heuristic found.
	Proven bool
	// AsIfOn are the loads that no situation turns on: each is sized as if it
	// were on at cruise, with what shares its fuse. By name.
	AsIfOn []string
	// Remaining are the findings about sizes and ratings that no choice found
	// avoids; see Explain for the ways out.
	Remaining []*finding.Finding
	// Elsewhere are the dangers and faults that no size or rating mends, such as a bilge pump
	// behind the battery switch; set by Explain.
	Elsewhere []*finding.Finding
	// Lacking says what the library has nothing for; set by Explain.
	Lacking   []string
	Conflicts []*Conflict // set by Explain: what stands against mending them
	WaysOut   []*WayOut   // set by Explain, the cheapest first

	s          *search
	first      []int               // by slot: its choice, if it has one; those of the wires alike follow
	situations []*design.Situation // in which the choice was made
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
	// Usual is, of a wire with a better insulation than the usual one, what it would be in
	// that: "16 mm² ISO 6722 thin wall class B".
	Usual string

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
	charging, err := chargers(d)
	if err != nil {
		return nil, err
	}
	if len(collect(d)) == 0 && !endsOpen(d) && len(charging) == 0 {
		return nil, nil
	}
	var s *search
	var situations []*design.Situation
	if err := during(d, d.Situations, func() (err error) {
		s, err = choose(d)
		situations = d.Situations
		return err
	}); err != nil {
		return nil, err
	}
	p := &Plan{Design: d, Cost: s.best.cost, LeftG: leftG(s.best.verdict.c), Proven: s.proven, AsIfOn: s.asIfOn, Remaining: s.best.verdict.findings, s: s,
		situations: situations, Choices: charging}
	for _, x := range s.slots {
		p.first = append(p.first, len(p.Choices))
		for _, y := range x.each() {
			if y.at, y.sizes = x.at, x.sizes; !s.lacks(x) {
				p.Choices = append(p.Choices, y.choice(s.usual[y.home()]))
			}
		}
	}
	p.Choices = append(p.Choices, crimpChoices(s)...)
	return p, nil
}

// choose finds the best choices, with wires alike; those on the way of a danger or
// a fault that is left are then chosen each by itself, where that leaves fewer.
func choose(d *design.Design) (*search, error) {
	usualInsulation(d)
	s, err := chooseBare(d, nil)
	if err != nil {
		return nil, err
	}
	return insulated(d, s)
}

// chooseBare is choose with the insulations as they are. The loads sized as if on have
// their situations already.
func chooseBare(d *design.Design, asIfOn []string) (*search, error) {
	s := newSearch(d, alike(d, collectAnew(d), nil))
	s.asIfOn = asIfOn
	if err := s.run(); err != nil {
		return nil, err
	}
	apart := s.concernedHomes()
	if len(apart) == 0 {
		return s, nil
	}
	t := newSearch(d, alike(d, collectAnew(d), apart))
	t.asIfOn = s.asIfOn
	if err := t.run(); err != nil || t.best.verdict.score.grave().less(s.best.verdict.score.grave()) {
		return t, err
	}
	s.take(s.best)
	return s, nil
}

// concernedHomes are the wires alike on the way of the dangers and faults left.
func (s *search) concernedHomes() map[home]bool {
	homes := map[home]bool{}
	if s.best.verdict.score.grave() == (score{}) {
		return homes
	}
	w := s.look(s.best.verdict)
	a := w.findApart()
	for _, f := range s.best.verdict.findings {
		if f.Severity < finding.Fault {
			continue
		}
		for _, i := range s.concernedBy(a, w, f, WireSize) {
			if x := s.slots[i]; len(x.also) > 0 {
				for _, y := range x.each() {
					homes[y.home()] = true
				}
			}
		}
	}
	return homes
}

// keys are the keys of choices that have one.
var keys = map[Kind]string{WireSize: "size", RelayForm: "form", BlockType: "type", Plug: "plug", RunCover: "cover"}

// choice is a slot's present candidate as a Choice, with its insulation where the usual one
// would have come to something else.
func (x *slot) choice(usual string) *Choice {
	c := &Choice{Kind: x.kind, Part: x.part, Pos: x.pos, Value: x.label(x.at), Path: x.path}
	c.Set = []Setting{{keys[x.kind], c.Value}}
	if _, parts := x.owner.(*design.Connector); parts {
		c.Set[0].Key = "family"
	}
	if x.kind == Fuse {
		c.Set = x.fuseSettings()
	}
	if c.Usual = usual; usual != "" {
		name := x.feeds[0].Wire.Type.Name
		c.Set, c.Value = append([]Setting{{"insulation", name}}, c.Set...), c.Value+" "+name
	}
	return c
}

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

// crimpChoices are the crimp parts that the design asks to have chosen by name, of
// several wires of one feed once.
func crimpChoices(s *search) (list []*Choice) {
	for _, w := range s.best.verdict.c.Wires {
		add := func(auto bool, key string, part *library.Terminal) {
			l, ok := s.homes[homeOf(w)]
			if !auto || part == nil || !ok || slices.ContainsFunc(list, func(c *Choice) bool {
				return c.Pos == w.Spec.Pos && c.Set[0].Key == key
			}) {
				return
			}
			list = append(list, &Choice{Kind: CrimpPart, Part: w.Number + ", " + key, Pos: w.Spec.Pos, Value: part.Name,
				Path: append(l.path(), "ends"), Set: []Setting{{key, part.Name}},
				Decided: "the kind of the part it goes to and the wire's size"})
		}
		add(w.Spec.FromAuto, "from", w.FromEnd)
		add(w.Spec.ToAuto, "to", w.ToEnd)
	}
	return list
}

// Rater is what the search rated the design's wires by, with all that it remembers; a new one
// where nothing was open.
func (p *Plan) Rater(d *design.Design) *conductor.Rater {
	if p == nil {
		return conductor.NewRater(d.Library, d.Practice)
	}
	return p.s.rater
}
