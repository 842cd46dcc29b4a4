package design

import "fmt"

// checkLengths reports wires whose length nothing gives: the wire does not say
// it, and no runs join the places of its two ends.
func (r *reader) checkLengths() {
	joined := newPlaceSets(r.d.Runs)
	for _, c := range r.connections {
		for _, f := range *c.feeds {
			if !f.Wire.LengthM.Given() {
				r.checkLength(c, f, joined)
			}
		}
	}
}

func (r *reader) checkLength(c *connection, f Feed, joined *placeSets) {
	if r.unplaced[c.owner] || r.unplaced[f.From.Part] {
		return // the place is named wrongly, which is reported already
	}
	near, far := c.owner.PartPlace(), f.From.Part.PartPlace()
	verb := "from"
	if c.back {
		verb = "to"
	}
	what := fmt.Sprintf("%s: the length of the wire %s %s is not known", c.of, verb, quoted(f.From.Text))
	switch {
	case near == nil:
		r.report(f.From.Pos, what+": "+quoted(c.owner.PartName())+" has no place",
			`"at" of the part, or "length" of the wire`)
	case far == nil:
		r.report(f.From.Pos, what+": "+quoted(f.From.Part.PartName())+" has no place",
			`"at" of the part, or "length" of the wire`)
	case joined.find(near) != joined.find(far):
		r.report(f.From.Pos, fmt.Sprintf("%s: no runs lead from %s to %s", what, quoted(near.Name),
			quoted(far.Name)), `"runs" that join them, or "length" of the wire`)
	}
}

// placeSets are the places joined by runs: a union-find structure.
type placeSets struct{ parent map[*Place]*Place }

func newPlaceSets(runs []*Run) *placeSets {
	s := &placeSets{map[*Place]*Place{}}
	for _, run := range runs {
		if run.From != nil && run.To != nil {
			s.parent[s.find(run.From)] = s.find(run.To)
		}
	}
	return s
}

// find is the place that stands for all that are joined to one, with the way
// to it shortened on the go.
func (s *placeSets) find(p *Place) *Place {
	for s.parent[p] != nil && s.parent[p] != p {
		if up := s.parent[s.parent[p]]; up != nil {
			s.parent[p] = up
		}
		p = s.parent[p]
	}
	return p
}
