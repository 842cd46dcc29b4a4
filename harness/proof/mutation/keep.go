package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
)

// kept is a file with a line for each mutant that was killed, so that a long run
// may be taken up again. No file is kept for "".
type kept struct {
	file   string
	killed map[string]bool
}

// read reads the file, which need not be there yet.
func (k *kept) read() error {
	k.killed = map[string]bool{}
	if k.file == "" {
		return nil
	}
	text, err := os.ReadFile(k.file)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	for line := range strings.Lines(string(text)) {
		k.killed[strings.TrimSpace(line)] = true
	}
	return nil
}

// add notes the end of a mutant.
func (k *kept) add(m mutant, how string) error {
	if k.file == "" || how != killed || k.killed[m.String()] {
		return nil
	}
	k.killed[m.String()] = true
	f, err := os.OpenFile(k.file, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintln(f, m)
	return errors.Join(err, f.Close())
}
