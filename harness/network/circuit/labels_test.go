package circuit_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"

	"github.com/google/go-cmp/cmp"
)

// labels are all labels of a circuit with what has them.
func labels(c *circuit.Circuit) map[string]string {
	m := map[string]string{}
	for _, n := range c.Labels() {
		m[n.Of.Value] = n.Label
	}
	return m
}

// A label stays with its part or wire; what has none takes the next free one of
// its letter, and what is gone keeps its own within the revision.
func TestHeldLabels(t *testing.T) {
	const parts = `
fuses:
  main: {type: blade C, rating: 5 A, at: a, fed by: battery}
blocks: {b: {at: a, fed by: main, way limit: 20 A, total limit: 40 A, ways: {1: {fuse: 5 A}, 2: {fuse: 3 A}}}}
loads:
  one: {power: 5 W, behaves: resistor, at: a, fed by: [b 1, b 2], returns to: stud}
  two: {power: 5 W, behaves: resistor, at: a, fed by: b 2, returns to: stud}
`
	tests := []struct {
		name, numbers string
		want          map[string]string // some of them
	}{
		{"none held", "", map[string]string{"main": "F1", "b 1": "F2", "b 2": "F3", "main, feed from battery": "W1", "two, feed from b 2": "W5",
			"one, feed from b 1": "W3", "one, feed from b 2": "W4"}},
		{"a fuse, others beside it", "F2: main", map[string]string{"main": "F2", "b 1": "F1", "b 2": "F3"}},
		{"the fuse in a way", "F9: b 1", map[string]string{"main": "F1", "b 1": "F9", "b 2": "F2"}},
		{"a wire, in any case and spacing", "W3: Two,  FEED", map[string]string{"two, feed from b 2": "W3", "one, feed from b 1": "W4"}},
		{"one of two wires of a role", `W1: "one, feed from b 2"`, map[string]string{"one, feed from b 2": "W1", "one, feed from b 1": "W4"}},
		{"the other one by part and role alone", "W1: \"one, feed from b 2\"\n  W8: one, feed", map[string]string{"one, feed from b 2": "W1", "one, feed from b 1": "W8"}},
		{"a wire that came from elsewhere", `W9: "two, feed from b 1"`, map[string]string{"two, feed from b 2": "W9", "one, feed from b 1": "W3"}},
		{"one of two that came from elsewhere", "W9: \"one, feed from main\"\n  W8: \"one, feed from b 1\"",
			map[string]string{"one, feed from b 1": "W8", "one, feed from b 2": "W9"}},
		{"two that came from elsewhere are gone", "W9: \"two, feed from main\"\n  W8: \"two, feed from b 1\"",
			map[string]string{"two, feed from b 2": "W5", "two, feed from main": "W9"}},
		{"another letter by now", "K1: main", map[string]string{"b 1": "F2", "b 2": "F3"}},
		{"with a colour that is stated now", "W9: \"two, feed from b 2, RD\"", map[string]string{"two, feed from b 2": "W9"}},
		{"gone, of this revision", "F1: old fuse", map[string]string{"main": "F2", "old fuse": "F1"}},
		{"gone, of the revision before", "revision: A\n  F1: old fuse", map[string]string{"main": "F1", "old fuse": ""}},
		{"gone, of the same revision", "revision: B\n  F1: old fuse", map[string]string{"main": "F2", "old fuse": "F1"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			src := start + parts
			if tt.numbers != "" {
				src += "numbers:\n  " + tt.numbers + "\n"
			}
			if strings.Contains(tt.numbers, "revision") {
				src += "revision: B\n"
			}
			c := build(t, "t.yaml", src)
			got := labels(c)
			for of, label := range tt.want {
				if got[of] != label {
					t.Errorf("%s is %q, want %q", of, got[of], label)
				}
			}
			if !slices.IsSortedFunc(c.Wires, func(a, b *circuit.Wire) int {
				return design.Number{Label: a.Number}.Compare(design.Number{Label: b.Number})
			}) {
				t.Error("wires are not in the order of their numbers")
			}
			distinct(t, c)
		})
	}
}

// distinct tells that no two things have one label.
func distinct(t *testing.T, c *circuit.Circuit) {
	t.Helper()
	seen := map[string]bool{}
	for _, n := range c.Labels() {
		if seen[n.Label] {
			t.Errorf("%s is given twice", n.Label)
		}
		seen[n.Label] = true
	}
}

// With its numbers written, a design that gains a load or loses one leaves every
// other label as it was; the new load takes numbers that nothing had.
func TestLabelsStay(t *testing.T) {
	files, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no designs", err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			src := buildtest.File(t, file)
			d := buildtest.Design(t, string(src))
			whole := mustBuild(t, d)
			d.Numbers = design.Numbers{Revision: d.Revision, List: whole.Labels()}
			was := labels(whole)
			same := func(what, except string) {
				t.Helper()
				c := mustBuild(t, d)
				distinct(t, c)
				now := labels(c)
				for of, label := range was {
					if now[of] != label {
						t.Errorf("%s: %s was %s and is %q", what, of, label, now[of])
					}
				}
				for _, n := range c.Labels() {
					if was[n.Of.Value] == "" && (except == "" || !strings.HasPrefix(n.Of.Value, except)) {
						t.Errorf("%s: %s is new: %s", what, n.Label, n.Of.Value)
					}
				}
			}
			loads := d.Loads
			for i, l := range loads {
				d.Loads = slices.Delete(slices.Clone(loads), i, i+1)
				same("without "+l.Name, "")
				more := *l
				more.Name = "newcomer"
				d.Loads = slices.Insert(slices.Clone(loads), i, &more)
				same("another like "+l.Name, more.Name)
			}
		})
	}
}

func mustBuild(t *testing.T, d *design.Design) *circuit.Circuit {
	t.Helper()
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Each mistake is said at its line, all in one run.
func TestHeldLabelsMistakes(t *testing.T) {
	d := buildtest.Design(t, start+`fuses: {main: {type: blade C, rating: 5 A, at: a, fed by: battery}}
numbers:
  F2: main
  F3: Main
  W1: main
  W2: main, return
  F4: main, feed
`)
	_, err := circuit.Build(d)
	want := "design.yaml:11:3: numbers: F2 and F3 both stand for \"Main\" (expected one label for each; see design.yaml:10:3)\n" +
		"design.yaml:12:7: numbers: W1 stands for \"main\", which is no wire (expected a part and the role of its wire, such as \"left lamp, feed\")\n" +
		"design.yaml:14:3: numbers: F4 stands for \"main, feed\", which has another letter (expected W and a number, or no such line, which `fmt --number` then writes)"
	if err == nil {
		t.Fatal("no mistake found")
	}
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A wire that was the only one of its role is no longer told by that when a second comes:
// the label may be on either.
func TestHeldLabelOfTwo(t *testing.T) {
	d := buildtest.Design(t, start+`fuses:
  main: {type: blade C, rating: 5 A, at: a, fed by: battery}
  spare: {type: blade C, rating: 5 A, at: a, fed by: battery}
loads:
  one: {power: 5 W, behaves: resistor, at: a, fed by: [spare, main], returns to: stud}
numbers:
  W5: one, feed
`)
	_, err := circuit.Build(d)
	want := "design.yaml:14:7: numbers: W5 stands for \"one, feed\", of which there are 2 " +
		"(expected \"one, feed from main\" or \"one, feed from spare\", whichever is built with that label)"
	if err == nil {
		t.Fatal("taken for one of them")
	}
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
