package main

import (
	"bytes"
	"errors"
	"io/fs"

	"fusewright/harness/workshop/bench/readings"
)

// kept is the text of the readings beside the design; nil when there are none.
func (f *followed) kept() ([]byte, error) {
	_, src, err := readInput(f.io, readings.Beside(f.arg.Design), readings.MaxBytes+1)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return src, err
}

// keep puts readings beside the design, whole, in place of those that were there.
func (f *followed) keep(text []byte) error {
	return writeFile(f.io, readings.Beside(f.arg.Design), func(b *bytes.Buffer) error { _, err := b.Write(text); return err })
}
