package remedy

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/harness/study/together"
)

// How many reviews are worth their time: so many wires reviewed in all, but at most
// so many reviews. A review takes some 0.1 ms a wire.
const (
	mostWires   = 6_000
	mostReviews = 120
)

// count is open findings by severity: dangers, faults, advice.
type count [3]int

func (c count) less(than count) bool { return slices.Compare(c[:], than[:]) < 0 }

// tester tries changes and keeps what came of each.
type tester struct {
	*Input
	open   []*finding.Finding         // of the review, the worst first
	same   map[key][]*finding.Finding // the same with what they cover
	before count
	guards circuit.Guards
	values []*sizing.Value
	done   map[string]*Trial // by what they change and into what
	order  []*Trial
	met    map[*finding.Finding]bool // something was tried against it
	hands  *together.Plan            // when it has been asked for
	left   int                       // reviews that may still be made
	cut    bool
	drawA  map[*circuit.Branch]float64 // see drawBelowA
}

func newTester(in *Input) *tester {
	t := &tester{Input: in, guards: in.Circuit.Guards(), values: sizing.Values(in.Design), done: map[string]*Trial{}, met: map[*finding.Finding]bool{}, drawA: map[*circuit.Branch]float64{}, left: reviewsFor(in.Circuit)}
	t.open = openOf(in.Findings)
	t.same = byKey(finding.All(t.open))
	for _, f := range t.open {
		t.before[finding.Danger-f.Severity]++
	}
	return t
}

// reviewsFor is how many reviews of a circuit may be made.
func reviewsFor(c *circuit.Circuit) int { return min(mostReviews, mostWires/max(1, len(c.Wires))) }

// openOf are the findings that neither the design accepts nor a baseline has.
func openOf(list []*finding.Finding) []*finding.Finding {
	return slices.DeleteFunc(slices.Clone(list), func(f *finding.Finding) bool { return f.Accepted != "" || f.Known })
}

// key tells whether findings of two reviews are the same one; designations and wire
// numbers may change.
type key struct{ rule, part, wire string }

func keyOf(f *finding.Finding) key { return key{f.Rule, f.Part, f.Wire} }

func byKey(list []*finding.Finding) map[key][]*finding.Finding {
	out := map[key][]*finding.Finding{}
	for _, f := range list {
		out[keyOf(f)] = append(out[keyOf(f)], f)
	}
	return out
}

// run puts a change into the design, reviews it and takes it out again. A design
// that cannot be built mends nothing.
func (t *tester) run(x *Trial) {
	back := x.put()
	found, built := t.Judge()
	back()
	if x.Failed = !built; x.Failed {
		return
	}
	found = openOf(found)
	after := byKey(found)
	now := func(f *finding.Finding) *finding.Finding {
		k := keyOf(f)
		if n := slices.Index(t.same[k], f); n >= 0 && n < len(after[k]) {
			return after[k][n]
		}
		return nil
	}
	x.left = map[*finding.Finding]*finding.Finding{}
	for _, f := range t.open {
		x.left[f] = now(f)
		x.take(f, x.left[f], now)
	}
	for _, f := range found {
		x.after[finding.Danger-f.Severity]++
		k := keyOf(f)
		n := slices.Index(after[k], f)
		if was := t.same[k]; n >= len(was) || was[n].Severity < f.Severity {
			x.Breaks = append(x.Breaks, f)
		}
	}
}

// take counts a finding of the review by what is left of it, and of what it spoke for,
// in the changed design.
func (x *Trial) take(f, left *finding.Finding, now func(*finding.Finding) *finding.Finding) {
	worst := finding.Severity(0)
	if left != nil {
		worst = left.Severity
	}
	for _, c := range f.Covers {
		if y := now(c); y != nil {
			worst = max(worst, y.Severity)
		}
	}
	switch {
	case worst == 0:
		x.Mends = append(x.Mends, f)
	case worst < f.Severity:
		x.Eases = append(x.Eases, f)
	case left != nil && left.Figure.Beyond() > f.Figure.Beyond()+worseShare*math.Abs(f.Figure.Beyond())+1e-9:
		x.Worsens = append(x.Worsens, f)
	}
}

// nearShare is the least part of the way to its limit that a degree brings a finding:
// of four, the first brings a third to a half of what all do.
const nearShare = 0.1

// nears tells whether a change brings a finding nearer to its limit, so that more of
// it may mend it; also where that is not known.
func (x *Trial) nears(f *finding.Finding) bool {
	left := x.left[f]
	if left == nil || left.Severity < f.Severity || !f.Figure.Given() || !left.Figure.Given() {
		return true
	}
	beyond := f.Figure.Beyond()
	return beyond-left.Figure.Beyond() >= nearShare*math.Abs(beyond)
}

// worseShare is by how much a finding is further beyond its limit before that is said.
const worseShare = 0.05

// try is the trial of a change, made once; nil when there is no time left.
func (t *tester) try(c *Trial) *Trial {
	id := c.About + "\n" + c.Will
	if x := t.done[id]; x != nil {
		return x
	}
	if t.left == 0 || t.Spent != nil && t.Spent() {
		t.cut = true
		return nil
	}
	t.left--
	t.run(c)
	t.done[id] = c
	t.order = append(t.order, c)
	return c
}

// mends tells whether a trial mends a finding.
func (t *Trial) mends(f *finding.Finding) bool { return slices.Contains(t.Mends, f) }
