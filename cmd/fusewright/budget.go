package main

import (
	"bytes"
	"path/filepath"

	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/svg"
)

// budgetCmd prints or draws the charging budget.
type budgetCmd struct {
	designArg
	format
	Out string `short:"o" help:"Draw it to this file instead: .svg or .pdf." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *budgetCmd) Validate() error { return endsIn("--out", c.Out, ".svg", ".pdf") }

// Run prints the budget as text or JSON, or draws it.
func (c *budgetCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	if c.Out != "" {
		sheets, err := document.Budget(review)
		if err != nil {
			return err
		}
		if filepath.Ext(c.Out) == ".pdf" {
			return writeFile(io, c.Out, pdfOf(review, "Charging budget", sheets))
		}
		return writeFile(io, c.Out, func(b *bytes.Buffer) error { return svg.Write(b, sheets[0]) })
	}
	rep := report.NewBudget(review)
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteBudget(b, rep)
	})
}
