package corpus_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// reviewed are the sets, and how many of the clean designs of each raise a danger or a
// fault; their README says which and why.
var reviewed = map[string]int{"../../../testdata/corpus-review": 1, "../../../testdata/corpus-review-third": 2, "../../../testdata/corpus-review-fourth": 6,
	"../../../testdata/corpus-review-fifth": 1, "../../../testdata/corpus-review-sixth": 1}

// leastCaught is the share of the planted mistakes that can be said in a design and are
// found.
const leastCaught = 0.95

func findings(t *testing.T, file string) []*finding.Finding {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return finding.All(r.Findings)
}

// TestPlantedForReview: each planted mistake raises the rule that answers.csv names for it,
// at the severity given there or a graver one; those without a rule count as missed.
func TestPlantedForReview(t *testing.T) {
	for set := range reviewed {
		t.Run(filepath.Base(set), func(t *testing.T) { planted(t, set) })
	}
}

func planted(t *testing.T, set string) {
	f, err := os.Open(filepath.Join(set, "answers.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob(filepath.Join(set, "planted", "*.yaml"))
	caught := 0
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		at := slices.IndexFunc(rows, func(row []string) bool { return row[0] == name })
		if at < 0 {
			t.Errorf("%s stands in no row of answers.csv", name)
			continue
		}
		rule, least := rows[at][1], finding.SeverityOf(rows[at][2])
		if rule == "" {
			continue // missed, and said so
		}
		if !slices.ContainsFunc(findings(t, file), func(f *finding.Finding) bool {
			return f.Rule == rule && f.Severity >= least && f.Accepted == ""
		}) {
			t.Errorf("%s: no %s of %s", name, rows[at][2], rule)
			continue
		}
		caught++
	}
	if share := float64(caught) / float64(len(files)); share < leastCaught {
		t.Errorf("%d of %d planted mistakes are found", caught, len(files))
	}
}

// TestCleanForReview: designs of experienced hands raise no danger and no fault, but few.
func TestCleanForReview(t *testing.T) {
	for set, most := range reviewed {
		t.Run(filepath.Base(set), func(t *testing.T) { clean(t, set, most) })
	}
}

func clean(t *testing.T, set string, most int) {
	files, _ := filepath.Glob(filepath.Join(set, "clean", "*.yaml"))
	if len(files) < 30 {
		t.Fatalf("only %d clean designs", len(files))
	}
	alarmed := 0
	for _, file := range files {
		before := alarmed
		for _, f := range findings(t, file) {
			if f.Severity >= finding.Fault && f.Accepted == "" {
				t.Logf("%s: %s %s: %s", filepath.Base(file), f.Severity, f.Rule, f.What)
				alarmed = before + 1
			}
		}
	}
	if alarmed > most {
		t.Errorf("%d clean designs raise a danger or a fault", alarmed)
	}
}
