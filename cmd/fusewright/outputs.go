package main

import (
	"bytes"
	"fmt"
	"runtime"
)

// outputs renders files into memory, on all processors, and puts them in place
// together; see commit for what happens when that is stopped half-way.
type outputs struct {
	dir   string
	files []*output
	// replaces are files that an earlier run may have left and this one does not
	// make: a stale sheet beside fresh ones would mislead. In NAME-*.EXT the star
	// stands for a number and nothing else. Only what the folder's list says was
	// written by an earlier run goes.
	replaces []string
	progress *progress // told what is being waited for; nil = nobody
	// warnings are what the user should know of files that were there before;
	// commit fills them.
	warnings []string

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
	if !isPlainName(f.name) {
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
