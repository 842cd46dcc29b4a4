package main

import (
	"bytes"

	"fusewright/harness/purchase"
	"fusewright/render/document"
)

// bomCmd prints the bill of materials.
type bomCmd struct {
	designArg
	Out string `short:"o" help:"Write pages as PDF to this file instead." placeholder:"FILE.pdf" type:"path"`
}

// Run prints CSV, or writes the PDF.
func (c *bomCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	bill := purchase.List(review.Circuit)
	if c.Out != "" {
		return writeFile(c.Out, pdfOf(review, "Bill of materials", document.Bill(review, bill)))
	}
	return printed(io, func(b *bytes.Buffer) error { return document.BillCSV(b, bill) })
}
