package readings

import (
	"fmt"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/cutting"
)

// Key is what a check is of: its situation, or what its section tests, and its part with the
// place. It stays when checks are numbered anew.
func Key(s *bench.Section, g *bench.Group, c *bench.Check) (in, of string) {
	in = string(s.Kind)
	if s.Situation != nil {
		in = s.Situation.Name
	}
	of = c.Ref + " " + c.Where
	switch s.Kind {
	case bench.FirstPower, bench.Live, bench.Charging: // groups of one section ask for the same places
		of = g.Title + ": " + of
	}
	return in, strings.Join(strings.Fields(of), " ")
}

// For is the reading of a check as it is to be kept, with the text that was typed. The error is a *quantity.Error.
func For(s *bench.Section, g *bench.Group, c *bench.Check, text string) (*Reading, error) {
	r := &Reading{Check: c.Number}
	r.In, r.Of = Key(s, g, c)
	err := r.Take(text)
	if err == nil {
		err = r.fits(c)
	}
	return r, err
}

// TickOf is the tick of a wire of the cut list as it is to be kept: a wire that has become another
// since is not ticked.
func TickOf(w *circuit.Wire) *Tick {
	end := func(t *circuit.Terminal) string { return plain(t.Part.Ref + " " + t.Name) }
	cut := quantity.Plain(cutting.Break(w).CutM, quantity.Length)
	return &Tick{Wire: w.Number, Of: fmt.Sprintf("%s to %s, %s, %s", end(w.From), end(w.To), w.Look(), cut)}
}

// Placed is a reading with its check. Check is nil of a reading elsewhere than in the test.
type Placed struct {
	*Reading
	Section *bench.Section
	Group   *bench.Group
	Check   *bench.Check
	Was     string // the number under which it was read, when that is another check's now; "" = the same
}

// Match finds the checks of readings in a test. A reading whose check is numbered otherwise now is
// found by what it is of. Those that the test no longer has, and those that cannot be of their
// check, are the problems.
func Match(t *bench.Test, list []*Reading) ([]*Placed, problem.List) {
	type key struct{ in, of string }
	byNumber, byKey := map[string]*Placed{}, map[key]*Placed{}
	var numbers []string
	for _, s := range t.Sections {
		for _, g := range s.Groups {
			for _, c := range g.Checks {
				p := &Placed{Section: s, Group: g, Check: c}
				in, of := Key(s, g, c)
				byNumber[c.Number], byKey[key{in, of}] = p, p
				numbers = append(numbers, c.Number)
			}
		}
	}
	var out []*Placed
	var problems problem.List
	for _, r := range list {
		if !r.Numbered() {
			out = append(out, &Placed{Reading: r})
			continue
		}
		at := byNumber[r.Check]
		if r.Of != "" {
			if at != nil {
				if in, of := Key(at.Section, at.Group, at.Check); of != r.Of || r.In != "" && r.In != in {
					at = byKey[key{r.In, r.Of}]
				}
			} else {
				at = byKey[key{r.In, r.Of}]
			}
		}
		if at == nil {
			p := problem.Problem{Pos: r.Pos, What: fmt.Sprintf("the bench test has no check %s", r.Check), Nearest: problem.Nearest(r.Check, numbers)}
			if r.Of != "" {
				p.What, p.Nearest = fmt.Sprintf("the bench test no longer has what check %s was of: %s", r.Check, r.Of), ""
				p.Expected = "a reading taken again by the present test"
			}
			problems.Add(p)
			continue
		}
		if err := r.fits(at.Check); err != nil {
			problems.Add(of(r.Pos, err))
			continue
		}
		placed := *at
		placed.Reading = r
		if at.Check.Number != r.Check {
			placed.Was = r.Check
		}
		out = append(out, &placed)
	}
	return out, problems
}

// fits tells whether a reading can be of a check.
func (r *Reading) fits(c *bench.Check) error {
	looked := c.Text != ""
	switch {
	case r.Quantity == "" && looked, r.Quantity == "" && c.Quantity == "":
		return nil
	case r.Quantity == "":
		return &quantity.Error{What: fmt.Sprintf("check %s is a reading and %q is none", c.Number, r.Text), Expected: quantity.Expected(c.Quantity)}
	case r.Quantity != c.Quantity && looked && c.Quantity != quantity.Current:
		return &quantity.Error{What: fmt.Sprintf("check %s is only looked at", c.Number), Expected: Right + " or " + Wrong}
	case r.Quantity != c.Quantity:
		return &quantity.Error{What: fmt.Sprintf("check %s reads no %s", c.Number, r.Quantity), Expected: quantity.Expected(c.Quantity)}
	}
	return nil
}
