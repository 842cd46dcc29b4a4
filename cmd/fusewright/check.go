package main

import "fusewright/render/report"

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
	rep := report.New(review)
	if c.json() {
		err = report.WriteJSON(io.out, rep)
	} else {
		err = report.WriteText(io.out, rep)
	}
	if err != nil {
		return outside{err}
	}
	return c.verdict(review.Findings)
}
