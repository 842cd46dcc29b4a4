// Package reviewtest takes designs through the whole chain for tests; a test fails on a design
// that does not read.
package reviewtest

import (
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/buildtest"
)

// Of is the review of a design.
func Of[T string | []byte](t testing.TB, src T) *harness.Review {
	t.Helper()
	r, err := harness.Assess(buildtest.Design(t, src))
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return r
}

// Built is the review of a design of which the circuit alone is made: all that drawings need.
func Built[T string | []byte](t testing.TB, src T) *harness.Review {
	t.Helper()
	c := buildtest.Circuit(t, src)
	return &harness.Review{Design: c.Design, Circuit: c}
}

// File is the review of a design in a file.
func File(t testing.TB, path string) *harness.Review {
	t.Helper()
	return Of(t, buildtest.File(t, path))
}
