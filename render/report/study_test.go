package report_test

import (
	"bytes"
	"encoding/json"
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
	"fusewright/render/report"
)

const reports = "../../testdata/reports/"

// reviewed assesses a design of the reports folder.
func reviewed(t *testing.T, name string) *harness.Review {
	t.Helper()
	src, err := os.ReadFile(reports + name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(name, src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(reports+name, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(reports + name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

// faultsAndFuses is the study without the corners, which have tests of their own.
func faultsAndFuses(t *testing.T) *report.StudyReport {
	t.Helper()
	rep := report.NewStudy(reviewed(t, "two-fuses.yaml"))
	rep.Corners = nil
	return rep
}

// The study as text stays within 110 columns and the same byte for byte; its
// JSON says the same.
func TestStudy(t *testing.T) {
	rep := faultsAndFuses(t)
	var text, js, again bytes.Buffer
	if err := report.WriteStudy(&text, rep); err != nil {
		t.Fatal(err)
	}
	for i, line := range strings.Split(text.String(), "\n") {
		if utf8.RuneCountInString(line) > 110 {
			t.Errorf("line %d is longer than 110 columns: %s", i+1, line)
		}
	}
	golden(t, "two-fuses.study.txt", text.Bytes())
	if err := report.WriteJSON(&js, rep); err != nil {
		t.Fatal(err)
	}
	golden(t, "two-fuses.study.json", js.Bytes())
	if err := report.WriteJSON(&again, faultsAndFuses(t)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(js.Bytes(), again.Bytes()) {
		t.Error("two runs differ")
	}
}

// Every key of the study's JSON is described in docs/report.md.
func TestStudyIsDocumented(t *testing.T) {
	var js bytes.Buffer
	if err := report.WriteJSON(&js, faultsAndFuses(t)); err != nil {
		t.Fatal(err)
	}
	page, err := os.ReadFile("../../docs/report.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, ok := strings.Cut(string(page), "## `study`")
	if !ok {
		t.Fatal("docs/report.md has no section on the study")
	}
	section, _, _ = strings.Cut(section, "\n## ")
	var value any
	if err := json.Unmarshal(js.Bytes(), &value); err != nil {
		t.Fatal(err)
	}
	keys := map[string]bool{}
	gatherKeys(value, keys)
	for key := range keys {
		described := regexp.MustCompile("[`.]" + regexp.QuoteMeta(key) + "(\\[\\])?`")
		if !described.MatchString(section) && key != "fusewright_study" {
			t.Errorf("key %q is not described", key)
		}
	}
}

// Every key of the budget's JSON, those that a demo leaves out included, is described there as well.
func TestBudgetIsDocumented(t *testing.T) {
	page, err := os.ReadFile("../../docs/report.md")
	if err != nil {
		t.Fatal(err)
	}
	row := regexp.MustCompile("(?m)^\\| `budget` \\|.*$").FindString(string(page))
	for _, of := range []reflect.Type{reflect.TypeFor[report.Budget](), reflect.TypeFor[report.BudgetLine](), reflect.TypeFor[report.BankLine]()} {
		for i := range of.NumField() {
			key, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
			if key != "" && !strings.Contains(row, "`"+key+"`") && !strings.Contains(row, "`"+key+"[]`") {
				t.Errorf("key %q of %s is not described", key, of.Name())
			}
		}
	}
}

func gatherKeys(value any, keys map[string]bool) {
	switch v := value.(type) {
	case map[string]any:
		for key, inner := range v {
			if key != "design" {
				gatherKeys(inner, keys)
			}
			keys[key] = true
		}
	case []any:
		for _, inner := range v {
			gatherKeys(inner, keys)
		}
	}
}

// TestSummary: what is not cleared and what a lost return harms stand first.
func TestSummary(t *testing.T) {
	rep := report.NewStudy(reviewOf(t, "../../designs/reed-skiff.yaml"))
	text := strings.Join(rep.Summary(), "\n")
	for _, want := range []string{"bolted shorts: ", "not cleared, no fuse: W", "within the allowed length: W1", "F5 with W7"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}
