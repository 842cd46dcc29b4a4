package main

import (
	"bytes"
	"errors"
	"path/filepath"

	"fusewright/harness"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/starter"
	"fusewright/harness/design/survey"
	"fusewright/library"
	"fusewright/render/document"
	"fusewright/render/report"
)

// surveyCmd prints what to measure before designing, or puts what was measured into a design.
type surveyCmd struct {
	Design string `arg:"" optional:"" help:"The design file, or - for standard input."`
	Kind   string `help:"In place of a design: the usual one of a kind of vehicle, as new writes it." placeholder:"KIND"`
	Fill   string `help:"Read this filled-in form and print the design with what was measured." placeholder:"FILE"`
	Out    string `short:"o" help:"Write it to this file instead: .md or .pdf the sheet, .yaml the form to fill in; with --fill the design." placeholder:"FILE" type:"path"`
}

// Validate wants one of design and kind, and an ending that there is.
func (c *surveyCmd) Validate() error {
	if (c.Design == "") == (c.Kind == "") {
		return errors.New("a design file or --kind is wanted, and not both")
	}
	if c.Fill != "" {
		return endsIn("--out", c.Out, ".yaml")
	}
	return endsIn("--out", c.Out, ".md", ".pdf", ".yaml")
}

// Run writes the sheet, the form or the design.
func (c *surveyCmd) Run(io *streams, cli *program) error {
	in, err := c.texts(io, cli)
	if err != nil {
		return err
	}
	d, err := in.read()
	if err != nil {
		return err
	}
	groups := survey.Of(d)
	write := func(b *bytes.Buffer) error { return report.WriteSurvey(b, d, groups) }
	switch {
	case c.Fill != "":
		now, err := c.filled(io, in, groups)
		if err != nil {
			return err
		}
		write = func(b *bytes.Buffer) error { b.Write(now); return nil }
	case filepath.Ext(c.Out) == ".yaml":
		write = func(b *bytes.Buffer) error { b.Write(survey.Form(groups)); return nil }
	case filepath.Ext(c.Out) == ".pdf":
		r, err := harness.Assess(d)
		if err != nil {
			return err
		}
		write = pdfOf(r, "Survey", document.Survey(r, groups))
	}
	if c.Out != "" {
		return writeFile(io, c.Out, write)
	}
	return printed(io, write)
}

// texts are those of the design, or of the usual one of the kind.
func (c *surveyCmd) texts(io *streams, cli *program) (*inputs, error) {
	if c.Kind == "" {
		return designArg{c.Design}.texts(io, cli)
	}
	usual, ok := starter.Defaults(c.Kind)
	if !ok {
		return nil, notFound("kind of vehicle", c.Kind, starter.Vehicles())
	}
	libraries, err := library.ReadTexts(cli.Library...)
	if err != nil {
		return nil, err
	}
	lib, err := cli.library()
	if err != nil {
		return nil, err
	}
	io.read = append(io.read, cli.Library...)
	src, err := starter.Write(usual, lib)
	return &inputs{design: library.Text{File: "usual " + usual.Vehicle, Data: src}, libraries: libraries, note: io.note}, err
}

// filled is the text of the design with what the form says, which must read.
func (c *surveyCmd) filled(io *streams, in *inputs, groups []*survey.Group) ([]byte, error) {
	io.read = append(io.read, c.Fill)
	name, form, err := readInput(io, c.Fill, maxDesignBytes)
	if err != nil {
		return nil, err
	}
	changes, err := survey.Read(name, form, groups)
	if err != nil {
		return nil, err
	}
	now, err := edit.Set(in.design.Data, changes)
	if err != nil {
		return nil, err
	}
	in.design.Data = now
	_, err = in.read()
	return now, err
}
