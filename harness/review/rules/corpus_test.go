package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
)

// casesDir holds a design per rule with its expectations, and ok/ those that
// must give nothing.
const casesDir = "../../../testdata/rules"

// wantMark is an expectation: `# want rule-name "regexp"`, on the line the
// finding must point at; several may follow each other. Accepted findings are
// expected as `# want-accepted rule-name "regexp"`.
var wantMark = regexp.MustCompile(`# want(-accepted)? ([a-z-]+) "([^"]*)"`)

type want struct {
	line     int
	rule     string
	accepted bool
	text     *regexp.Regexp
	met      bool
}

// TestCases runs each rule's design: the findings must be those expected on
// their lines, and no others.
func TestCases(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(casesDir, "*.yaml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		t.Run(name, func(t *testing.T) {
			wants, found := runCase(t, file)
			triggers := false
			for _, w := range wants {
				triggers = triggers || w.rule == name
			}
			if !triggers {
				t.Errorf("%s expects no finding of its own rule", file)
			}
			judge(t, file, wants, found)
		})
	}
}

// TestSilent runs designs that must give no finding.
func TestSilent(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(casesDir, "ok", "*.yaml"))
	if err != nil || len(files) < 10 {
		t.Fatalf("%d silent cases, want at least 10 (%v)", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			wants, found := runCase(t, file)
			if len(wants) > 0 {
				t.Error("a silent case expects findings")
			}
			judge(t, file, wants, found)
		})
	}
}

func runCase(t *testing.T, file string) ([]*want, []*finding.Finding) {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return wantsOf(t, src), assess(t, file, src)
}

func wantsOf(t *testing.T, src []byte) []*want {
	t.Helper()
	var list []*want
	for i, line := range strings.Split(string(src), "\n") {
		for _, m := range wantMark.FindAllStringSubmatch(line, -1) {
			text, err := regexp.Compile(m[3])
			if err != nil {
				t.Fatalf("line %d: %v", i+1, err)
			}
			list = append(list, &want{line: i + 1, rule: m[2], accepted: m[1] != "", text: text})
		}
	}
	return list
}

func judge(t *testing.T, file string, wants []*want, found []*finding.Finding) {
	t.Helper()
	for _, f := range found {
		if !claim(wants, f) {
			t.Errorf("not expected: %s", describe(f))
		}
	}
	for _, w := range wants {
		if !w.met {
			t.Errorf("%s:%d: no finding of %s matches %q", file, w.line, w.rule, w.text)
		}
	}
}

// claim finds an expectation that a finding meets.
func claim(wants []*want, f *finding.Finding) bool {
	for _, w := range wants {
		if !w.met && w.line == f.Pos.Line && w.rule == f.Rule && w.accepted == (f.Accepted != "") &&
			w.text.MatchString(f.What) {
			w.met = true
			return true
		}
	}
	return false
}

func describe(f *finding.Finding) string {
	return fmt.Sprintf("%s: %s: %s [%s] accepted=%q", f.Pos, f.Severity, f.What, f.Rule, f.Accepted)
}
