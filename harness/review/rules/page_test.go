package rules_test

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"fusewright/harness/network/solve"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"

	"github.com/google/go-cmp/cmp"
)

const pageFile = "../../../docs/rules.md"

// TestPage keeps the page of rules in step with the literals.
func TestPage(t *testing.T) {
	if *update {
		if err := os.MkdirAll(filepath.Dir(pageFile), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(pageFile, []byte(rules.Page()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(pageFile)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(rules.Page(), string(got)); diff != "" {
		t.Errorf("%s is stale; rewrite it with -update:\n%s", pageFile, diff)
	}
}

func TestExplain(t *testing.T) {
	text, ok := rules.Explain("unfused-conductor")
	if !ok {
		t.Fatal("no explanation of unfused-conductor")
	}
	r := rules.Find("unfused-conductor")
	for _, want := range []string{r.Title, "33 CFR 183.455", "Why it matters", "fed by: battery", "licensed practice"} {
		if !strings.Contains(text, want) {
			t.Errorf("the explanation does not contain %q:\n%s", want, text)
		}
	}
	for i, line := range strings.Split(text, "\n") {
		if len(line) > 100 && !strings.Contains(line, "{") {
			t.Errorf("line %d is %d bytes long: %s", i+1, len(line), line)
		}
	}
	if _, ok := rules.Explain("no-such-rule"); ok {
		t.Error("there is an explanation of a rule that does not exist")
	}
}

// TestFindingsAreComplete checks that every finding of every case says what,
// why, what to change, from which source, and where.
func TestFindingsAreComplete(t *testing.T) {
	for _, r := range rules.All() {
		for _, f := range assess(t, "bad.yaml", []byte(example.Design(r.Bad))) {
			if f.What == "" || f.Why == "" || f.Change == "" || f.Source == "" || f.Part == "" || f.Ref == "" {
				t.Errorf("%s: finding is not complete: %+v", r.Name, f)
			}
			if f.Pos.Line == 0 || f.Pos.File != "bad.yaml" {
				t.Errorf("%s: finding has no place: %v", r.Name, f.Pos)
			}
			if f.Severity < finding.Advice || f.Severity > finding.Danger {
				t.Errorf("%s: severity %d", r.Name, f.Severity)
			}
			if strings.Contains(f.What, "NaN") || strings.Contains(f.What, "not known") && f.Rule != "data-missing" {
				t.Errorf("%s: says a number that is none: %s", r.Name, f.What)
			}
		}
	}
}

// TestDeterministic checks a large design twice.
func TestDeterministic(t *testing.T) {
	src := synth.YAML(400, 7)
	a, b := rules.Check(input(t, src)), rules.Check(input(t, src))
	if !reflect.DeepEqual(a, b) {
		t.Error("two checks of one design differ")
	}
}

// TestUnsolvedNumbersAreNotUsed gives every solution of an overloaded design
// another status: the overload must vanish and the failure be reported.
func TestUnsolvedNumbersAreNotUsed(t *testing.T) {
	in := input(t, []byte(example.Design(rules.Find("fuse-under-load").Bad)))
	if n := count(rules.Check(in), "fuse-under-load"); n != 1 {
		t.Fatalf("%d findings of fuse-under-load, want 1", n)
	}
	for _, status := range []solve.Status{solve.Collapsed, solve.NotConverged, solve.Chattering} {
		for _, s := range in.Solutions {
			s.Status, s.Why = status, "made so by the test"
		}
		found := rules.Check(in)
		if n := count(found, "fuse-under-load"); n != 0 {
			t.Errorf("%s: the numbers of an unsolved situation were used", status)
		}
		if n := count(found, "situation-unsolved"); n != len(in.Solutions) {
			t.Errorf("%s: %d findings of situation-unsolved, want one for each of %d situations", status, n, len(in.Solutions))
		}
		if groups := finding.Groups(found); found[groups[0][0]].Rule != "situation-unsolved" || len(groups[0]) != len(in.Solutions) {
			t.Errorf("%s: the situations that failed alike are not one group: %v", status, groups)
		}
	}
}

func count(found []*finding.Finding, rule string) int {
	n := 0
	for _, f := range found {
		if f.Rule == rule {
			n++
		}
	}
	return n
}
