package main

import (
	"bytes"

	"fusewright/render/report"
)

// studyCmd prints the fault study and the protection study.
type studyCmd struct {
	designArg
	format
	Out string `short:"o" help:"Write it to this file as PDF instead." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *studyCmd) Validate() error { return endsIn("--out", c.Out, ".pdf") }

// Run assesses the design and prints its studies as text or JSON, or writes them.
func (c *studyCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if c.Out != "" {
		return writeFile(io, c.Out, studyPaper.pdf(review))
	}
	rep := report.NewStudy(review)
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteStudy(b, rep)
	})
}
