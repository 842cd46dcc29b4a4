package report_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/render/report"
)

// TestCauses: every open finding stands under one cause of the JSON, by its place in
// the list, and the terminal names each cause of more than advice by the same letter within its width.
func TestCauses(t *testing.T) {
	r := reviewOf(t, "../../designs/reed-skiff.yaml")
	p := r.Remedies()
	rep := report.New(r).WithCauses(p)
	var under []int
	for _, c := range rep.Causes {
		under = append(under, c.Findings...)
	}
	slices.Sort(under)
	open := 0
	for i, f := range rep.Findings {
		if f.Accepted == "" && !slices.Contains(under, i) {
			t.Errorf("%s %s stands under no cause", f.Rule, f.About())
		}
		if f.Accepted == "" {
			open++
		}
	}
	if len(under) != open {
		t.Errorf("%d findings under causes, %d open", len(under), open)
	}
	for _, width := range []int{60, 80, 100} {
		var b strings.Builder
		if err := report.WriteBrief(&b, report.New(r), p, width); err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(b.String(), "\n")
		for _, c := range rep.Causes {
			grave := slices.ContainsFunc(c.Findings, func(i int) bool { return rep.Findings[i].Severity != "advice" })
			if named := slices.ContainsFunc(lines, func(l string) bool { return strings.HasPrefix(l, c.ID+" ") }); named != grave {
				t.Errorf("a line begins with %s: %t", c.ID, named)
			}
		}
		for _, l := range lines {
			if n := len([]rune(l)); n > width {
				t.Errorf("%d characters at a width of %d: %s", n, width, l)
			}
		}
	}
}

// TestBriefFits: the boat with many faults fits two screens of fifty lines but for the three that say how it starts, each danger
// and fault is named, and each finding takes at most three lines of its own.
func TestBriefFits(t *testing.T) {
	r := reviewOf(t, "../../designs/reed-skiff.yaml")
	var b strings.Builder
	rep := report.New(r)
	if err := report.WriteBrief(&b, rep, r.Remedies(), 80); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimRight(b.String(), "\n"), "\n")
	if len(lines) > 103 {
		t.Errorf("%d lines", len(lines))
	}
	if last := lines[len(lines)-1]; !strings.HasPrefix(last, "Do not build: ") {
		t.Errorf("the last line is %q", last)
	}
	text := strings.Join(strings.Fields(b.String()), " ")
	for _, f := range rep.Findings {
		if f.Severity != "advice" && !strings.Contains(text, f.About()) {
			t.Errorf("%s of %s is not named", f.Rule, f.About())
		}
	}
}

// Advice of rules that are named stands with its parts beside what is graver: what was
// not checked, and a fuse that may burst.
func TestNamedAdvice(t *testing.T) {
	const text = `fusewright: 1
title: named
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 100 Ah, resistance: 3 mΩ, at: tray}
places: {tray: {ambient: 30 °C}}
grounds: {stud: {kind: frame stud, at: tray, limit: 60 A, frame resistance: 1 mΩ}}
fuses: {main: {type: blade C, rating: 30 A, at: tray, fed by: battery, wire: {length: 50 mm, size: 6 mm²}}}
loads:
  lamp: {power: 400 W, behaves: resistor, own switch: yes, at: tray, fed by: main, returns to: stud}
  vest: {power: 9 W, behaves: resistor, own switch: yes, at: tray, fed by: main, returns to: stud}
  fan: {power: 9 W, behaves: resistor, own switch: yes, at: tray, fed by: main, returns to: stud}
situations: {night: {on: [lamp]}}
`
	path := filepath.Join(t.TempDir(), "named.yaml")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	r := reviewOf(t, path)
	var b strings.Builder
	if err := report.WriteBrief(&b, report.New(r), r.Remedies(), 100); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{"on in no situation: 5 E2 vest, 7 E3 fan [load-never-on]", "cannot break the short: 2 F1 main (", "[fuse-breaking-capacity]"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in\n%s", want, b.String())
		}
	}
}
