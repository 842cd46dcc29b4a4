package main

import (
	"bytes"

	"fusewright/harness/formula/validation"
	"fusewright/render/report"
)

// validateCmd prints how the program compares with published sources.
type validateCmd struct {
	format
}

// Run prints the page that is kept as docs/validation.md, or JSON.
func (c *validateCmd) Run(io *streams, _ *program) error {
	list := validation.Comparisons()
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, report.NewValidation(list))
		}
		return report.WriteValidation(b, list)
	})
}
