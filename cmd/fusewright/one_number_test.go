package main

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/review/finding"
	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/scene"
	"fusewright/render/schematic"
)

// TestOneNumber: a finding has one number, which the flag in the drawing, its line in
// the list, the paper of findings, the terminal and the JSON show. What follows from
// another has no flag and no line beside the drawing; the paper says from which.
func TestOneNumber(t *testing.T) {
	follow := 0
	for _, file := range []string{"../../designs/reed-skiff.yaml", "../../testdata/corpus/fault/always-hot-usb-socket.yaml"} {
		r := reviewOf(t, file)
		rules := map[int]string{}
		for _, row := range report.New(r).Findings {
			if other := rules[row.Number]; row.Number == 0 || other != "" && other != row.Rule {
				t.Errorf("%s: finding %d is %s and %s", file, row.Number, other, row.Rule)
			}
			rules[row.Number] = row.Rule
		}
		follows := r.Remedies().Follows()
		paper := words(document.Findings(r))
		for n, rule := range rules {
			if !regexp.MustCompile(fmt.Sprintf(`(?m)^%d +(accepted )?(danger|fault|advice) · %s · `, n, rule)).MatchString(paper) {
				t.Errorf("%s: the paper has no %d %s", file, n, rule)
			}
		}
		var brief strings.Builder
		if err := report.WriteBrief(&brief, report.New(r), r.Plan, 100); err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Findings {
			if f.Severity > finding.Advice && !regexp.MustCompile(fmt.Sprintf(`(?m)(^|likewise |, )%d +`, f.Number)).MatchString(brief.String()) {
				t.Errorf("%s: the terminal has no %d", file, f.Number)
			}
		}
		sheets, err := schematic.Draw(r, schematic.Options{})
		if err != nil {
			t.Fatal(err)
		}
		flags := map[int]bool{}
		for _, s := range sheets {
			for _, item := range s.Items {
				if item.Begin == nil || item.Begin.Class != "finding" {
					continue
				}
				n, rule := 0, ""
				if _, err := fmt.Sscanf(item.Begin.Title, "finding %d: %s", &n, &rule); err != nil || rules[n] != rule {
					t.Errorf("%s: flag %q, but %d is %s", file, item.Begin.Title, n, rules[n])
				}
				flags[n] = true
			}
		}
		if follow += len(follows); len(flags) == 0 {
			t.Errorf("%s: no flags", file)
		}
		drawn := words(sheets)
		for n := range rules {
			listed := flags[n] || regexp.MustCompile(fmt.Sprintf(`\balso (\d+, )*%d\b`, n)).MatchString(drawn)
			if cause := follows[n]; listed == (cause != 0) || cause != 0 && !strings.Contains(paper, fmt.Sprintf("Follows from %d.", cause)) {
				t.Errorf("%s: %d is listed beside the drawing: %t; it follows from %d", file, n, listed, cause)
			}
		}
	}
	if follow == 0 {
		t.Error("nothing follows from anything")
	}
}

// words is the text of sheets, a line each.
func words(sheets []*scene.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, item := range s.Items {
			if item.Text != nil {
				b.WriteString(item.Text.String + "\n")
			}
		}
	}
	return b.String()
}
