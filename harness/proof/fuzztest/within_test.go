package fuzztest

import (
	"testing"
	"time"
)

// Idle time does not count, work does, and what is slow once only is let pass.
func TestFastest(t *testing.T) {
	runs := 0
	if took := Fastest(func() { runs++ }); took > Limit || runs != 1 {
		t.Errorf("%v in %d runs", took, runs)
	}
	before := used()
	for end := time.Now().Add(20 * time.Millisecond); time.Now().Before(end); {
	}
	if used() == before {
		t.Error("work takes no time")
	}
	if fuzzing() {
		t.Error("an ordinary run counts as fuzzing")
	}
}
