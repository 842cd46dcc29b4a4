package rules

import (
	"slices"

	"fusewright/harness/design/wording"
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
// is open and no milder, this one needs no word of its own.
func (p *Pass) standsAside(w *circuit.Wire, rules ...*Rule) {
	p.aside[p.found[len(p.found)-1]] = aside{w, rules}
}

// adviceUnder are, by rule, those of which a fault or danger at the same wire says
// gravely what an advice of the rule says mildly: the wire is too thin for its fuse, or
// for what flows, or too hot by others.
var adviceUnder = map[string][]*Rule{
	fuseOverWire.Name:    {fuseWireCurve, shortOverheatsWire, hotBundle},
	returnBelowFuse.Name: {fuseWireCurve, shortOverheatsWire, hotBundle},
	wireOverCurrent.Name: {overloadHurtsWire, sharedReturnThin, fuseOverWire, returnBelowFuse},
}

// place is where a rule speaks: at a wire, or anywhere for "".
type place struct{ rule, wire string }

// standAside puts each open finding that another open one speaks for under that
// one, unless that one is milder. What is accepted speaks for nothing: accepting one finding must not hide
// what else comes of its cause.
func standAside(f *facts, found []*finding.Finding) []*finding.Finding {
	open := map[place]*finding.Finding{}
	for _, x := range found {
		if x.Accepted == "" {
			open[place{x.Rule, ""}] = x
			if x.Wire != "" {
				open[place{x.Rule, x.Ref}] = x
			}
		}
	}
	speaks := map[*finding.Finding]*finding.Finding{}
	last := func(x *finding.Finding) *finding.Finding { // the one that speaks for those who speak for it
		for speaks[x] != nil {
			x = speaks[x]
		}
		return x
	}
	for _, x := range found {
		if x.Accepted != "" {
			continue
		}
		if cover := f.speaker(x, open); cover != nil && last(cover) != x {
			speaks[x] = cover
		}
	}
	found = slices.DeleteFunc(found, func(x *finding.Finding) bool {
		if speaks[x] == nil {
			return false
		}
		cover := last(x)
		cover.Covers = append(cover.Covers, x)
		return true
	})
	for _, x := range found {
		nameBehind(x)
	}
	return found
}

// nameBehind names the loads that are never on where a finding speaks for them: what was
// not checked is not passed silently.
func nameBehind(x *finding.Finding) {
	var loads []string
	for _, c := range x.Covers {
		if c.Rule == loadNeverOn.Name {
			loads = append(loads, c.Part)
		}
	}
	setBehind(x, loads)
}

// setBehind ends what a finding says with the loads that are never on because of it.
func setBehind(x *finding.Finding, loads []string) {
	slices.Sort(loads)
	loads = slices.Compact(loads)
	if n := len(loads); n > 0 {
		x.Behind = wording.Count(n, "load is", "loads are") + " never on and not checked: " + wording.Few(loads, fewLoads)
		x.What += "; " + x.Behind
	}
}

// fewLoads is how many loads that are never on are named.
const fewLoads = 8

// speaker is the open finding that speaks for another; nil without one.
func (f *facts) speaker(x *finding.Finding, open map[place]*finding.Finding) *finding.Finding {
	for _, r := range f.aside[x].rules {
		if cover := open[place{r.Name, f.aside[x].at()}]; cover != nil && cover.Severity >= x.Severity {
			return cover
		}
	}
	if x.Severity != finding.Advice || x.Wire == "" {
		return nil
	}
	for _, r := range adviceUnder[x.Rule] {
		if cover := open[place{r.Name, x.Ref}]; cover != nil && cover.Severity > x.Severity {
			return cover
		}
	}
	return nil
}
