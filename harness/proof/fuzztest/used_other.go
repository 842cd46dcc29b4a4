//go:build !unix

package fuzztest

import "time"

var begun = time.Now()

// used is the time up to now, where the system does not count the processor's.
func used() time.Duration { return time.Since(begun) }
