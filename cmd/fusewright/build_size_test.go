package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/synth"
	"fusewright/library"
)

// TestTooManyWires: a harness of more wires than every paper can be made of is
// refused with both figures, nothing is written, and check takes it.
func TestTooManyWires(t *testing.T) {
	dir := t.TempDir()
	file, out := filepath.Join(dir, "big.yaml"), filepath.Join(dir, "out")
	if err := os.WriteFile(file, synth.YAML(mostWires+1, 1), 0o666); err != nil {
		t.Fatal(err)
	}
	var stderr bytes.Buffer
	code := run([]string{"build", file, "-o", out}, strings.NewReader(""), io.Discard, &stderr)
	want := fmt.Sprintf("%d wires (expected at most %d", mostWires+1, mostWires)
	if code != exitBadInput || !strings.Contains(stderr.String(), want) {
		t.Errorf("exit code %d, %q (expected %d, %q)", code, &stderr, exitBadInput, want)
	}
	if _, err := os.Stat(out); err == nil {
		t.Error("the folder was made")
	}
	if code := run([]string{"check", "-q", "--fail-on", "never", file}, strings.NewReader(""), io.Discard, io.Discard); code != exitClean {
		t.Errorf("check ends with %d", code)
	}
}

// TestWireCount: the count that the refusal rests on is that of the circuit.
func TestWireCount(t *testing.T) {
	sources := [][]byte{synth.YAML(3, 1), synth.YAML(200, 2)}
	for seed := range int64(5) {
		sources = append(sources, synth.Random(seed))
	}
	for i, src := range sources {
		d, err := design.Read("design.yaml", src, library.Default())
		if err != nil {
			t.Fatal(err)
		}
		if got, want := d.WireCount(), len(review(t, src).Circuit.Wires); got != want {
			t.Errorf("design %d: %d wires, the circuit has %d", i, got, want)
		}
	}
}
