package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// outputs renders files into memory, on all processors, and puts them in place
// together; see commit for what happens when that is stopped half-way.
type outputs struct {
	dir   string
	files []*output
	// replaces are files that an earlier run may have left and this one does not
	// make: a stale sheet beside fresh ones would mislead. In NAME-*.EXT the star
	// stands for a number and nothing else.
	replaces []string
	progress *progress // told what is being waited for; nil = nobody

	// before is called ahead of every change on the disk with what is changed;
	// an error is taken as the error of the change. Tests fail and stop runs
	// here; nil = nothing.
	before func(what string) error
}

// output is one file. What it holds is known when it is rendered.
type output struct {
	name     string
	rendered chan struct{} // closed at the end
	data     []byte
	err      error
}

func newOutputs(dir string) *outputs {
	return &outputs{dir: dir}
}

// renderers are as many files as are rendered at once: rendering needs nothing
// but its processor.
var renderers = make(chan struct{}, runtime.GOMAXPROCS(0))

// add begins to render one file. Whatever write reads must stay as it is until
// the files are committed. A long file is best added early.
func (o *outputs) add(name string, write func(*bytes.Buffer) error) {
	f := &output{name: name, rendered: make(chan struct{})}
	o.files = append(o.files, f)
	go func() {
		renderers <- struct{}{}
		defer func() { <-renderers }()
		defer close(f.rendered)
		f.render(write)
	}()
}

func (f *output) render(write func(*bytes.Buffer) error) {
	if f.name == "." || f.name != filepath.Base(f.name) || !filepath.IsLocal(f.name) {
		f.err = fmt.Errorf("%q is no plain file name", f.name)
		return
	}
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		f.err = fmt.Errorf("%s: %w", f.name, err)
		return
	}
	f.data = buf.Bytes()
}

// finish waits for all files and gives the first error in their order.
func (o *outputs) finish() error {
	for _, f := range o.files {
		if o.progress != nil {
			o.progress.step(f.name)
		}
		<-f.rendered
		if f.err != nil {
			return f.err
		}
	}
	return nil
}

// stale lists the replaced files that are there and are not made now.
func (o *outputs) stale() ([]string, error) {
	if len(o.replaces) == 0 {
		return nil, nil
	}
	entries, err := os.ReadDir(o.dir)
	if err != nil {
		return nil, err
	}
	var list []string
	for _, e := range entries {
		made := slices.ContainsFunc(o.files, func(f *output) bool { return f.name == e.Name() })
		if !made && e.Type().IsRegular() && o.isReplaced(e.Name()) {
			list = append(list, e.Name())
		}
	}
	return list, nil
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

// writeFile puts one file in place, whole or not at all. A link is followed, so
// that it stays one; what is no file, such as /dev/stdout, is written to.
func writeFile(path string, write func(*bytes.Buffer) error) error {
	if info, err := os.Stat(path); err == nil {
		if info.Mode()&(fs.ModeDevice|fs.ModeNamedPipe|fs.ModeSocket) != 0 {
			return writeThrough(path, write)
		}
		if path, err = filepath.EvalSymlinks(path); err != nil {
			return outside{err}
		}
	}
	o := newOutputs(filepath.Dir(path))
	o.add(filepath.Base(path), write)
	return o.commit()
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
