// Package referencetest finds the outside programs that tests compare with, such
// as a circuit simulator or a reader of PDF. Only tests import it.
//
//	program := referencetest.Program(t, "ngspice")
package referencetest

import (
	"os"
	"os/exec"
	"testing"
)

// Required tells whether every reference program must be there: the environment
// variable FUSEWRIGHT_REFERENCE is "required". Tests that can be more thorough
// then are.
func Required() bool { return os.Getenv("FUSEWRIGHT_REFERENCE") == "required" }

// Program gives the path of a program. Without it the test is skipped, or fails
// when reference programs are required.
func Program(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	switch {
	case err == nil:
		return path
	case Required():
		t.Fatalf("%s is not installed, and reference programs are required", name)
	default:
		t.Skipf("%s is not installed", name)
	}
	return ""
}
