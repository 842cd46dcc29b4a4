package main

import (
	"errors"
	"fmt"
	"time"
)

// How long a run waits for another one that is putting files into the same
// folder, and how often it looks.
const (
	lockPatience = 10 * time.Second
	lockLook     = 20 * time.Millisecond
)

// errLocked tells that another run has the folder.
var errLocked = errors.New("another run is putting files there")

// folderLock is a lock on a folder. It may be nothing: some disks have no locks.
type folderLock struct {
	release func()
	held    bool
}

// lockFolder waits for the folder and locks it until release is called, or until
// the process ends.
func lockFolder(dir string) (folderLock, error) {
	for since := time.Now(); ; time.Sleep(lockLook) {
		handle, err := tryLock(dir)
		switch {
		case err == nil && handle == nil:
			return folderLock{func() {}, false}, nil
		case err == nil:
			return folderLock{func() { handle.Close() }, true}, nil
		case !errors.Is(err, errLocked):
			return folderLock{}, plainPathError(err)
		case time.Since(since) > lockPatience:
			return folderLock{}, fmt.Errorf("%s: %w", dir, err)
		}
	}
}
