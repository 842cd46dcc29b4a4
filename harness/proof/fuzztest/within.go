// Package fuzztest holds fuzz targets and mutants to a time for each input. It
// is used by tests alone.
package fuzztest

import (
	"flag"
	"math"
	"testing"
	"time"
)

// Limit is the processor time that one small input may take: a person who waits
// longer takes the program for hung.
const Limit = time.Second

// tries at most: the first may have paid for something that is made once.
const tries = 3

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

// Fastest is the processor time of the first run within the limit, else of the
// fastest of some. The process must do nothing else meanwhile.
func Fastest(work func()) time.Duration {
	best := time.Duration(math.MaxInt64)
	for range tries {
		start := used()
		work()
		if best = min(best, used()-start); best <= Limit {
			break
		}
	}
	return best
}

func fuzzing() bool {
	f := flag.Lookup("test.fuzz")
	return f != nil && f.Value.String() != ""
}
