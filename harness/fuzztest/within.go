// Package fuzztest holds fuzz targets to a time for each input. It is used by
// tests alone.
package fuzztest

import (
	"flag"
	"testing"
	"time"
)

// limit is what one input may take: a person who waits longer takes the
// program for hung.
const limit = time.Second

// Within runs what a target does with one input. While fuzzing, an input that
// takes more than a second each of three times fails; once may be the machine's
// fault. In an ordinary run of the seeds nothing is timed.
func Within(t *testing.T, work func()) {
	t.Helper()
	if !fuzzing() {
		work()
		return
	}
	if took := fastest(work); took > limit {
		t.Fatalf("took %v, at most %v is meant", took, limit)
	}
}

// fastest is the time of the first run within the limit, else of the best of
// three.
func fastest(work func()) time.Duration {
	var best time.Duration
	for i := range 3 {
		start := time.Now()
		work()
		took := time.Since(start)
		if took <= limit {
			return took
		}
		if i == 0 || took < best {
			best = took
		}
	}
	return best
}

func fuzzing() bool {
	f := flag.Lookup("test.fuzz")
	return f != nil && f.Value.String() != ""
}
