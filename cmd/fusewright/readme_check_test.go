package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestReadmeCheck keeps the lines of check shown in the README those of the program.
func TestReadmeCheck(t *testing.T) {
	page, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(page), "```\n2  ")
	shown, _, ok := strings.Cut("2  "+rest, "```")
	if !ok || strings.Count(shown, "\n") < 5 {
		t.Fatal("README.md shows no lines of check")
	}
	var out, errs bytes.Buffer
	run([]string{"check", filepath.Join("..", "..", "designs", "reed-skiff.yaml")}, nil, &out, &errs)
	lines := map[string]bool{}
	for _, l := range strings.Split(out.String(), "\n") {
		lines[l] = true
	}
	for _, l := range strings.Split(strings.TrimSuffix(shown, "\n"), "\n") {
		if !lines[l] {
			t.Errorf("README.md shows %q, which check does not print", l)
		}
	}
}
