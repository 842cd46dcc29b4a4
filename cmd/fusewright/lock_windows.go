package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"
)

// Values of the Windows interface that package syscall does not name.
const (
	accessDelete      = 0x00010000 // DELETE
	flagDeleteOnClose = 0x04000000 // FILE_FLAG_DELETE_ON_CLOSE
	flagNoLinks       = 0x00200000 // FILE_FLAG_OPEN_REPARSE_POINT: a link is not followed
	errorSharing      = syscall.Errno(32)
)

// tryLock locks a folder until the handle is closed, which the system does when
// the process ends, however it ends: a file that nobody else may open meanwhile,
// and that goes with its handle.
func tryLock(dir string) (*os.File, error) {
	path := filepath.Join(dir, ".fusewright-lock")
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	const shareWithNobody = 0
	h, err := syscall.CreateFile(name, syscall.GENERIC_WRITE|accessDelete, shareWithNobody, nil,
		syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_HIDDEN|flagDeleteOnClose|flagNoLinks, 0)
	switch {
	case err == nil:
		return os.NewFile(uintptr(h), path), nil
	case errors.Is(err, errorSharing), errors.Is(err, syscall.ERROR_ACCESS_DENIED):
		return nil, fmt.Errorf("%w: %w", errLocked, err) // access is denied while the file is going
	}
	return nil, &os.PathError{Op: "lock", Path: path, Err: err}
}
