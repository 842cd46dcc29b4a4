// Package fuzztest holds fuzz targets to a time for each input. It is used by
// tests alone.
package fuzztest

import (
	"flag"
	"math"
	"testing"
	"time"
)

// Limit is what one small input may take: a person who waits longer takes the
// program for hung.
const Limit = time.Second

// tries at most: on a machine with other work one measurement proves nothing.
const tries = 5

// Within runs what a target does with one input. While fuzzing, an input that
// takes more than the limit each time fails. In an ordinary run of the seeds
// nothing is timed.
func Within(t *testing.T, work func()) {
	t.Helper()
	if !fuzzing() {
		work()
		return
	}
	if took := Fastest(work); took > Limit {
		t.Fatalf("took %v, at most %v is meant", took, Limit)
	}
}

// Fastest is the time of the first run within the limit, else of the fastest of
// some.
func Fastest(work func()) time.Duration {
	best := time.Duration(math.MaxInt64)
	for range tries {
		start := time.Now()
		work()
		if best = min(best, time.Since(start)); best <= Limit {
			break
		}
	}
	return best
}

func fuzzing() bool {
	f := flag.Lookup("test.fuzz")
	return f != nil && f.Value.String() != ""
}
