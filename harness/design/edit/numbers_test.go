package edit

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/fuzztest"

	"github.com/google/go-cmp/cmp"
)

func TestNumbers(t *testing.T) {
	list := func(pairs ...string) (out []design.Number) {
		for i := 0; i < len(pairs); i += 2 {
			out = append(out, design.Number{Label: pairs[i], Of: design.Text{Value: pairs[i+1]}})
		}
		return out
	}
	tests := []struct {
		name, src, revision string
		list                []design.Number
		want                string // or what the error says
	}{
		{"a new section", "title: a\n# end\n", "B", list("W10", "lamp, feed", "W9", "a: b", "F1", "12"),
			"title: a\n# end\n\n" + numbersHead + "\n  revision: B\n  F1: 12\n  W9: \"a: b\"\n  W10: lamp, feed\n"},
		{"a last line without its end", "title: a", "", list("F1", "main"), "title: a\n\n" + numbersHead + "\n  F1: main\n"},
		{"line ends of another system", "title: a\r\n", "", list("F1", "main"), "title: a\r\n\r\n" + numbersHead + "\r\n  F1: main\r\n"},
		{"lines stay with their comments, what is new between them",
			"numbers:   # mine\n    # red\n    F3:  main   # by hand\n    F1: old\ntitle: a\n", "", list("F3", "main", "F2", "new", "F1", "old"),
			"numbers:   # mine\n    F1: old\n    F2: new\n    # red\n    F3:  main   # by hand\ntitle: a\n"},
		{"what is not listed goes, the revision moves", "numbers:\n  revision: A\n  F1: old\n  F2: main\n# end\n", "B", list("F2", "main"),
			"numbers:\n  revision: B\n  F2: main\n# end\n"},
		{"the last line of the file lacks its end", "numbers:\n  F2: main", "", list("F2", "main", "F3", "new"),
			"numbers:\n  F2: main\n  F3: new\n"},
		{"in braces", "numbers: {F1: a}   # mine\ntitle: a\n", "B", list("F1", "a", "W2", "a, feed"),
			"numbers:   # mine\n  revision: B\n  F1: a\n  W2: a, feed\ntitle: a\n"},
		{"in braces over lines", "numbers: {\n  F1: a,\n}\ntitle: a\n", "", list("F1", "a"), "numbers:\n  F1: a\ntitle: a\n"},
		{"in braces, nothing in them", "title: a\nnumbers: {}", "", list("F1", "a"), "title: a\nnumbers:\n  F1: a\n"},
		{"in braces with comments", "numbers: {\n  F1: a, # red\n}\n", "", list("F1", "a"), "not written one label a line"},
		{"all in braces", "{title: a}\n", "B", list("F1", "a", "W2", "a, feed"),
			"{title: a, numbers: {revision: B, F1: a, W2: \"a, feed\"}}\n"},
		{"all in braces, a comma at the end", "{\n  title: a,   # name\n}\n", "", list("F1", "a"),
			"{\n  title: a, numbers: {F1: a}   # name\n}\n"},
		{"all in braces, the numbers too", "{numbers: {F1: b}, title: a}\n", "", list("F1", "a"), "{numbers: {F1: a}, title: a}\n"},
		{"before the end of the document", "title: a\n...\n# after\n", "", list("F1", "a"),
			"title: a\n\n" + numbersHead + "\n  F1: a\n...\n# after\n"},
		{"a document that is indented", "  title: a\n  system: b\n", "", list("F1", "a"),
			"  title: a\n  system: b\n\n  " + numbersHead + "\n    F1: a\n"},
		{"text whose blank lines count", "notes: |+\n  a\n", "", list("F1", "a"), "notes: |+\n  a\n" + numbersHead + "\n  F1: a\n"},
		{"a comment on a line that changes", "numbers:\n  F1: old   # by hand\n", "", list("F1", "new"),
			"numbers:\n  F1: new   # by hand\n"},
		{"comments on a line that goes", "numbers:\r\n  # red\r\n  F1: old   # by hand\r\n  F2: b\r\n", "", list("F2", "b"),
			"numbers:\r\n  # red\r\n  # by hand\r\n  F2: b\r\n"},
		{"comments at the revision that goes", "numbers:\n  # built in May\n  Revision: A # red\n  F2: b\n", "", list("F2", "b"),
			"numbers:\n  # built in May\n  # red\n  F2: b\n"},
		{"a value of several lines", "numbers:\n  F1: >\n    a\n    b\n", "", list("F1", "a b"), "numbers, F1: not on one line"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out, err := Numbers([]byte(tt.src), tt.revision, tt.list)
			if err != nil {
				if !strings.Contains(err.Error(), tt.want) {
					t.Errorf("got %v, want %s", err, tt.want)
				}
				return
			}
			if diff := cmp.Diff(tt.want, string(out)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if again, err := Numbers(out, tt.revision, tt.list); err != nil || string(again) != string(out) {
				t.Errorf("written twice (%v):\n%s", err, again)
			}
		})
	}
}

// FuzzNumbers: whatever design has a circuit, the labels written into it are those
// that it had, and writing them again changes nothing.
func FuzzNumbers(f *testing.F) {
	for _, pattern := range []string{"../../../designs/*.yaml", "../../../testdata/read/ok/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			f.Fatalf("no seeds in %s: %v", pattern, err)
		}
		for _, file := range files {
			src, err := os.ReadFile(file)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			c := circuitOf(t, src)
			if c == nil {
				return
			}
			out, err := Numbers(src, c.Design.Revision.Value, c.Labels())
			if err != nil {
				if strings.Contains(err.Error(), "something else") || strings.Contains(err.Error(), "would not be") {
					t.Fatalf("%v\n%q", err, src)
				}
				return
			}
			now := circuitOf(t, out)
			if now == nil {
				t.Fatalf("does not read any more:\n%s", out)
			}
			for i, p := range now.Parts {
				if p.Ref != c.Parts[i].Ref {
					t.Fatalf("%s was %s", p.Ref, c.Parts[i].Ref)
				}
			}
			if !slices.EqualFunc(now.Wires, c.Wires, func(a, b *circuit.Wire) bool { return a.Number == b.Number && a.Role == b.Role }) {
				t.Fatalf("wires renumbered:\n%s", out)
			}
			again, err := Numbers(out, now.Design.Revision.Value, now.Labels())
			if err != nil || string(again) != string(out) {
				t.Fatalf("written twice (%v):\n%s", err, Diff("x", out, again))
			}
		})
	})
}

// circuitOf is the circuit of a design; nil when it has none.
func circuitOf(t *testing.T, src []byte) *circuit.Circuit {
	t.Helper()
	d, err := design.Read("x.yaml", src, nil)
	if err != nil {
		return nil
	}
	c, err := circuit.Build(d)
	if err != nil {
		return nil
	}
	return c
}
