package rules_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
)

// TestHotBundle: the place between the wires passes 85 °C, the class of the lamp's feed, at
// some 10.3 A, and 95 °C, from where it is a danger, at some 13.4 A. The wires that
// make the heat are of class 150 °C; of a lower class they are judged by what they carry.
// Above 90 °C there is advice for the lamp's return of class 100 °C.
func TestHotBundle(t *testing.T) {
	r := rules.Find("hot-bundle")
	for _, c := range []struct {
		draw, class string
		want        finding.Severity
		count       int
	}{
		{"5 A", "D", 0, 0}, {"10.17 A", "D", finding.Advice, 1}, {"10.42 A", "D", finding.Fault, 1},
		{"13.33 A", "D", finding.Fault, 2}, {"13.58 A", "D", finding.Danger, 2},
		{"13.58 A", "A", finding.Danger, 2},
	} {
		src := strings.NewReplacer("10.83 A", c.draw, "thin wall class D", "thin wall class "+c.class).Replace(r.Bad)
		var most finding.Severity
		count := 0
		for _, f := range assess(t, "hot.yaml", []byte(example.Design(src))) {
			if f.Rule == r.Name {
				most = max(most, f.Severity)
				count++
			}
		}
		if most != c.want || count != c.count {
			t.Errorf("%s, class %s: %d of %s, want %d of %s", c.draw, c.class, count, most, c.count, c.want)
		}
	}
}

// TestPartBelowFuse: of a switch of 5 A a fuse of 10 A is advice, one above it a fault, one
// below nothing.
func TestPartBelowFuse(t *testing.T) {
	r := rules.Find("part-below-fuse")
	for rating, want := range map[string]finding.Severity{"7.5 A": 0, "10 A": finding.Advice, "15 A": finding.Fault} {
		src := strings.Replace(r.Bad, "lamp fuse: {type: blade C, rating: 10 A", "lamp fuse: {type: blade C, rating: "+rating, 1)
		if got := gravest(t, src, r.Name); got != want {
			t.Errorf("%s: %s, want %s", rating, got, want)
		}
	}
	// 5.1 A: 10 A are 1.96 times that
	src := strings.Replace(r.Bad, "type: handlebar rocker 5 A", "rating: 5.1 A", 1)
	if got := gravest(t, src, r.Name); got != 0 {
		t.Errorf("of a switch of 5.1 A: %s", got)
	}
}
