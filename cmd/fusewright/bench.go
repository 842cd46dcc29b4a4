package main

import (
	"bytes"

	"fusewright/harness/workshop/bench"
	"fusewright/render/report"
)

// benchCmd prints the bench test, or writes it as sheets to fill in.
type benchCmd struct {
	designArg
	format
	Out string `short:"o" help:"Write it as PDF to this file instead, with blanks for the readings." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *benchCmd) Validate() error { return endsIn("--out", c.Out, ".pdf") }

// Run works out the test and prints or writes it.
func (c *benchCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if c.Out != "" {
		return writeFile(io, c.Out, benchPaper.pdf(review))
	}
	test := bench.Make(review.Circuit)
	rep := report.NewBench(report.New(review), test)
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteBench(b, rep, test)
	})
}
