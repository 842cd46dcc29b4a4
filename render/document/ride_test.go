package document_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/study/ride"
	"fusewright/render/document"
	"fusewright/render/scene"
)

// TestRidePages: fewer pages than rides for the demo design, with every leg in the
// table, the outcome in words, and all text inside the margins.
func TestRidePages(t *testing.T) {
	r := reviewtest.File(t, "../../designs/fen-runner.yaml")
	var results []*ride.Result
	for _, each := range r.Design.Rides {
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
	if len(sheets) >= len(results) {
		t.Fatalf("%d pages for %d rides: two go on a page", len(sheets), len(results))
	}
	text := ""
	for _, s := range sheets {
		text += textOf(t, s)
	}
	for _, result := range results {
		if !strings.Contains(text, "Ride: "+result.Ride.Name) {
			t.Errorf("no ride %s", result.Ride.Name)
		}
	}
	for _, want := range []string{"Charge, %", "Posts, V", "Current, A"} {
		if got := strings.Count(text, want); got != len(results) {
			t.Errorf("%q stands %d times for %d rides", want, got, len(results))
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
