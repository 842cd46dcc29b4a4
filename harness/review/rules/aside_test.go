package rules

import (
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// TestAside: a finding goes under one of the same cause that is no milder, an advice
// about a wire under a graver one; of a chain all go under its end, and two that stand
// aside for each other leave one.
func TestAside(t *testing.T) {
	const advice, fault, danger = finding.Advice, finding.Fault, finding.Danger
	type says struct {
		rule     *Rule
		severity finding.Severity
		aside    *Rule
		accepted string
	}
	a, b, c := &Rule{Name: "a"}, &Rule{Name: "b"}, &Rule{Name: "c"}
	for name, test := range map[string]struct {
		found []says
		want  string // those left, each with those under it
	}{
		"equal":          {[]says{{a, fault, b, ""}, {b, fault, nil, ""}}, "b(a)"},
		"milder":         {[]says{{a, fault, b, ""}, {b, advice, nil, ""}}, "a b"},
		"accepted":       {[]says{{a, fault, b, ""}, {b, danger, nil, "yes"}}, "a b"},
		"chain":          {[]says{{a, advice, b, ""}, {b, fault, c, ""}, {c, danger, nil, ""}}, "c(a b)"},
		"each other":     {[]says{{a, fault, b, ""}, {b, fault, a, ""}}, "b(a)"},
		"advice":         {[]says{{fuseOverWire, advice, nil, ""}, {fuseWireCurve, danger, nil, ""}}, "fuse-wire-curve(fuse-over-wire)"},
		"equal advice":   {[]says{{fuseOverWire, advice, nil, ""}, {fuseWireCurve, advice, nil, ""}}, "fuse-over-wire fuse-wire-curve"},
		"no fault":       {[]says{{wireOverCurrent, fault, nil, ""}, {overloadHurtsWire, danger, nil, ""}}, "wire-over-current overload-hurts-wire"},
		"no danger":      {[]says{{fuseOverWire, danger, nil, ""}, {fuseWireCurve, danger, nil, ""}}, "fuse-over-wire fuse-wire-curve"},
		"advice, a fuse": {[]says{{fuseGrading, advice, nil, ""}, {fuseWireCurve, danger, nil, ""}}, "fuse-grading fuse-wire-curve"},
	} {
		f := &facts{aside: map[*finding.Finding]aside{}}
		var found []*finding.Finding
		for _, s := range test.found {
			x := &finding.Finding{Rule: s.rule.Name, Severity: s.severity, Accepted: s.accepted, Wire: "feed", Ref: "W1"}
			if found = append(found, x); s.aside != nil {
				f.aside[x] = aside{nil, []*Rule{s.aside}}
			}
		}
		var left []string
		for _, x := range standAside(f, found) {
			text := x.Rule
			if len(x.Covers) > 0 {
				var under []string
				for _, u := range x.Covers {
					under = append(under, u.Rule)
				}
				text += "(" + strings.Join(under, " ") + ")"
			}
			left = append(left, text)
		}
		if got := strings.Join(left, " "); got != test.want {
			t.Errorf("%s: %s, want %s", name, got, test.want)
		}
	}
}

// TestLeansOnTime: a wire of 100 A for a time at twice what it bears for good bears 50 A
// for good: a fuse of 75 A is still half more, and one up to its class for good, and one
// up to twice what its loads draw.
func TestLeansOnTime(t *testing.T) {
	p := passOf(t, fuseWireCurve, "")
	w := p.c.Wires[1]
	w.Branch.TimeOn.OnS, w.Branch.TimeOn.EveryS = 60, 600
	laid := &p.laid.Wires[w.Index]
	laid.AllowedA, laid.Pulse.SteadyA = 100, 0
	for _, c := range []struct {
		gain, toClassA, usedA, fuseA float64
		want                         bool
	}{{2, 0, 20, 75, false}, {2, 0, 20, 75.1, true}, {2, 160, 20, 80, false}, {2, 160, 20, 80.1, true}, {1, 0, 20, 160, false},
		{2, 0, 50, 100, false}, {2, 0, 50, 100.1, true}} {
		laid.Pulse.Gain, laid.ToClassA, w.Branch.TimeOn.UsedA = c.gain, c.toClassA, c.usedA
		if got := p.leansOnTime(w, c.fuseA); got != c.want {
			t.Errorf("%+v: %t", c, got)
		}
	}
}
