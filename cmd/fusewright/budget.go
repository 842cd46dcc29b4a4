package main

import (
	"bytes"
	"path/filepath"

	"fusewright/harness"
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
		write := budgetPaper.text(review)
		if filepath.Ext(c.Out) == ".pdf" {
			write = budgetPaper.pdf(review)
		}
		return writeFile(io, c.Out, write)
	}
	rep := report.NewBudget(review)
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteBudget(b, rep)
	})
}

// budgetPicture draws the page with the chart, which is the first.
func budgetPicture(b *bytes.Buffer, r *harness.Review) error {
	sheets, err := document.Budget(r)
	if err != nil {
		return err
	}
	return svg.Write(b, sheets[0])
}
