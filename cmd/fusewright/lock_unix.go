//go:build unix

package main

import (
	"errors"
	"os"
	"syscall"
)

// tryLock locks a folder until the handle is closed, which the system does when
// the process ends, however it ends. Nil without an error: the disk has no locks.
func tryLock(dir string) (*os.File, error) {
	f, err := os.Open(dir)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	switch {
	case err == nil:
		return f, nil
	case errors.Is(err, syscall.EWOULDBLOCK), errors.Is(err, syscall.EINTR):
		err = errLocked
	default:
		err = nil
	}
	f.Close()
	return nil, err
}
