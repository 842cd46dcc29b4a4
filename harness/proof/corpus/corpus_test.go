package corpus_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/corpus"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite docs/corpus.md")

const (
	designs = "../../../testdata/corpus"
	page    = "../../../docs/corpus.md"

	leastFaulty = 60
	leastClean  = 30

	blindDesigns  = 40
	secondDesigns = 30
)

// TestCorpus reviews every design of the corpus: no planted fault may be missed
// and nothing else may be found.
func TestCorpus(t *testing.T) {
	faulty, clean := load(t, "fault"), load(t, "clean")
	if len(faulty) < leastFaulty || len(clean) < leastClean {
		t.Errorf("%d faulty and %d clean designs, want at least %d and %d",
			len(faulty), len(clean), leastFaulty, leastClean)
	}
	vehicles := map[string]string{}
	for _, c := range append(append([]*corpus.Case{}, faulty...), clean...) {
		t.Run(c.Name, func(t *testing.T) {
			for _, p := range c.Problems() {
				t.Error(p)
			}
			if other := vehicles[c.Vehicle]; other != "" {
				t.Errorf("has the vehicle of %s", other)
			}
			vehicles[c.Vehicle] = c.Name
		})
	}
	for _, c := range faulty {
		if len(c.Wants) == 0 {
			t.Errorf("%s: a faulty design expects no finding", c.Name)
		}
		for _, w := range c.Wants {
			if w.Severity == "" {
				t.Errorf("%s:%d: %s is expected without a severity", c.Name, w.Line, w.Rule)
			}
		}
	}
	for _, c := range clean {
		if len(c.Wants) > 0 {
			t.Errorf("%s: a clean design expects findings", c.Name)
		}
	}
	blind, second := load(t, "blind"), load(t, "blind/second")
	checkBlind(t, blind, blindDesigns, map[string]string{
		"feet-written-as-metres": "length-not-plausible",
	})
	checkBlind(t, second, secondDesigns, nil)
	checkPage(t, corpus.Page(faulty, clean, blind, second))
}

// checkBlind holds the designs that were written blind: all but what the page
// gives a reason for is as their author expects.
func checkBlind(t *testing.T, blind []*corpus.Case, designs int, open map[string]string) {
	t.Helper()
	if len(blind) != designs {
		t.Errorf("%d designs written blind, want %d", len(blind), designs)
	}
	for _, c := range blind {
		problems := c.Problems()
		if rule := open[c.Name]; rule != "" {
			if len(problems) != 1 || !strings.Contains(problems[0], rule) {
				t.Errorf("%s: %q, want %s alone", c.Name, problems, rule)
			}
			continue
		}
		for _, p := range problems {
			t.Error(p)
		}
	}
}

func load(t *testing.T, kind string) []*corpus.Case {
	t.Helper()
	list, err := corpus.Load(filepath.Join(designs, kind))
	if err != nil {
		t.Fatal(err)
	}
	return list
}

func checkPage(t *testing.T, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(page, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s is stale; rewrite it with -update:\n%s", page, diff)
	}
}

// TestJudge holds the judging itself against a case where all three outcomes occur.
func TestJudge(t *testing.T) {
	dir := t.TempDir()
	src, err := os.ReadFile(filepath.Join(designs, "fault", "bilge-pump-live-without-a-word.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	// The expectation is moved to line 1, where there is no finding.
	lines := append([]byte("# Invented. Moved. # want live-with-key-off\n"), src...)
	if err := os.WriteFile(filepath.Join(dir, "moved.yaml"), lines, 0o644); err != nil {
		t.Fatal(err)
	}
	list, err := corpus.Load(dir)
	if err != nil {
		t.Fatal(err)
	}
	c := list[0]
	if len(c.Caught) != 1 || len(c.Missed) != 1 || len(c.False) != 0 || len(c.Problems()) != 1 {
		t.Errorf("caught %v, missed %v, false %v", c.Caught, c.Missed, c.False)
	}
}
