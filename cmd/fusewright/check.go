package main

import (
	"bytes"

	"fusewright/render/report"
)

// checkCmd prints the findings.
type checkCmd struct {
	designArg
	failOn
	format
}

// format chooses between text for people and JSON for programs.
type format struct {
	Format string `help:"text or json." enum:"text,json" default:"text"`
}

func (f format) json() bool { return f.Format == "json" }

// Run assesses the design and prints the report.
func (c *checkCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if io.quiet {
		return c.verdict(review.Findings)
	}
	err = printed(io, func(b *bytes.Buffer) error { return c.print(b, io, report.New(review)) })
	if err != nil {
		return err
	}
	return c.verdict(review.Findings)
}

func (c *checkCmd) print(b *bytes.Buffer, io *streams, rep *report.Report) error {
	if c.json() {
		return report.WriteJSON(b, rep)
	}
	var text bytes.Buffer
	err := report.WriteText(&text, rep)
	if io.colour() {
		b.Write(colourSeverities(text.Bytes()))
	} else {
		b.Write(text.Bytes())
	}
	return err
}
