// Package corpus holds the findings of whole designs against what their author
// says is wrong with them. A faulty design carries its expectations in the file,
// as `# want rule-name severity` on the line the finding must point at; a clean one
// carries none. A design may also carry `# also rule-name` where a finding is true
// and its author had not thought of it: one that was written blind, by someone who
// had not read the rules, or any that lacks a figure which the review asks for. It is used by tests and for the page of results; the
// designs are in testdata/corpus. It is not part of the program.
package corpus

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// Case is one design of the corpus with the outcome of its review.
type Case struct {
	Name     string // file name without its extension
	File     string
	Story    string // what its first comment says is wrong, or how it is built
	Vehicle  string
	Practice string
	SystemV  float64
	Wants    []Want
	Also     []Want             // true findings that the author had not thought of
	Caught   []Want             // expectations met
	Missed   []Want             // expectations without a finding
	False    []*finding.Finding // findings without an expectation
	Err      error              // the design does not read
}

// Want is an expected finding: a rule, the line it must point at, and how grave it
// must be, "" where the author of the design knew no severities.
type Want struct {
	Line           int
	Rule, Severity string
}

var (
	wantMark = regexp.MustCompile(`# want ([a-z0-9-]+)(?: (danger|fault|advice)\b)?`)
	alsoMark = regexp.MustCompile(`# also ([a-z0-9-]+)()`)
)

// Load reviews every design of a folder, in the order of their names.
func Load(dir string) ([]*Case, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.yaml"))
	if err != nil {
		return nil, err
	}
	var list []*Case
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			return nil, err
		}
		list = append(list, review(file, src))
	}
	return list, nil
}

func review(file string, src []byte) *Case {
	c := &Case{Name: strings.TrimSuffix(filepath.Base(file), ".yaml"), File: file, Wants: marks(src, wantMark), Also: marks(src, alsoMark)}
	first, _, _ := strings.Cut(string(src), "\n")
	c.Story = strings.TrimPrefix(first, "# Invented. ")
	d, err := design.Read(filepath.Base(file), src, library.Default())
	if err != nil {
		c.Err = err
		return c
	}
	c.Vehicle, c.Practice, c.SystemV = d.Vehicle.Value, d.Practice.Name, d.SystemV.Value
	r, err := harness.Assess(d)
	if err != nil {
		c.Err = err
		return c
	}
	c.judge(r.Findings)
	return c
}

func marks(src []byte, mark *regexp.Regexp) []Want {
	var list []Want
	for i, line := range strings.Split(string(src), "\n") {
		for _, m := range mark.FindAllStringSubmatch(line, -1) {
			list = append(list, Want{Line: i + 1, Rule: m[1], Severity: m[2]})
		}
	}
	return list
}

// judge pairs findings with expectations, each at most once. Accepted findings
// count as findings: no design of the corpus accepts any.
func (c *Case) judge(found []*finding.Finding) {
	met, metAlso := make([]bool, len(c.Wants)), make([]bool, len(c.Also))
	for _, f := range found {
		if !claim(c.Wants, met, f) && !claim(c.Also, metAlso, f) {
			c.False = append(c.False, f)
		}
	}
	for i, w := range c.Wants {
		if met[i] {
			c.Caught = append(c.Caught, w)
		} else {
			c.Missed = append(c.Missed, w)
		}
	}
	for i, w := range c.Also {
		if !metAlso[i] {
			c.Missed = append(c.Missed, w)
		}
	}
}

// claim marks the first expectation that a finding meets.
func claim(list []Want, met []bool, f *finding.Finding) bool {
	for i, w := range list {
		if !met[i] && w.Rule == f.Rule && w.Line == f.Pos.Line && (w.Severity == "" || w.Severity == f.Severity.String()) {
			met[i] = true
			return true
		}
	}
	return false
}

// Problems says in words what is not as expected; empty when all is.
func (c *Case) Problems() []string {
	var list []string
	if c.Err != nil {
		list = append(list, "does not read: "+c.Err.Error())
	}
	for _, w := range c.Missed {
		list = append(list, fmt.Sprintf("missed: %s:%d: %s %s", c.File, w.Line, w.Rule, w.Severity))
	}
	for _, f := range c.False {
		list = append(list, fmt.Sprintf("false alarm: %s:%d: %s %s: %s", c.File, f.Pos.Line, f.Rule, f.Severity, f.What))
	}
	return list
}
