package main

import (
	"bytes"

	"fusewright/harness/review/rules"
)

// explainCmd explains a rule.
type explainCmd struct {
	Rule string `arg:"" optional:"" help:"Name of the rule; left out: the list of rules."`
}

// Run prints the rule's text, or the list.
func (c *explainCmd) Run(io *streams, _ *program) error {
	if c.Rule == "" {
		return printed(io, func(b *bytes.Buffer) error { return listRules(b) })
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
