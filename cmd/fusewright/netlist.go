package main

import (
	"bytes"

	"fusewright/harness/design"
	"fusewright/harness/network/spice"
)

// netlistCmd prints the circuit as a SPICE netlist.
type netlistCmd struct {
	designArg
	Situation string `arg:"" optional:"" help:"Situation; the design's first when not given."`
	Out       string `short:"o" help:"Write it to this file instead: .cir, .net, .sp or .spice." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *netlistCmd) Validate() error {
	return endsIn("--out", c.Out, ".cir", ".net", ".sp", ".spice")
}

// Run prints or writes the netlist of one situation, with the wires as warm as they get there.
func (c *netlistCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	s, err := situationOf(review.Design, c.Situation)
	if err != nil {
		return err
	}
	write := func(b *bytes.Buffer) error { return spice.Write(b, review.Circuit, s, review.Options(s)) }
	if c.Out != "" {
		return writeFile(io, c.Out, write)
	}
	return printed(io, write)
}

// situationOf finds a situation by name; "" is the first.
func situationOf(d *design.Design, name string) (*design.Situation, error) {
	var names []string
	for _, s := range d.Situations {
		if name == "" || s.Name == name {
			return s, nil
		}
		names = append(names, s.Name)
	}
	return nil, notFound("situation", name, names)
}
