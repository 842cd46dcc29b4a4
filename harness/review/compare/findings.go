package compare

import "fusewright/harness/review/finding"

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

func findings(old, changed []*finding.Finding) []Finding {
	before, after := identities(finding.All(old)), identities(finding.All(changed))
	covered := coveredByNew(changed, before)
	var list []Finding
	for _, f := range inOrder(finding.All(changed)) {
		was := before[f.id]
		switch {
		case was == nil && covered[f.f]:
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
	return byConcern(list, func(f Finding) float64 { return float64(f.Rank()) })
}

// coveredByNew marks what needs no word beside the new finding that covers it.
func coveredByNew(changed []*finding.Finding, before map[identity]*finding.Finding) map[*finding.Finding]bool {
	covered := map[*finding.Finding]bool{}
	for _, f := range inOrder(changed) {
		if before[f.id] == nil {
			for _, c := range f.f.Covers {
				covered[c] = true
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
