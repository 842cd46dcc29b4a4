package document_test

import (
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/study/ride"
	"fusewright/library"
	"fusewright/render/document"
	"fusewright/render/scene"
)

// TestRidePages: one page a ride for the demo design, with every leg in the
// table, the outcome in words, and all text inside the margins.
func TestRidePages(t *testing.T) {
	src, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("fen-runner.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	var results []*ride.Result
	for _, each := range d.Rides {
		result, err := ride.Simulate(r.Circuit, each, ride.Options{})
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, result)
	}
	sheets, err := document.Rides(r, results)
	if err != nil {
		t.Fatal(err)
	}
	if len(sheets) != len(results) {
		t.Fatalf("%d pages for %d rides", len(sheets), len(results))
	}
	for i, s := range sheets {
		text := textOf(t, s)
		for _, want := range []string{results[i].Ride.Name, "Charge, %", "Posts, V", "Current, A", "tart reserve", "Isolate"} {
			if !strings.Contains(text, want) {
				t.Errorf("page %d has no %q", i+1, want)
			}
		}
	}
}

// textOf is all text of a sheet; it fails on text outside the page.
func textOf(t *testing.T, s *scene.Sheet) string {
	t.Helper()
	var b strings.Builder
	for _, item := range s.Items {
		if item.Text == nil {
			continue
		}
		at := item.Text.At
		if at.X < 10 || at.X > s.WidthMM-10 || at.Y < 10 || at.Y > s.HeightMM-10 {
			t.Errorf("%q at %.1f, %.1f is outside the margins", item.Text.String, at.X, at.Y)
		}
		b.WriteString(item.Text.String + "\n")
	}
	return b.String()
}
