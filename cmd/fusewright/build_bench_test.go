package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/proof/synth"
)

// BenchmarkBuild makes every paper of made-up harnesses, from the text to the
// files on the disk, the graph engine warm.
func BenchmarkBuild(b *testing.B) {
	for _, wires := range []int{40, 1000} {
		b.Run(fmt.Sprintf("%d wires", wires), func(b *testing.B) {
			dir := b.TempDir()
			file := filepath.Join(dir, "synthetic.yaml")
			if err := os.WriteFile(file, synth.YAML(wires, 1), 0o666); err != nil {
				b.Fatal(err)
			}
			args := []string{"build", file, "-o", filepath.Join(dir, "out"), "--fail-on", "never"}
			for b.Loop() {
				var stderr bytes.Buffer
				if code := run(args, strings.NewReader(""), io.Discard, &stderr); code != exitClean {
					b.Fatalf("exit code %d: %s", code, &stderr)
				}
			}
		})
	}
}
