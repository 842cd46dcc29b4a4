package main

import (
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// boards commits so many numbered files and gives the warnings.
func boards(t *testing.T, dir string, n int) []string {
	t.Helper()
	o := newOutputs(dir)
	for i := range n {
		name := []string{"board.dxf", "board-2.dxf", "board-3.dxf", "board-4.dxf"}[i]
		o.add(name, func(b *bytes.Buffer) error { b.WriteString(name); return nil })
	}
	o.replaces = []string{"board-*.dxf", "cover.dxf"}
	if err := o.commit(); err != nil {
		t.Fatal(err)
	}
	return o.warnings
}

func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Only what an earlier run wrote is removed, and only as it wrote it.
func TestStaleFiles(t *testing.T) {
	for _, c := range []struct {
		name    string
		prepare func(dir string) // after a run that wrote four boards
		left    []string
		says    string // of a warning; "" = none
	}{
		{"as written", func(string) {}, nil, ""},
		{"changed", func(dir string) { put(t, filepath.Join(dir, "board-3.dxf"), "mine") }, []string{"board-3.dxf"},
			"board-3.dxf is none of the files made now, and stays: it was changed since it was written"},
		{"read-only", func(dir string) { os.Chmod(filepath.Join(dir, "board-3.dxf"), 0o444) }, []string{"board-3.dxf"},
			"stays: it is read-only"},
		{"the user's own", func(dir string) { put(t, filepath.Join(dir, "board-9.dxf"), "mine") }, []string{"board-9.dxf"},
			"stays: no earlier run wrote it"},
		{"the user's own, named whole", func(dir string) { put(t, filepath.Join(dir, "cover.dxf"), "mine") }, []string{"cover.dxf"},
			"stays: no earlier run wrote it"},
		{"no list", func(dir string) { os.Remove(filepath.Join(dir, writtenName)) },
			[]string{"board-2.dxf", "board-3.dxf", "board-4.dxf"}, "stays: the folder has no list"},
		{"damaged list", func(dir string) { put(t, filepath.Join(dir, writtenName), "board-2.dxf\n") },
			[]string{"board-2.dxf", "board-3.dxf", "board-4.dxf"}, writtenName + " is damaged"},
		{"list of another program", func(dir string) { put(t, filepath.Join(dir, writtenName), "") },
			[]string{"board-2.dxf", "board-3.dxf", "board-4.dxf"}, writtenName + " is damaged"},
		{"a list that reaches out", func(dir string) {
			put(t, filepath.Join(dir, writtenName), writtenLead+"\n"+strings.Repeat("0", 64)+"  ../board-2.dxf\n")
		}, []string{"board-2.dxf", "board-3.dxf", "board-4.dxf"}, writtenName + " is damaged"},
		{"other names", func(dir string) {
			for _, name := range []string{"board-notes.dxf", "board-.dxf", "board-2x.dxf", "board-2.svg", "other-2.dxf"} {
				put(t, filepath.Join(dir, name), "mine")
			}
		}, []string{"board-.dxf", "board-2.svg", "board-2x.dxf", "board-notes.dxf", "other-2.dxf"}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			if said := boards(t, dir, 4); len(said) > 0 {
				t.Fatalf("a new folder: %q", said)
			}
			c.prepare(dir)
			said := strings.Join(boards(t, dir, 1), "\n")
			found := contents(t, dir)
			delete(found, "board.dxf")
			delete(found, writtenName)
			if left := slices.Sorted(maps.Keys(found)); !slices.Equal(left, c.left) {
				t.Errorf("left %v, want %v", left, c.left)
			}
			if c.says == "" && said != "" || !strings.Contains(said, c.says) {
				t.Errorf("said %q, want %q", said, c.says)
			}
		})
	}
}

// The list holds what is there of all sets in the folder, in a form that checksum
// programs read, and the same bytes each time.
func TestListOfWhatWasWritten(t *testing.T) {
	dir := t.TempDir()
	pages := newOutputs(dir)
	pages.add("page.svg", func(b *bytes.Buffer) error { b.WriteString("abc"); return nil })
	pages.add("page-2.svg", func(b *bytes.Buffer) error { return nil })
	pages.replaces = []string{"page-*.svg"}
	if err := pages.commit(); err != nil {
		t.Fatal(err)
	}
	boards(t, dir, 2)
	boards(t, dir, 1)
	// The digests of "abc" and of nothing are those published with the algorithm
	// (FIPS 180-2, appendix B.1; of nothing: from memory).
	want := writtenLead + `
` + sumOf([]byte("board.dxf")) + `  board.dxf
e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  page-2.svg
ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  page.svg
`
	if got := contents(t, dir)[writtenName]; got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	boards(t, dir, 1)
	if got := contents(t, dir)[writtenName]; got != want {
		t.Errorf("written again: %s", got)
	}
}

// A single drawing leaves no list beside the user's own files.
func TestSingleFileHasNoList(t *testing.T) {
	dir := t.TempDir()
	put(t, filepath.Join(dir, "board-2.dxf"), "mine")
	if said := boards(t, dir, 1); len(said) != 1 {
		t.Errorf("said %q", said)
	}
	if found := contents(t, dir); len(found) != 2 || found["board-2.dxf"] != "mine" {
		t.Errorf("%v", found)
	}
}
