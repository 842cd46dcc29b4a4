package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// writeFile puts one file in place, whole or not at all. A link is followed, so
// that it stays one; what is no file, such as /dev/stdout, is written to.
func writeFile(s *streams, path string, write func(*bytes.Buffer) error) error {
	if info, err := os.Stat(path); err == nil && info.Mode()&(fs.ModeDevice|fs.ModeNamedPipe|fs.ModeSocket) != 0 {
		return writeThrough(path, write)
	}
	o, name, err := outputsAt(path)
	if err != nil {
		return err
	}
	o.add(name, write)
	return s.commit(o)
}

// outputsAt are outputs of the one file that a path, maybe a link, leads to, and
// the name of the file.
func outputsAt(path string) (*outputs, string, error) {
	path, err := behindLink(path)
	if err != nil {
		return nil, "", outside{err}
	}
	return newOutputs(filepath.Dir(path)), filepath.Base(path), nil
}

// commit puts files in place and passes on what the user should know of those
// that were there before.
func (s *streams) commit(o *outputs) error {
	if err := o.commit(); err != nil {
		return err
	}
	for _, text := range o.warnings {
		fmt.Fprintln(s.err, harmless("fusewright: warning: "+text))
	}
	return nil
}

// commitApart is commit for files that are made from others, none of which may
// take the place of what was read.
func (s *streams) commitApart(o *outputs) error {
	for _, f := range o.files {
		for _, in := range s.read {
			if sameFile(in, filepath.Join(o.dir, f.name)) {
				return fmt.Errorf("%s is read by this command and would be written over (expected another folder to write to)", in)
			}
		}
	}
	return s.commit(o)
}

// behindLink is the file that a symbolic link leads to, over any number of
// links; a path that is no link is given back.
func behindLink(path string) (string, error) {
	if !isLink(path) {
		return path, nil // whatever is wrong with it shows when it is written
	}
	_, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		leads, _ := os.Readlink(path) // for the message alone
		return "", fmt.Errorf("%s is a link to %s, which is not there (expected a file, or a link to one)", path, leads)
	case errors.Is(err, syscall.ELOOP):
		return "", fmt.Errorf("%s is a link that leads back to itself (expected a file, or a link to one)", path)
	case err != nil:
		return "", plainPathError(err)
	}
	return filepath.EvalSymlinks(path)
}

func isLink(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.Mode()&fs.ModeSymlink != 0
}

// writeThrough writes to a device or a pipe.
func writeThrough(path string, write func(*bytes.Buffer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return outside{plainPathError(err)}
	}
	_, err = f.Write(buf.Bytes())
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return outside{plainPathError(err)}
	}
	return nil
}
