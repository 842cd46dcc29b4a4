package main

import (
	"go/ast"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The list keeps in step with the code: every mutant's place is there, once.
func TestListIsFound(t *testing.T) {
	all, err := readList(listText)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 150 {
		t.Errorf("%d mutants, want 150 at least", len(all))
	}
	t.Chdir(filepath.Join("..", "..", ".."))
	packs, err := packages()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := located(all, packs); err != nil {
		t.Error(err)
	}
}

const toy = `package toy

const limit, half = 12, 0.5

type box struct{ n int }

func (b *box) full() bool { return b.n >= limit && b.n < 2*limit }

func twice(a, b int) int { return max(a, b) + a*b }
`

func TestFind(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "toy.go")
	if err := os.WriteFile(file, []byte(toy), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		m    mutant
		want string // the changed bit, or the end of the error
	}{
		{"whole step", mutant{In: "limit", Flip: "up"}, "((12)+1)"},
		{"scale down", mutant{In: "half", Flip: "down"}, "((0.5)*0.9)"},
		{"edge", mutant{In: "box.full", At: "b.n>=limit", Flip: "edge"}, "(b.n) > (limit)"},
		{"turn", mutant{In: "box.full", At: "b.n < 2 * limit", Flip: "turn"}, "(b.n) > (2*limit)"},
		{"guard", mutant{In: "box.full", At: "b.n >= limit", Flip: "true"}, "(b.n >= limit || true)"},
		{"term dropped", mutant{In: "twice", At: "max(a, b) + a*b", Flip: "left"}, "(max(a, b))"},
		{"most dropped", mutant{In: "twice", At: "max(a, b)", Flip: "right"}, "(b)"},
		{"second of two", mutant{In: "box.full", At: "limit", Nth: 2, Flip: "down"}, "((limit)*0.9)"},
		{"one of two not said", mutant{In: "box.full", At: "limit", Flip: "down"}, "2 there, name one by nth"},
		{"gone", mutant{In: "twice", At: "a/b", Flip: "left"}, "not found (0 there)"},
		{"no function", mutant{In: "thrice", Flip: "up"}, "not found (0 there)"},
		{"no flip", mutant{In: "limit", Flip: "sideways"}, "no such flip"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.m.group = &group{Package: "toy"}
			got, err := find(c.m, dir)
			if err != nil {
				if !strings.HasSuffix(err.Error(), c.want) {
					t.Errorf("error %q, want …%s", err, c.want)
				}
				return
			}
			if got.new != c.want || got.file != file {
				t.Errorf("%q in %s, want %q", got.new, got.file, c.want)
			}
		})
	}
}

func TestFlipsPassOver(t *testing.T) {
	text := func(ast.Node) string { return "x" }
	for _, flip := range []string{"edge", "turn", "minus", "left", "right"} {
		if got := flips[flip](ast.NewIdent("x"), text); got != "" {
			t.Errorf("%s of a name gives %q", flip, got)
		}
	}
}

func TestChoose(t *testing.T) {
	all, err := readList([]byte(`
- {package: a, quick: true, mutants: [{in: f, flip: up}, {in: g, flip: up}, {in: h, flip: up, survives: "why"}]}
- {package: b, mutants: [{in: f, flip: up}]}
`))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		only   []string
		sample int
		want   int
	}{{nil, 0, 4}, {[]string{"b"}, 0, 1}, {nil, 1, 1}, {nil, 9, 2}} {
		first, again := choose(all, c.only, c.sample), choose(all, c.only, c.sample)
		if len(first) != c.want || len(again) != c.want || first[0] != again[0] {
			t.Errorf("%v %d: %v, then %v; want %d", c.only, c.sample, first, again, c.want)
		}
	}
	if _, err := readList([]byte("- {package: a, mutants: [{in: f, flip: up}, {in: f, flip: up}]}")); err == nil {
		t.Error("a mutant listed twice is taken")
	}
	if _, err := readList([]byte("- {package: a, mutant: []}")); err == nil {
		t.Error("an unknown key is taken")
	}
}

// Ends come in the list's order; what is kept is not tried again.
func TestTryAllAndKeep(t *testing.T) {
	g := &group{Package: "toy"}
	list := []mutant{{In: "f", Flip: "up", group: g}, {In: "g", Flip: "up", group: g}, {In: "h", Flip: "up", group: g, Survives: "why"}}
	keep := &kept{file: filepath.Join(t.TempDir(), "kept")}
	for _, want := range [][]int{{0, 1, 2}, {2}} {
		if err := keep.read(); err != nil {
			t.Fatal(err)
		}
		var tried [3]bool
		var out strings.Builder
		ends, err := tryAll(&out, list, keep, func(i int) (string, error) {
			tried[i] = true
			return []string{killed, killed, survived}[i], nil
		}, 2)
		if err != nil || strings.Join(ends, " ") != "killed killed SURVIVED" {
			t.Fatalf("%v, %v", ends, err)
		}
		for i := range tried {
			if tried[i] != slices.Contains(want, i) {
				t.Errorf("tried %v, want %v", tried, want)
			}
		}
		if !strings.HasSuffix(out.String(), "3 mutants: 2 killed, 1 survived, 0 did not build\n") ||
			!strings.Contains(out.String(), "toy.h: up (known: why)") {
			t.Error(out.String())
		}
	}
}

func TestReport(t *testing.T) {
	g := &group{Package: "toy"}
	list := []mutant{{In: "f", Flip: "up", group: g}, {In: "g", Flip: "edge", At: "a < b", Survives: "never equal", group: g},
		{In: "h", Flip: "up", group: g}}
	got := string(report(list, []string{killed, survived, survived}))
	for _, want := range []string{"3 mutants: 1 killed, 2 survived (66.7 %), 0 did not build.", "| toy | 3 | 1 | 2 |",
		"- toy.g: edge `a < b`: never equal", "- toy.h: up: **not known: a test is missing**"} {
		if !strings.Contains(got, want) {
			t.Errorf("the report lacks %q:\n%s", want, got)
		}
	}
}
