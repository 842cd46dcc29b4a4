package main

import (
	"bytes"
	"errors"

	"fusewright/harness"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/render/report"
)

// checkCmd prints the findings.
type checkCmd struct {
	designArg
	failOn
	Format        string `help:"text, json, sarif or junit." enum:"text,json,sarif,junit" default:"text"`
	Baseline      string `help:"Findings that this file has do not count for the exit code." placeholder:"FILE"`
	Verbose       bool   `short:"v" help:"Each finding in full: its place as file:line:col, all figures, reason, remedy and source."`
	Watch         bool   `help:"Check again whenever the file is saved, and say what that mended and broke; ends with Ctrl-C."`
	WriteBaseline string `help:"Write the open findings to this file, for later runs with --baseline." placeholder:"FILE" type:"path"`
}

// format chooses between text for people and JSON for programs.
type format struct {
	Format string `help:"text or json." enum:"text,json" default:"text"`
}

func (f format) json() bool { return f.Format == "json" }

// Validate refuses a baseline that would not be read as one.
func (c *checkCmd) Validate() error {
	if c.Watch && (c.Design == "-" || c.Format != "text" || c.WriteBaseline != "") {
		return errors.New("--watch follows a file and prints text (expected its name, --format text and no --write-baseline)")
	}
	return endsIn("--write-baseline", c.WriteBaseline, ".json")
}

// Run assesses the design and prints the report.
func (c *checkCmd) Run(io *streams, cli *program) error {
	if c.Watch {
		return c.watch(io, cli)
	}
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	open, err := c.compareBaseline(io, review.Findings)
	if err != nil {
		return err
	}
	rep := report.New(review)
	rep.Compared = c.Baseline != ""
	if !io.quiet {
		if err := printed(io, func(b *bytes.Buffer) error { return c.print(b, io, rep, review) }); err != nil {
			return err
		}
	}
	if c.WriteBaseline != "" {
		return writeFile(io, c.WriteBaseline, func(b *bytes.Buffer) error {
			return report.WriteJSON(b, compare.NewBaseline(review.Findings))
		})
	}
	return c.verdict(open)
}

func (c *checkCmd) print(b *bytes.Buffer, io *streams, rep *report.Report, review *harness.Review) error {
	switch c.Format {
	case "json":
		return report.WriteJSON(b, rep.WithCauses(review.Remedies()))
	case "sarif":
		return report.WriteSARIF(b, rep)
	case "junit":
		return report.WriteJUnit(b, rep, c.severity())
	}
	var text bytes.Buffer
	var err error
	if c.Verbose {
		err = report.WriteText(&text, rep)
	} else {
		err = report.WriteBrief(&text, rep, review.Remedies(), io.width())
	}
	if io.colour() {
		b.Write(colourSeverities(text.Bytes()))
	} else {
		b.Write(text.Bytes())
	}
	return err
}

// compareBaseline marks what the baseline has and gives the findings that it
// has not; all of them without a baseline.
func (c *checkCmd) compareBaseline(io *streams, list []*finding.Finding) ([]*finding.Finding, error) {
	if c.Baseline == "" {
		return list, nil
	}
	name, data, err := readInput(io, c.Baseline, maxDesignBytes)
	if err != nil {
		return nil, err
	}
	base, err := compare.ReadBaseline(name, data)
	if err != nil {
		return nil, err
	}
	unused := base.MarkKnown(list)
	var open []*finding.Finding
	for _, f := range list {
		if !f.Known {
			open = append(open, f)
		}
	}
	worse, gone := compare.Outgrown(unused, list)
	for _, text := range worse {
		io.hint("%s", text)
	}
	if gone > 0 {
		io.hint("%d of the findings in %s are gone; write it anew", gone, c.Baseline)
	}
	return open, nil
}
