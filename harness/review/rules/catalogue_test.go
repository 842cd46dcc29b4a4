package rules_test

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"sort"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/library"
)

var update = flag.Bool("update", false, "rewrite the generated page of rules")

// TestCatalogue refuses a rule whose literal is not complete.
func TestCatalogue(t *testing.T) {
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, r := range rules.All() {
		if !name.MatchString(r.Name) {
			t.Errorf("rule %q: name is not lower case words with hyphens", r.Name)
		}
		if seen[r.Name] {
			t.Errorf("rule %q is there twice", r.Name)
		}
		seen[r.Name] = true
		fields := map[string]string{"Title": r.Title, "Doc": r.Doc, "Formula": r.Formula, "Limits": r.Limits,
			"Why": r.Why, "Change": r.Change, "Severity": r.Severity, "Source": r.Source, "Bad": r.Bad, "Good": r.Mends()}
		for field, text := range fields {
			if strings.TrimSpace(text) == "" {
				t.Errorf("rule %s: %s is empty", r.Name, field)
			}
		}
		if r.Run == nil {
			t.Errorf("rule %s does nothing", r.Name)
		}
		if !regexp.MustCompile(`danger|fault|advice`).MatchString(r.Severity) {
			t.Errorf("rule %s: Severity names none of danger, fault, advice", r.Name)
		}
		if _, err := os.Stat(filepath.Join(casesDir, r.Name+".yaml")); err != nil {
			t.Errorf("rule %s has no test case: %v", r.Name, err)
		}
	}
	if !sort.StringsAreSorted(rules.Names()) {
		t.Error("rules are not sorted by name")
	}
}

// A rule that is written but not in the registry would never run.
func TestEveryRuleIsRegistered(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	written := 0
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		written += strings.Count("\n"+string(src), " = &Rule{\n")
	}
	if n := len(rules.All()); written != n {
		t.Errorf("%d rules are written and %d registered (registry.go)", written, n)
	}
}

// TestExamples runs every rule's examples: the bad one gives that rule and no
// other open finding, the good one gives none.
func TestExamples(t *testing.T) {
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			bad := open(assess(t, "bad.yaml", []byte(example.Design(r.Bad))))
			if len(bad) == 0 {
				t.Error("the bad example gives no finding")
			}
			for _, f := range bad {
				if f.Rule != r.Name {
					t.Errorf("the bad example also gives %s: %s", f.Rule, f.What)
				}
			}
			for _, f := range open(assess(t, "good.yaml", []byte(example.Design(r.Mends())))) {
				t.Errorf("the good example gives %s: %s", f.Rule, f.What)
			}
		})
	}
}

// TestBase pins that what the examples stand on is clean.
func TestBase(t *testing.T) {
	for _, f := range assess(t, "base.yaml", []byte(example.Design(""))) {
		t.Errorf("the base of the examples gives %s: %s", f.Rule, f.What)
	}
}

// assess reads and checks a design that must read without problems.
func assess(t testing.TB, file string, src []byte) []*finding.Finding {
	t.Helper()
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		t.Fatalf("the design does not read:\n%v", err)
	}
	return check(t, d)
}

// check is the findings of a design.
func check(t testing.TB, d *design.Design) []*finding.Finding {
	t.Helper()
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatalf("the circuit does not build:\n%v", err)
	}
	return r.Findings
}

// open leaves out accepted findings.
func open(found []*finding.Finding) []*finding.Finding {
	var list []*finding.Finding
	for _, f := range found {
		if f.Accepted == "" {
			list = append(list, f)
		}
	}
	return list
}
