package library

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The prepared form is what the YAML files say; they are the source of truth.
func TestPreparedIsTheYAML(t *testing.T) {
	read, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(read, Default()); diff != "" {
		t.Errorf("prepared.go is stale, run `go generate ./library` (- YAML, + prepared):\n%.2000s", diff)
	}
	// Rows that stand in several lists are one row there as here.
	if a, b := distinctSizes(read), distinctSizes(Default()); a != b {
		t.Errorf("%d different wire sizes in the prepared form, %d in the YAML", b, a)
	}
}

func distinctSizes(l *Library) int {
	seen := map[*WireSize]bool{}
	for _, w := range l.WireTypes {
		for _, s := range w.Sizes {
			seen[s] = true
		}
	}
	return len(seen)
}

func BenchmarkPrepared(b *testing.B) {
	for b.Loop() {
		prepared()
	}
}
