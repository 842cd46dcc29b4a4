package compare

import (
	"strings"

	"fusewright/harness/review/finding"
)

// identity is what makes two findings the same one: the rule, the part, which wire
// of the part, and of several such the order. Line and figures may change.
type identity struct {
	rule, part, wire string
	n                int
}

// identities numbers findings of one rule and part in their order.
func identities(list []*finding.Finding) map[identity]*finding.Finding {
	out := make(map[identity]*finding.Finding, len(list))
	for _, f := range list {
		id := identity{f.Rule, f.Part, f.Wire, 0}
		for out[id] != nil {
			id.n++
		}
		out[id] = f
	}
	return out
}

// Findings are the differences of two lists of findings, the worst first.
func Findings(old, changed []*finding.Finding) []Finding {
	before, after := identities(finding.All(old)), identities(finding.All(changed))
	covered := coveredByNew(changed, before)
	var list []Finding
	for _, f := range inOrder(finding.All(changed)) {
		was := before[f.id]
		switch {
		case covered[f.f]:
		case was == nil:
			list = append(list, Finding{What: Added, New: f.f})
		case was.Severity != f.f.Severity || (was.Accepted == "") != (f.f.Accepted == ""):
			list = append(list, Finding{What: Changed, Old: was, New: f.f})
		case f.f.Figure.WorseThan(was.Figure):
			list = append(list, Finding{What: Changed, Old: was, New: f.f, Worse: f.f.Accepted == ""})
		}
	}
	for _, f := range inOrder(old) {
		if after[f.id] == nil {
			list = append(list, Finding{What: Removed, Old: f.f})
		}
	}
	return byConcern(list, Finding.gravity)
}

// gravity orders findings, the worst first: what came or grew worse by its severity, what
// went last.
func (f Finding) gravity() float64 {
	if rank := f.Rank(); rank <= 0 {
		return float64(rank)
	}
	return float64(weight(f.New))
}

// Standing says how severe a finding is, what it was where that differs, and its figure
// then and now where that has got worse: "advice → danger (21 A → 30 A of 16 A)".
func (f Finding) Standing() string {
	text := StandingOf(f.New)
	switch was := StandingOf(f.Old); {
	case f.New == nil:
		return was
	case f.Old == nil:
		return text
	case was != text:
		text = was + " → " + text
	case f.Worse:
		text += ", worse"
	}
	if f.New.Figure.WorseThan(f.Old.Figure) {
		was, is := f.Old.Figure.String(), f.New.Figure.String()
		value, limit, _ := strings.Cut(was, " of ")
		if strings.HasSuffix(is, " of "+limit) {
			was = value
		}
		text += " (" + was + " → " + is + ")"
	}
	return text
}

// StandingOf is a finding's severity in words, or that it is accepted.
func StandingOf(f *finding.Finding) string {
	switch {
	case f == nil:
		return ""
	case f.Accepted != "":
		return "accepted " + f.Severity.String()
	}
	return f.Severity.String()
}

// coveredByNew marks what needs no word beside the new finding, as severe at least, that
// covers it.
func coveredByNew(changed []*finding.Finding, before map[identity]*finding.Finding) map[*finding.Finding]bool {
	covered := map[*finding.Finding]bool{}
	for _, f := range inOrder(changed) {
		if before[f.id] == nil {
			for _, c := range f.f.Covers {
				covered[c] = weight(c) <= weight(f.f)
			}
		}
	}
	return covered
}

type named struct {
	id identity
	f  *finding.Finding
}

// inOrder is the findings with their identities, in the order of the list.
func inOrder(list []*finding.Finding) []named {
	seen := map[identity]bool{}
	var out []named
	for _, f := range list {
		id := identity{f.Rule, f.Part, f.Wire, 0}
		for seen[id] {
			id.n++
		}
		seen[id] = true
		out = append(out, named{id, f})
	}
	return out
}
