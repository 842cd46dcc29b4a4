package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

var unusedAcceptance = &Rule{
	Name:  "unused-acceptance",
	Title: "an acceptance that accepts nothing",
	Says:  "accepts nothing",
	Doc: "An entry under `accepted` names a rule that does not exist, or a rule and part for which " +
		"there is no finding. Nothing is hidden by it, but it would hide the next finding of that " +
		"rule and part without anyone having looked at it.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the reason written for a fault that is gone would pass for a review of the next one",
	Change:   "take the entry out of `accepted`, or correct the rule's or the part's name",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
accepted:
  - {rule: live-with-key-off, part: tail lamp, reason: "was wired to the battery in revision A"}
`,
	Good: `
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  tracker: {power: 0.12 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, own switch: true}
`,
	// The acceptances can only be weighed after every other rule has run, so
	// accept reports for this rule.
	Run: func(*Pass) {},
}

// accept marks the findings that the design accepts, and reports acceptances
// that match nothing or hold for whatever the finding becomes. An acceptance of a
// danger is kept and shown like any other: the finding stays in the list with the
// reason beside it.
func accept(f *facts, found []*finding.Finding) []*finding.Finding {
	unused := &Pass{facts: f, rule: unusedAcceptance}
	unpinned := &Pass{facts: f, rule: acceptanceWithoutFigure}
	outgrown := map[*finding.Finding]string{}
	for _, a := range f.d.Accepted {
		matching := matches(a, found)
		slices.SortStableFunc(matching, finding.Compare) // the worst first
		if len(matching) == 0 {
			unused.reportUnused(a, found)
		}
		unpinned.judgePin(a, acceptMatching(a, matching, outgrown))
	}
	for _, x := range found {
		if words := outgrown[x]; words != "" && x.Accepted == "" {
			x.What += "; " + words
			x.Cause = "" // to be read by itself
		}
	}
	return append(append(found, unused.found...), unpinned.found...)
}

// matches lists the findings that an acceptance speaks of.
func matches(a *design.Acceptance, found []*finding.Finding) []*finding.Finding {
	var list []*finding.Finding
	for _, f := range found {
		if f.Rule == a.Rule.Value && namesPart(a.Part.Value, f) && (a.Wire == "" || a.Wire == f.Wire) {
			list = append(list, f)
		}
	}
	return list
}

// acceptMatching marks what an acceptance covers and lists it: one that gives a
// figure is of one finding, the worst that it bears; another wire of the part wants
// an entry of its own. What it does not cover is told by the words why.
func acceptMatching(a *design.Acceptance, matching []*finding.Finding, outgrown map[*finding.Finding]string) (covered []*finding.Finding) {
	for _, f := range matching {
		switch words := beyondAcceptance(a, f); {
		case f.Accepted != "":
		case words != "":
			outgrown[f] = words
		case a.Figure != nil && len(covered) > 0:
			outgrown[f] = "accepted at another wire of the part: to accept it too, write a second entry"
		default:
			f.Accepted = a.Reason.Value
			covered = append(covered, f)
		}
	}
	return covered
}

// beyondAcceptance says what of a finding an acceptance does not cover; "" when it
// covers it.
func beyondAcceptance(a *design.Acceptance, f *finding.Finding) string {
	most := finding.Fault
	if a.Severity != "" {
		most = finding.SeverityOf(a.Severity)
	}
	switch {
	case f.Severity > most:
		return fmt.Sprintf("accepted as %s only, but it is a %s: to accept it, write severity: %s", most, f.Severity, f.Severity)
	case a.Figure == nil:
		return ""
	}
	was := *a.Figure
	was.Worse = f.Figure.Worse
	if f.Figure.WorseThan(was) {
		return fmt.Sprintf("accepted at %s, now %s", was, cmp.Or(f.Figure.String(), "without a figure"))
	}
	return ""
}

// namesPart tells whether an acceptance's part is the finding's: by the name
// in the design, or by reference designation or wire number.
func namesPart(part string, f *finding.Finding) bool {
	return part == f.Part || part == f.Ref
}

// partsOfRule lists, quoted and by the alphabet, the parts at which a rule found
// something.
func partsOfRule(rule string, found []*finding.Finding) []string {
	var parts []string
	for _, f := range found {
		if quoted := strconv.Quote(f.Part); f.Rule == rule && !slices.Contains(parts, quoted) {
			parts = append(parts, quoted)
		}
	}
	slices.Sort(parts)
	return parts
}

func (p *Pass) reportUnused(a *design.Acceptance, found []*finding.Finding) {
	what := fmt.Sprintf("rule %q leaves nothing to accept at part %q", a.Rule.Value, a.Part.Value)
	if parts := partsOfRule(a.Rule.Value, found); len(parts) > 0 {
		what += fmt.Sprintf(" (it has findings at %s)", wording.Few(parts, 4))
	}
	if Find(a.Rule.Value) == nil {
		what = fmt.Sprintf("there is no rule %q", a.Rule.Value)
		if near := problem.Nearest(a.Rule.Value, Names()); near != "" {
			what += fmt.Sprintf(" (did you mean %q?)", near)
		}
	}
	p.report(finding.Finding{
		Severity: finding.Advice,
		Part:     strings.TrimSpace(a.Part.Value),
		Ref:      strings.TrimSpace(a.Part.Value),
		Pos:      a.Rule.Pos,
		What:     what + ", so this acceptance accepts nothing",
	})
}
