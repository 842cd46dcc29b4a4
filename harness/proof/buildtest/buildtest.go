// Package buildtest reads designs and builds their circuits for tests; a test fails on a design
// that does not read.
package buildtest

import (
	"os"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Design reads a design.
func Design[T string | []byte](t testing.TB, src T) *design.Design {
	t.Helper()
	d, err := design.Read("design.yaml", []byte(src), library.Default())
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return d
}

// Circuit reads a design and builds its circuit.
func Circuit[T string | []byte](t testing.TB, src T) *circuit.Circuit {
	t.Helper()
	c, err := circuit.Build(Design(t, src))
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return c
}

// File is the text of a file.
func File(t testing.TB, path string) []byte {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return src
}
