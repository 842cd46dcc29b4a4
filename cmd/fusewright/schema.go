package main

import (
	"bytes"
	"fusewright/library"

	"fusewright/harness/design"
)

// schemaCmd prints the JSON Schema of the design format.
type schemaCmd struct {
	Out string `short:"o" help:"Write it to this file instead." placeholder:"FILE.json" type:"path"`
}

// Run prints or writes the schema, with the names of the library in use.
func (c *schemaCmd) Run(io *streams, lib *library.Library) error {
	text, err := design.Schema(lib)
	if err != nil {
		return err
	}
	write := func(b *bytes.Buffer) error {
		_, err := b.Write(text)
		return err
	}
	if c.Out != "" {
		return writeFile(io, c.Out, write)
	}
	return printed(io, write)
}
