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
	return nil
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
