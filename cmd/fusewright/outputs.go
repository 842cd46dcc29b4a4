package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// outputs gathers finished files in memory and puts them in place together:
// each is written to a temporary name beside its target and renamed only when
// all of them are whole, so that a failed run leaves the previous files.
type outputs struct {
	dir   string
	names []string
	data  map[string][]byte
	// replaces are patterns of files that an earlier run may have left and this
	// one does not make: a stale sheet beside fresh ones would mislead.
	replaces []string
}

func newOutputs(dir string) *outputs {
	return &outputs{dir: dir, data: map[string][]byte{}}
}

// add renders one file.
func (o *outputs) add(name string, write func(*bytes.Buffer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	o.names = append(o.names, name)
	o.data[name] = buf.Bytes()
	return nil
}

// commit puts all files in place.
func (o *outputs) commit() error {
	if err := os.MkdirAll(o.dir, 0o777); err != nil {
		return outside{err}
	}
	temps := make([]string, 0, len(o.names))
	defer func() {
		for _, t := range temps {
			os.Remove(t) // gone already after a rename
		}
	}()
	for _, name := range o.names {
		temp, err := writeTemp(o.dir, o.data[name])
		if temp != "" {
			temps = append(temps, temp)
		}
		if err != nil {
			return outside{fmt.Errorf("%s: %w", filepath.Join(o.dir, name), err)}
		}
	}
	for i, name := range o.names {
		if err := os.Rename(temps[i], filepath.Join(o.dir, name)); err != nil {
			return outside{err}
		}
	}
	return o.removeStale()
}

// removeStale removes what matches a replaced pattern and was not made now.
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

func (o *outputs) isReplaced(name string) bool {
	for _, pattern := range o.replaces {
		if ok, err := filepath.Match(pattern, name); ok && err == nil {
			return true
		}
	}
	return false
}

// writeTemp writes and syncs one temporary file.
func writeTemp(dir string, data []byte) (string, error) {
	f, err := os.CreateTemp(dir, ".fusewright-*")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Chmod(0o644), f.Sync(), f.Close())
	return f.Name(), err
}

// writeFile puts one file in place, whole or not at all.
func writeFile(path string, write func(*bytes.Buffer) error) error {
	o := newOutputs(filepath.Dir(path))
	if err := o.add(filepath.Base(path), write); err != nil {
		return err
	}
	return o.commit()
}
