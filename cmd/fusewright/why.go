package main

import (
	"bytes"
	"strings"

	"fusewright/harness"
	"fusewright/harness/derivation"
	"fusewright/render/report"
)

// whyCmd explains a figure of a design.
type whyCmd struct {
	designArg
	What []string `arg:"" optional:"" help:"The figure, as in \"drop of left lamp\", or the number of a finding; what may be asked when not given."`
	format
	All bool `help:"Take every value apart to the leaves, however long that gets."`
}

// Run prints the derivation, or the list of figures.
func (c *whyCmd) Run(io *streams, cli *program) error {
	review, err := c.by(harness.Open, 0, io, cli)
	if err != nil {
		return err
	}
	if len(c.What) == 0 {
		return printed(io, func(b *bytes.Buffer) error {
			names := derivation.Names(review)
			if c.json() {
				return report.WriteJSON(b, names)
			}
			return report.WriteWhyNames(b, names, io.width())
		})
	}
	tree, err := derivation.Of(review, strings.Join(c.What, " "))
	if err != nil {
		return err
	}
	rep := report.NewWhy(review.Design, tree)
	return printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteWhy(b, rep, io.width(), c.All)
	})
}
