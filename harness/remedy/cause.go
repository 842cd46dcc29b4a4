package remedy

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
)

// Lead is the finding that the others of a cause follow from: the figure that is asked
// about where the change is a guess, else the first.
func (c *Cause) Lead() *finding.Finding {
	if c.Remedy != nil && c.Remedy.Guess {
		if at := slices.IndexFunc(c.Findings, func(f *finding.Finding) bool { return f.Meant != nil }); at >= 0 {
			return c.Findings[at]
		}
	}
	return c.Findings[0]
}

// Follows tells, by the number of a finding, the number of the one it follows from: the
// cause's remedy clears both. What is only eased, or is graver than its cause, stands for
// itself, as does a number of which one finding does.
func (p *Plan) Follows() map[int]int {
	from := map[int]int{}
	if p == nil {
		return from
	}
	stands := map[int]bool{}
	for _, c := range p.Causes {
		lead := c.Lead()
		for _, f := range c.Findings {
			if c.Remedy == nil || f.Number == lead.Number || f.Severity > lead.Severity || !c.Remedy.mends(f) {
				stands[f.Number] = true
			} else if from[f.Number] == 0 {
				from[f.Number] = lead.Number
			}
		}
	}
	for n := range stands {
		delete(from, n)
	}
	return from
}

// mostTried is how many other changes are shown with a cause.
const mostTried = 2

// causes groups the open findings: the change that leaves least takes what it mends or
// eases, then the next one of what is left; what none mends stands by its part.
func (t *tester) causes() []*Cause {
	left := slices.Clone(t.open)
	var list []*Cause
	for {
		best := t.best(left)
		if best == nil {
			break
		}
		c := &Cause{Remedy: best}
		left = slices.DeleteFunc(left, func(f *finding.Finding) bool {
			of := t.takes(best, f)
			if of {
				c.Findings = append(c.Findings, f)
			}
			return of
		})
		list = append(list, c)
	}
	list = append(list, byPart(left)...)
	for _, c := range list {
		c.Tried = t.others(c)
		c.Untried = c.Remedy == nil && len(c.Tried) == 0 && !slices.ContainsFunc(c.Findings, func(f *finding.Finding) bool { return t.met[f] })
	}
	place := map[*finding.Finding]int{}
	for i, f := range t.open {
		place[f] = i
	}
	slices.SortStableFunc(list, func(a, b *Cause) int { return place[a.Findings[0]] - place[b.Findings[0]] })
	return list
}

// best is the change that holds and mends most of what is left, dangers before faults,
// the first tried of equal ones; nil = none mends any.
func (t *tester) best(left []*finding.Finding) *Trial {
	var best *Trial
	var most count
	for _, x := range t.order {
		var n count
		for _, f := range left {
			if !x.asks(f) || !t.takes(x, f) {
				continue
			}
			n[finding.Danger-f.Severity]++
			if x.mends(f) {
				n[finding.Danger-f.Severity]++
			}
		}
		if !x.Decides && x.Holds() && n != (count{}) && (most.less(n) || n == most && x.harms() < best.harms()) {
			best, most = x, n
		}
	}
	return best
}

// takes tells whether a finding belongs to what a change mends or eases. What a thicker
// wire would do for the wires beside it is not theirs to wait for where their own size
// mends them.
func (t *tester) takes(x *Trial, f *finding.Finding) bool {
	if !x.mends(f) && !slices.Contains(x.Eases, f) {
		return false
	}
	w := t.named(f)
	return w == nil || x.sizes == nil || x.thickens(w) || !slices.ContainsFunc(t.order, func(own *Trial) bool {
		return own.thickens(w) && own.mends(f) && own.Holds()
	})
}

// thickens tells whether a trial makes a wire thicker.
func (t *Trial) thickens(w *circuit.Wire) bool {
	return slices.ContainsFunc(t.sizes, func(v *sizing.Value) bool { return v.Sets(w) })
}

// asks tells whether a finding asks for a change: for what the trade leaves so no wire is
// made thicker than another finding needs.
func (t *Trial) asks(f *finding.Finding) bool { return t.sizes == nil || !f.Leave }

// harms is how much a change brings or worsens.
func (t *Trial) harms() int { return len(t.Breaks) + len(t.Worsens) }

// byPart groups findings that no change mends by what they are about: a part, or
// what is on at once at it, which no change of the part decides. Those of one number are
// one finding, and stay together.
func byPart(left []*finding.Finding) []*Cause {
	type about struct {
		number int
		part   string
		atOnce bool
	}
	var list []*Cause
	at := map[about]*Cause{}
	for _, f := range left {
		one := about{number: f.Number}
		is := about{part: f.Part, atOnce: f.Situation != "" && !f.Figure.Given()}
		c := at[one]
		if c == nil || f.Number == 0 {
			c = at[is]
		}
		if c == nil {
			c = &Cause{}
			list = append(list, c)
		}
		for _, k := range []about{one, is} {
			if at[k] == nil {
				at[k] = c
			}
		}
		c.Findings = append(c.Findings, f)
	}
	return list
}

// others are the changes beside the remedy that mend or ease the first finding of a
// cause, the one that leaves least first.
func (t *tester) others(c *Cause) []*Trial {
	var list []*Trial
	for _, x := range t.order {
		f := c.Findings[0]
		helps := x.mends(f) || slices.Contains(x.Eases, f)
		if x != c.Remedy && helps && max(worst(x.Breaks), worst(x.Worsens)) < f.Severity && x.after.less(t.before) {
			list = append(list, x)
		}
	}
	slices.SortStableFunc(list, func(a, b *Trial) int { return slices.Compare(a.after[:], b.after[:]) })
	return list[:min(mostTried, len(list))]
}
