package main

import (
	"bytes"
	"fmt"
	"text/tabwriter"

	"fusewright/harness/review/rules"
)

// explainCmd explains a rule.
type explainCmd struct {
	Rule string `arg:"" optional:"" help:"Name of the rule; the list of rules when not given."`
}

// Run prints the rule's text, or the list.
func (c *explainCmd) Run(io *streams, _ *program) error {
	if c.Rule == "" {
		return printed(io, func(b *bytes.Buffer) error {
			t := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
			for _, r := range rules.All() {
				fmt.Fprintf(t, "%s\t%s\n", r.Name, r.Title)
			}
			return t.Flush()
		})
	}
	text, ok := rules.Explain(c.Rule)
	if !ok {
		return notFound("rule", c.Rule, rules.Names())
	}
	return printed(io, func(b *bytes.Buffer) error {
		_, err := b.WriteString(text)
		return err
	})
}
