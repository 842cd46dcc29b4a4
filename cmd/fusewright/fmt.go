package main

import (
	"bytes"
	"fmt"

	"fusewright/harness/design/edit"
)

// fmtCmd brings a design's text into one form.
type fmtCmd struct {
	designArg
	Check  bool `help:"Change nothing: show what would change and end with exit code 1 if anything would."`
	Number bool `help:"Also write the labels of parts and wires into the design, so that they stay when it changes."`
}

// Run tidies the file, or shows how it would.
func (c *fmtCmd) Run(io *streams, cli *program) error {
	in, err := c.texts(io, cli)
	if err != nil {
		return err
	}
	in.note = nil // what it would say is what is mended here
	if _, err := in.read(); err != nil {
		return err
	}
	was := in.design.Data
	now, err := edit.Tidy(was)
	if err != nil {
		return err
	}
	if c.Number {
		if now, err = numbered(io, in, now); err != nil {
			return err
		}
	}
	show := func(text string) error {
		return printed(io, func(b *bytes.Buffer) error { b.WriteString(text); return nil })
	}
	switch {
	case c.Check && bytes.Equal(was, now):
		return nil
	case c.Check:
		if err := show(harmless(edit.Diff(in.design.File, was, now))); err != nil {
			return err
		}
		return exitCode(exitFindings)
	case c.Design == "-":
		return show(string(now))
	case bytes.Equal(was, now):
		return nil
	}
	if err := writeFile(io, c.Design, func(b *bytes.Buffer) error { b.Write(now); return nil }); err != nil {
		return err
	}
	if io.quiet {
		return nil
	}
	done := "tidied"
	if c.Number {
		done = "tidied, labels written"
	}
	return show(fmt.Sprintf("%s: %s\n", in.design.File, done))
}
