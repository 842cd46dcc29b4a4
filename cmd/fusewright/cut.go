package main

import (
	"bytes"
	"path/filepath"

	"fusewright/harness"
)

// cutCmd prints the cut list.
type cutCmd struct {
	designArg
	Out string `short:"o" help:"Write it to this file instead: .csv, or .pdf for pages." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *cutCmd) Validate() error { return endsIn("--out", c.Out, ".csv", ".pdf") }

// Run prints CSV, or writes it or pages.
func (c *cutCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	return listed(io, c.Out, review, cutListPaper)
}

// listed prints a list as CSV, or writes it to a file as CSV or as pages.
func listed(io *streams, out string, r *harness.Review, p *paper) error {
	switch filepath.Ext(out) {
	case ".pdf":
		return writeFile(io, out, p.pdf(r))
	case ".csv":
		return writeFile(io, out, p.text(r))
	}
	return printed(io, p.text(r))
}

// printed renders to memory first, so that a failure prints nothing.
func printed(io *streams, write func(*bytes.Buffer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	if _, err := io.out.Write(buf.Bytes()); err != nil {
		return outside{err}
	}
	return nil
}
