//go:build unix

package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// untidy is a design that fmt changes.
func untidy(t *testing.T, path string, mode fs.FileMode) {
	t.Helper()
	src, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src = bytes.Replace(src, []byte("revision: B"), []byte("revision:   B"), 1)
	if err := os.WriteFile(path, src, mode); err != nil {
		t.Fatal(err)
	}
}

// A design that is tidied keeps its permissions, and a link to it stays a link.
func TestRewritingKeepsLinksAndPermissions(t *testing.T) {
	dir := t.TempDir()
	file, link := filepath.Join(dir, "real.yaml"), filepath.Join(t.TempDir(), "link.yaml")
	untidy(t, file, 0o640)
	if err := os.Symlink(file, link); err != nil {
		t.Fatal(err)
	}
	printedBy(t, "fmt", link)
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info.Mode(), err)
	}
	data, err := os.ReadFile(file)
	if err != nil || !strings.Contains(string(data), "revision: B\n") {
		t.Errorf("the file that the link leads to is not tidied: %v", err)
	}
	if info, err = os.Stat(file); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("permissions %v, %v", info.Mode(), err)
	}
}

// What is no file is written to, not replaced.
func TestWritingToAPipe(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	path := filepath.Join("/dev/fd", strconv.Itoa(int(w.Fd())))
	if _, err := os.Stat(path); err != nil {
		t.Skipf("no /dev/fd here: %v", err)
	}
	err = writeFile(path, func(b *bytes.Buffer) error { b.WriteString("text"); return nil })
	w.Close()
	var got bytes.Buffer
	if _, failed := got.ReadFrom(r); err != nil || failed != nil || got.String() != "text" {
		t.Errorf("%q, %v, %v", got.String(), err, failed)
	}
}
