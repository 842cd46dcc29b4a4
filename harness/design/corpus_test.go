package design

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const corpus = "../../testdata/read/"

// A file of testdata/read/err with its .out is a case; so is one of
// testdata/read/ok, which must read without a word. A new case needs no code.
func TestCorpusErrors(t *testing.T) {
	files, err := filepath.Glob(corpus + "err/*.yaml")
	if err != nil || len(files) < 35 {
		t.Fatalf("%d cases, %v", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			d, err := Read(filepath.Base(file), load(t, file), nil)
			if err == nil || d != nil {
				t.Fatal("read without a mistake")
			}
			golden(t, strings.TrimSuffix(file, ".yaml")+".out", []byte(err.Error()+"\n"))
		})
	}
}

func TestCorpusOK(t *testing.T) {
	files, err := filepath.Glob(corpus + "ok/*.yaml")
	demos, err2 := filepath.Glob("../../designs/*.yaml")
	if err != nil || err2 != nil || len(files) == 0 || len(demos) == 0 {
		t.Fatalf("%d cases, %d demos, %v, %v", len(files), len(demos), err, err2)
	}
	for _, file := range append(files, demos...) {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			if _, err := Read(filepath.Base(file), load(t, file), nil); err != nil {
				t.Error(err)
			}
		})
	}
}

func load(t testing.TB, file string) []byte {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

func TestTooLarge(t *testing.T) {
	src := []byte(strings.Repeat("# padding\n", 1+maxFileBytes/10))
	_, err := Read("large.yaml", src, nil)
	want := "large.yaml: the file has more than 4 MiB (expected at most 4 MiB)"
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// Beyond maxProblems mistakes are counted, not shown, and cost no search for
// near names.
func TestManyMistakes(t *testing.T) {
	var b strings.Builder
	b.WriteString("fusewright: 1\ntitle: many\nsystem: 12 V\npractice: motorcycle\n" +
		"battery: {chemistry: AGM, capacity: 12 Ah}\nloads:\n")
	const n = 20_000
	for i := range n {
		fmt.Fprintf(&b, "  l%d: {power: 5 W, fed by: nowhere %d}\n", i, i)
	}
	_, err := Read("many.yaml", []byte(b.String()), nil)
	lines := strings.Split(err.Error(), "\n")
	if len(lines) != maxProblems+1 {
		t.Errorf("%d lines, want %d", len(lines), maxProblems+1)
	}
	want := fmt.Sprintf("many.yaml: %d mistakes in all; the first %d found are shown", n, maxProblems)
	if lines[0] != want {
		t.Errorf("got %s\nwant %s", lines[0], want)
	}
}
