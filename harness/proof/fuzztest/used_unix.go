//go:build unix

package fuzztest

import (
	"syscall"
	"time"
)

// used is the processor time of this process up to now: what other work on the
// machine takes does not count.
func used() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0 // never on a system that has it
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
