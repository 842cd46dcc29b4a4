package main

import (
	"bytes"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// smallDisk is the program where no file can grow beyond 40 kB: writing stops
// half-way in a file, as on a full disk.
func smallDisk() {
	signal.Ignore(syscall.SIGXFSZ)
	limit := syscall.Rlimit{Cur: 40_000, Max: 40_000}
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit); err != nil {
		panic(err)
	}
	main()
}

func init() { commands["fusewright-small-disk"] = smallDisk }

func TestFullDiskLeavesThePreviousFiles(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	args := []string{"build", "../../designs/fen-runner.yaml", "-o", dir}
	var stderr bytes.Buffer
	if code := run(args, strings.NewReader(""), &bytes.Buffer{}, &stderr); code != exitClean {
		t.Fatalf("exit code %d, %s", code, &stderr)
	}
	before := contents(t, dir)
	out, err := asCommand(t, "fusewright-small-disk", args...).CombinedOutput()
	exit, ok := err.(*exec.ExitError)
	if !ok || exit.ExitCode() != exitFailure || !strings.Contains(string(out), "file too large") {
		t.Errorf("%v: %s", err, out)
	}
	if diff := cmp.Diff(before, contents(t, dir)); diff != "" {
		t.Errorf("the previous files changed: %.400s", diff)
	}
}

// What is printed into a full disk is told too.
func TestPrintingToAFullDisk(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skipf("no /dev/full here: %v", err)
	}
	defer full.Close()
	for _, line := range []string{"check", "cut", "bom", "budget", "netlist", "export --to json"} {
		words := strings.Fields(line)
		args := append([]string{words[0], "../../designs/fen-runner.yaml"}, words[1:]...)
		var stderr bytes.Buffer
		code := run(args, strings.NewReader(""), full, &stderr)
		if code != exitFailure || !strings.Contains(stderr.String(), "no space left") {
			t.Errorf("%s: exit code %d, %s", line, code, &stderr)
		}
	}
}
