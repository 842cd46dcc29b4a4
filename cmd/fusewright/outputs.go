package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
)

// outputs gathers finished files in memory and puts them in place together:
// all are written to a hidden folder beside their targets first, and only when
// every one is whole are they renamed into place, in the order they were added.
//
// A full disk, a write error or an interrupt before the first rename leaves the
// previous files as they were; a rename that fails takes back those before it.
// A process killed between two renames leaves every file whole, the first ones
// new and the rest old, and the hidden folder as a sign; the next run puts it
// right.
type outputs struct {
	dir   string
	names []string
	data  map[string][]byte
	// replaces are files that an earlier run may have left and this one does not
	// make: a stale sheet beside fresh ones would mislead. In NAME-*.EXT the star
	// stands for a number and nothing else.
	replaces []string
	progress *progress // told what is being rendered; nil = nobody

	// The two steps that can fail half-way, so that tests can make them fail.
	write  func(path string, data []byte) error
	rename func(from, to string) error
}

func newOutputs(dir string) *outputs {
	return &outputs{dir: dir, data: map[string][]byte{}, write: writeSynced, rename: os.Rename}
}

// add renders one file.
func (o *outputs) add(name string, write func(*bytes.Buffer) error) error {
	if o.progress != nil {
		o.progress.step(name)
	}
	if name == "." || name != filepath.Base(name) || !filepath.IsLocal(name) {
		return fmt.Errorf("%q is no plain file name", name)
	}
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	o.names = append(o.names, name)
	o.data[name] = buf.Bytes()
	return nil
}

// errInterrupted ends a run that was interrupted before anything was replaced.
var errInterrupted = errors.New("interrupted; the previous files are untouched")

// commit puts all files in place.
func (o *outputs) commit() error {
	// From here to the end an interrupt waits: it comes before the first rename
	// or after the last.
	held := make(chan os.Signal, 1)
	signal.Notify(held, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(held)
	if err := os.MkdirAll(o.dir, 0o777); err != nil {
		return outside{err}
	}
	stage, err := os.MkdirTemp(o.dir, ".fusewright-*")
	if err != nil {
		return outside{err}
	}
	defer os.RemoveAll(stage)
	fresh, kept := filepath.Join(stage, "new"), filepath.Join(stage, "previous")
	if err := errors.Join(os.Mkdir(fresh, 0o777), os.Mkdir(kept, 0o777)); err != nil {
		return outside{err}
	}
	for _, name := range o.names {
		if err := o.write(filepath.Join(fresh, name), o.data[name]); err != nil {
			return outside{fmt.Errorf("%s: %w", filepath.Join(o.dir, name), withoutPath(err))}
		}
	}
	select {
	case <-held:
		return outside{errInterrupted}
	default:
	}
	if err := o.replace(fresh, kept); err != nil {
		return outside{err}
	}
	return o.removeStale()
}

// replace renames the staged files into place, or takes back what it did. The
// files it replaces are kept meanwhile, where the disk can link.
func (o *outputs) replace(fresh, kept string) error {
	var undo []func() error
	for _, name := range o.names {
		target := filepath.Join(o.dir, name)
		back, err := keep(target, filepath.Join(kept, name))
		if err == nil {
			err = o.rename(filepath.Join(fresh, name), target)
		}
		if err != nil {
			return errors.Join(err, undoAll(undo))
		}
		undo = append(undo, back)
	}
	return nil
}

// keep links the file at a target so that it can be put back.
func keep(target, kept string) (back func() error, err error) {
	info, err := os.Lstat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return func() error { return os.Remove(target) }, nil
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, fmt.Errorf("%s is a folder", target)
	}
	if os.Link(target, kept) != nil { // not every disk can
		return func() error { return nil }, nil // the new file stays: it is whole
	}
	return func() error { return os.Rename(kept, target) }, nil
}

// undoAll takes steps back, the last one first.
func undoAll(steps []func() error) error {
	var failed []error
	for _, step := range slices.Backward(steps) {
		failed = append(failed, step())
	}
	return errors.Join(failed...)
}

// removeStale removes replaced files that were not made now.
func (o *outputs) removeStale() error {
	entries, err := os.ReadDir(o.dir)
	if err != nil {
		return outside{err}
	}
	for _, e := range entries {
		if _, made := o.data[e.Name()]; made || !o.isReplaced(e.Name()) {
			continue
		}
		if err := os.Remove(filepath.Join(o.dir, e.Name())); err != nil {
			return outside{err}
		}
	}
	return nil
}

func (o *outputs) isReplaced(file string) bool {
	return slices.ContainsFunc(o.replaces, func(pattern string) bool { return replacedBy(pattern, file) })
}

// replacedBy tells whether a file is the one named, or one of those numbered.
func replacedBy(pattern, file string) bool {
	at := strings.LastIndex(pattern, "-*.")
	if at < 0 {
		return file == pattern
	}
	number, begins := strings.CutPrefix(file, pattern[:at+1])
	number, ends := strings.CutSuffix(number, pattern[at+2:])
	return begins && ends && number != "" && strings.Trim(number, "0123456789") == ""
}

// writeSynced writes a new file down to the disk.
func writeSynced(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Sync(), f.Close())
}

// withoutPath drops the path of a staged file from an error: its target is named.
func withoutPath(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}

// writeFile puts one file in place, whole or not at all.
func writeFile(path string, write func(*bytes.Buffer) error) error {
	o := newOutputs(filepath.Dir(path))
	if err := o.add(filepath.Base(path), write); err != nil {
		return err
	}
	return o.commit()
}
