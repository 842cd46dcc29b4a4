package main

import (
	"bytes"

	"fusewright/harness/design"
)

// schemaCmd prints the JSON Schema of the design format.
type schemaCmd struct {
	Out string `short:"o" help:"Write it to this file instead." placeholder:"FILE.json" type:"path"`
}

// Help shows examples.
func (schemaCmd) Help() string {
	return `Editors that know YAML complete, explain and check a design that names the
schema in its first line:

  # yaml-language-server: $schema=fusewright.schema.json

Examples:

  fusewright schema -o fusewright.schema.json
      beside your designs
  fusewright schema --library own-parts.yaml
      offering the names of your own parts too`
}

// Run prints or writes the schema, with the names of the library in use.
func (c *schemaCmd) Run(io *streams, cli *program) error {
	lib, err := cli.library()
	if err != nil {
		return err
	}
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
