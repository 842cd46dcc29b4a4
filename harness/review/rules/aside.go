package rules

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// aside is the wire, nil for any part, and the rules that speak for a finding of
// the same cause.
type aside struct {
	wire  *circuit.Wire
	rules []*Rule
}

// at is the wire's number, "" for any part.
func (a aside) at() string {
	if a.wire == nil {
		return ""
	}
	return a.wire.Number
}

// standsAside says of the finding reported last that a finding of one of these
// rules at a wire, at any part when it is nil, has the same cause: while that one
// is open, this one needs no word of its own.
func (p *Pass) standsAside(w *circuit.Wire, rules ...*Rule) {
	p.aside[p.found[len(p.found)-1]] = aside{w, rules}
}

// standAside puts each open finding that another open one speaks for under that
// one, unless that one is milder. What is accepted speaks for nothing: accepting one finding must not hide
// what else comes of its cause.
func standAside(f *facts, found []*finding.Finding) []*finding.Finding {
	type place struct{ rule, wire string }
	open := map[place]*finding.Finding{}
	for _, x := range found {
		if x.Accepted == "" {
			open[place{x.Rule, ""}] = x
			if x.Wire != "" {
				open[place{x.Rule, x.Ref}] = x
			}
		}
	}
	return slices.DeleteFunc(found, func(x *finding.Finding) bool {
		a, ok := f.aside[x]
		if !ok || x.Accepted != "" {
			return false
		}
		for _, r := range a.rules {
			if cover := open[place{r.Name, a.at()}]; cover != nil && cover.Severity >= x.Severity {
				cover.Covers = append(cover.Covers, x)
				return true
			}
		}
		return false
	})
}
