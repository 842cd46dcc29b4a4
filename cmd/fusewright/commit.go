package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"sync"
	"syscall"
)

// The hidden folder beside the outputs while they are put in place, and what it
// holds. MkdirTemp puts a number for the star.
const (
	stagePattern = ".fusewright-*"
	freshFolder  = "new"      // the files to come, whole
	keptFolder   = "previous" // the files they replace
)

// errInterrupted ends a run that was interrupted before anything was replaced.
var errInterrupted = errors.New("interrupted; the previous files are untouched")

// commit puts all files in place together, or leaves the previous ones.
//
// First everything is made ready in a hidden folder beside the targets: the new
// files, the files they replace, and a journal that names both. Then the new
// files are renamed into place one by one, and the set is complete when the
// journal is removed. Whatever fails before that is taken back at once; a run
// that was killed, or lost its power, is taken back by the next run in the
// folder.
//
// Taken back, not finished: that is what an interrupt, a full disk and a failed
// rename do too, the killed run never said that its files are there, and the
// design may have changed since.
//
// One run at a time puts files into a folder; another one waits. Where the disk
// has no locks, runs do not wait and leave each other's hidden folders alone.
func (o *outputs) commit() error {
	if err := o.finish(); err != nil {
		return err
	}
	if o.progress != nil {
		o.progress.step("putting the files in place")
	}
	if err := os.MkdirAll(o.dir, 0o777); err != nil {
		return outside{plainPathError(err)}
	}
	lock, err := lockFolder(o.dir)
	if err != nil {
		return outside{err}
	}
	defer lock.release()
	// From here to the end an interrupt waits: it comes before the first rename
	// or after the last.
	held := make(chan os.Signal, 1)
	signal.Notify(held, os.Interrupt, syscall.SIGTERM)
	defer signal.Stop(held)
	if lock.held {
		if err := o.tidyUp(); err != nil {
			return outside{err}
		}
	}
	path, err := os.MkdirTemp(o.dir, stagePattern)
	if err != nil {
		return outside{fmt.Errorf("%s: %w", o.dir, withoutPath(err))}
	}
	s := &stage{dir: o.dir, path: path, before: o.before}
	if err := s.run(o, held); err != nil {
		return outside{err}
	}
	return nil
}

// stage is a hidden folder of one set of files.
type stage struct {
	dir, path string
	before    func(what string) error
	journal   *journal // nil while nothing is replaced, and when all is done
}

// run makes the set ready, puts it in place, and removes the hidden folder, unless
// it is still needed to take the set back.
func (s *stage) run(o *outputs, held <-chan os.Signal) error {
	ready, err := s.prepare(o)
	if err == nil {
		select {
		case <-held:
			err = errInterrupted
		default:
			err = s.replace(ready)
		}
	}
	if err != nil && s.journal != nil {
		if failed := s.takeBack(); failed != nil {
			return fmt.Errorf("%w; the previous files are in %s, and the next run here takes them back: %w", err, s.path, failed)
		}
	}
	s.remove() // without a journal it holds nothing that counts; else the next run removes it
	return err
}

// prepare writes the new files and keeps those that they replace.
func (s *stage) prepare(o *outputs) (*journal, error) {
	set, err := o.planned()
	if err != nil {
		return nil, err
	}
	were, err := s.previous(set.files)
	if err != nil {
		return nil, err
	}
	for _, folder := range []string{freshFolder, keptFolder} {
		if err := s.change("make "+folder, func() error { return os.Mkdir(s.in(folder, ""), 0o777) }); err != nil {
			return nil, err
		}
	}
	ready := &journal{Format: journalFormat, Removed: set.removed}
	for i, f := range set.files {
		lost := false
		err := s.change("write "+f.name, func() (err error) {
			lost, err = writeLike(s.in(freshFolder, f.name), f.data, were[i])
			return err
		})
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.target(f.name), withoutPath(err))
		}
		o.warnings = append(o.warnings, were[i].warnings(s.target(f.name), lost)...)
		ready.Files = append(ready.Files, journalFile{Name: f.name, Sum: sumOf(f.data)})
	}
	if err := s.change("sync files", func() error { return syncFiles(s.in(freshFolder, ""), set.files) }); err != nil {
		return nil, err
	}
	if ready.single() {
		return ready, s.syncAll(s.in(freshFolder, ""))
	}
	if err := s.keepAll(ready); err != nil {
		return nil, err
	}
	return ready, s.syncAll(s.in(freshFolder, ""), s.in(keptFolder, ""), s.path, s.dir)
}

// previous looks at what will be replaced, and says of all that may not be.
func (s *stage) previous(files []*output) ([]previous, error) {
	were, refused := make([]previous, len(files)), make([]error, len(files))
	for i, f := range files {
		were[i], refused[i] = previousAt(s.target(f.name))
	}
	return were, errors.Join(refused...)
}

// keepAll keeps the files that will be replaced or removed.
func (s *stage) keepAll(ready *journal) error {
	keep := func(name string) (bool, error) {
		target, kept := s.target(name), s.in(keptFolder, name)
		if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
			return false, nil
		}
		return true, s.change("keep "+name, func() error { return linkOrCopy(target, kept) })
	}
	for i, f := range ready.Files {
		var err error
		if ready.Files[i].Was, err = keep(f.Name); err != nil {
			return err
		}
	}
	for _, name := range ready.Removed {
		if _, err := keep(name); err != nil {
			return err
		}
	}
	return nil
}

// replace puts the files in place. A set of more than one has its journal
// meanwhile; one rename is whole by itself.
func (s *stage) replace(ready *journal) error {
	if !ready.single() {
		if err := s.writeJournal(ready); err != nil {
			return err
		}
	}
	for _, f := range ready.Files {
		from, to := s.in(freshFolder, f.Name), s.target(f.Name)
		if err := s.change("rename "+f.Name, func() error { return os.Rename(from, to) }); err != nil {
			return err
		}
	}
	for _, name := range ready.Removed {
		if err := s.change("remove "+name, func() error { return os.Remove(s.target(name)) }); err != nil {
			return err
		}
	}
	if err := s.syncAll(s.dir); err != nil || s.journal == nil {
		return err
	}
	return s.removeJournal()
}

// change makes one change on the disk.
func (s *stage) change(what string, do func() error) error {
	if s.before != nil {
		if err := s.before(what); err != nil {
			return err
		}
	}
	return do()
}

func (s *stage) target(name string) string     { return filepath.Join(s.dir, name) }
func (s *stage) in(folder, name string) string { return filepath.Join(s.path, folder, name) }

// syncAll brings the names in folders down to the disk.
func (s *stage) syncAll(folders ...string) error {
	for _, f := range folders {
		if err := s.change("sync "+filepath.Base(f), func() error { return syncFolder(f) }); err != nil {
			return err
		}
	}
	return nil
}

// writeNew writes a new file. Fewer permissions come of the user's mask.
func writeNew(path string, data []byte, mode fs.FileMode) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// syncFile brings a file down to the disk.
func syncFile(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// syncFiles brings files down to the disk all at once: a disk gathers what is
// asked of it together.
func syncFiles(dir string, files []*output) error {
	failed := make([]error, len(files))
	var group sync.WaitGroup
	for i, f := range files {
		group.Go(func() { failed[i] = syncFile(filepath.Join(dir, f.name)) })
	}
	group.Wait()
	return errors.Join(failed...)
}

// linkOrCopy keeps a file under a second name; not every disk can link.
func linkOrCopy(from, to string) error {
	if os.Link(from, to) == nil {
		return nil
	}
	was, err := previousAt(from)
	if err != nil {
		return err
	}
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	_, err = writeLike(to, data, was)
	return errors.Join(err, syncFile(to))
}

// syncFolder brings the names in a folder down to the disk. Windows has no such
// thing for folders, and some disks refuse it: then the order of names is theirs.
func syncFolder(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, f.Close())
}

// withoutPath drops the path of a staged file from an error: its target is named.
func withoutPath(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
