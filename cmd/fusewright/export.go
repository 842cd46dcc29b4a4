package main

import (
	"bytes"
	"fmt"

	"fusewright/harness"
	"fusewright/harness/network/spice"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/document"
	"fusewright/render/dxf"
	"fusewright/render/layout"
	"fusewright/render/report"
	"fusewright/render/scene"
	"fusewright/render/schematic"
)

// exportCmd writes a design in the forms other programs read.
type exportCmd struct {
	designArg
	To        string `help:"json: the whole solved model. spice: netlist of a situation. dot: graph of the circuit. csv: wires with their currents and drops. dxf: a drawing, release 12." enum:"json,spice,dot,csv,dxf" required:"" placeholder:"KIND"`
	Situation string `help:"Situation for the netlist; the design's first when not given." placeholder:"NAME"`
	Of        string `help:"What a dxf holds: schematic, layout (to scale, framed) or board (full size, one sheet)." enum:"schematic,layout,board" default:"schematic" placeholder:"DRAWING"`
	Broken    bool   `help:"Break the long runs of a board, as on the pages at full size: shorter, with their true length across the break."`
	Out       string `short:"o" help:"Write to this file instead of printing; sheets after the first get a number." placeholder:"FILE" type:"path"`
}

// Run assesses the design and writes the form asked for.
func (c *exportCmd) Run(s *streams, cli *program) error {
	in, err := c.texts(s, cli)
	if err != nil {
		return err
	}
	review, err := in.assess()
	if err != nil {
		return err
	}
	if c.To == "dxf" {
		return c.drawing(s, review)
	}
	write, err := c.writer(review, in)
	if err != nil {
		return err
	}
	if c.Out == "" || c.Out == "-" {
		return printed(s, write)
	}
	if err := writeFile(s, c.Out, write); err != nil {
		return err
	}
	s.say("%s\n", c.Out)
	return nil
}

// writer gives what writes a form that is one text.
func (c *exportCmd) writer(r *harness.Review, in *inputs) (func(*bytes.Buffer) error, error) {
	switch c.To {
	case "spice":
		situation, err := situationOf(r.Design, c.Situation)
		return func(b *bytes.Buffer) error { return spice.Write(b, r.Circuit, situation, r.Options(situation)) }, err
	case "dot":
		return func(b *bytes.Buffer) error { return report.WriteDot(b, r) }, nil
	case "csv":
		return func(b *bytes.Buffer) error { return document.WiresCSV(b, r) }, nil
	}
	return func(b *bytes.Buffer) error {
		return report.WriteJSON(b, report.NewModel(r, in.design, in.libraries))
	}, nil
}

// drawing writes sheets as DXF, which holds one each.
func (c *exportCmd) drawing(s *streams, r *harness.Review) error {
	sheets, err := c.sheets(r)
	if err != nil {
		return err
	}
	if c.Out == "" || c.Out == "-" {
		if len(sheets) > 1 {
			return fmt.Errorf("there are %d sheets and a DXF holds one (expected --out FILE)", len(sheets))
		}
		return printed(s, func(b *bytes.Buffer) error { return dxf.Write(b, sheets[0]) })
	}
	out, err := putDrawing(s, c.Out, 0, r, "", sheets) // a DXF has no dots
	if err != nil {
		return err
	}
	s.sayFiles(out)
	return nil
}

func (c *exportCmd) sheets(r *harness.Review) ([]*scene.Sheet, error) {
	switch c.Of {
	case "layout":
		return layout.Draw(r, formboard.Lay(r.Circuit))
	case "board":
		if c.Broken {
			return layout.Whole(r, formboard.LayBroken(r.Circuit)), nil
		}
		return layout.Whole(r, formboard.Lay(r.Circuit)), nil
	}
	r.Remedies()
	return schematic.Draw(r, schematic.Options{})
}

// Validate refuses a file name that promises something else.
func (c *exportCmd) Validate() error {
	if c.Broken && (c.To != "dxf" || c.Of != "board") {
		return fmt.Errorf("--broken is for a board (expected --to dxf --of board)")
	}
	if c.To == "dxf" && c.Out != "-" {
		return endsIn("--out", c.Out, ".dxf")
	}
	return nil
}
