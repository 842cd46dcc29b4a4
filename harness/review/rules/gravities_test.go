package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
)

// gravest is the gravest finding of a rule in an example; 0 without one.
func gravest(t *testing.T, snippet, rule string) (most finding.Severity) {
	t.Helper()
	for _, f := range assess(t, "severity.yaml", []byte(example.Design(snippet))) {
		if f.Rule == rule {
			most = max(most, f.Severity)
		}
	}
	return most
}

// gravities holds that against what it is to be, by what is put for the marks of the example, in
// their order and parted by " | ".
func gravities(t *testing.T, rule, text, marks string, wants map[string]finding.Severity) {
	t.Helper()
	for put, want := range wants {
		values, pairs := strings.Split(put, " | "), []string(nil)
		for i, mark := range strings.Split(marks, " | ") {
			pairs = append(pairs, mark, values[i])
		}
		if got := gravest(t, replace(text, pairs...), rule); got != want {
			t.Errorf("%s: %s, want %s", put, got, want)
		}
	}
}

func replace(text string, pairs ...string) string { return strings.NewReplacer(pairs...).Replace(text) }
