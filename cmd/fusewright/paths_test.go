package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The design format has no paths, and what reads and works on designs could not
// follow one: outside the commands only the library's own files (also by the
// program that prepares them), the corpus of planted faults and the drawing
// engine's cache are opened, and nothing speaks to a network. The check of pinned
// numbers and the measure against the trade are commands of their own, which no
// package can link.
func TestOnlyCommandsTouchFiles(t *testing.T) {
	const root = "../.."
	allowed := []string{"library/load.go", "library/prepare/", "harness/proof/corpus", "harness/proof/mutation", "harness/proof/trade",
		"render/placement/enginecache"}
	outside := []string{"os", "os/exec", "net", "net/http", "syscall", "plugin"}
	files := 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		under, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		under = filepath.ToSlash(under)
		if d.IsDir() && (under == "cmd" || strings.HasPrefix(under, ".") && under != "." || d.Name() == "testdata") {
			return fs.SkipDir
		}
		test := strings.HasSuffix(under, "_test.go") || strings.HasSuffix(filepath.Dir(under), "test")
		if d.IsDir() || test || filepath.Ext(under) != ".go" {
			return nil
		}
		files++
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			name, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			may := slices.ContainsFunc(allowed, func(a string) bool { return strings.HasPrefix(under, a) })
			if slices.Contains(outside, name) && !may {
				t.Errorf("%s imports %s", under, name)
			}
		}
		return nil
	})
	if err != nil || files < 100 {
		t.Errorf("%d files, %v", files, err)
	}
}
