package rules_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/protection"
)

// TestSizesAlone: what sizing judges by, the rules that it mends and the part of
// the protection study that they ask for, finds what the whole finds, in the same
// words and accepted alike, on the bad example of every rule.
func TestSizesAlone(t *testing.T) {
	count := 0
	for _, r := range rules.All() {
		a := reviewtest.Of(t, example.Design(r.Bad))
		in := &rules.Input{Circuit: a.Circuit, Solutions: a.Solutions, Faults: a.Faults, Protection: a.Protection,
			Corners: a.Corners}
		whole := rules.Check(in)
		in.Protection = protection.ForRules(in.Circuit, in.Faults)
		want, got := lines(whole), lines(rules.CheckSizes(in))
		count += len(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s: alone\n%q\nof the whole\n%q", r.Name, got, want)
		}
	}
	if count < len(rules.All())/4 {
		t.Errorf("only %d findings compared", count)
	}
}

// lines are findings of sizes; which loads are never on is no question of size.
func lines(found []*finding.Finding) (list []string) {
	for _, f := range found {
		if rules.Find(f.Rule).Mend != rules.MendNot {
			list = append(list, fmt.Sprint(f.Severity, f.Rule, f.Ref, strings.TrimSuffix(f.What, "; "+f.Behind), f.Numbers, f.Accepted, lines(f.Covers)))
		}
	}
	return list
}
