package main

import (
	"os"
	"path/filepath"
	"sync"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
)

// demos are the designs that the project shows, by name.
var demos, _ = filepath.Glob("../../designs/*.yaml")

// review takes a design through all stages.
func review(t testing.TB, src []byte) *harness.Review {
	t.Helper()
	d, err := design.Read("design.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// reviewOf takes a file with a design through all stages, for a test of its own.
func reviewOf(t testing.TB, file string) *harness.Review {
	t.Helper()
	return review(t, sourceOf(t, file))
}

func sourceOf(t testing.TB, file string) []byte {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// papersOf draws all papers.
func papersOf(t testing.TB, r *harness.Review) []drawn {
	t.Helper()
	all, err := drawAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

var designsDrawn sync.Map // file -> func() designDrawn

type designDrawn struct {
	review *harness.Review
	papers []drawn
}

// drawnOf is a design file with all its papers, drawn once for all tests, which only read it.
func drawnOf(t testing.TB, file string) (*harness.Review, []drawn) {
	t.Helper()
	once, _ := designsDrawn.LoadOrStore(file, sync.OnceValue(func() designDrawn {
		r := reviewOf(t, file)
		return designDrawn{r, papersOf(t, r)}
	}))
	d := once.(func() designDrawn)()
	if d.review == nil {
		t.Fatalf("%s could not be drawn", file)
	}
	return d.review, d.papers
}
