package main

import (
	"bytes"

	"fusewright/harness/cutting"
	"fusewright/harness/lengths"
	"fusewright/render/document"
)

// cutCmd prints the cut list.
type cutCmd struct {
	designArg
	Out string `short:"o" help:"Write pages as PDF to this file instead." placeholder:"FILE.pdf" type:"path"`
}

// Run prints CSV, or writes the PDF.
func (c *cutCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if c.Out != "" {
		return writeFile(c.Out, pdfOf(review, "Cut list", document.CutList(review)))
	}
	return printed(io, func(b *bytes.Buffer) error {
		return document.CutListCSV(b, lengths.Of(review.Design), cutting.List(review.Circuit))
	})
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
