package cranking_test

import (
	"testing"

	"fusewright/harness/study/cranking"
)

// A starter turns with 1 V at the posts, and not below it.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		postsV float64
		want   bool
	}{{0.95, false}, {0.999, false}, {1, true}, {1.05, true}} {
		if got := (cranking.Case{PostsV: c.postsV}).Turns(); got != c.want {
			t.Errorf("%g V: turns %t, want %t", c.postsV, got, c.want)
		}
	}
}
