package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"fusewright/harness/design/edit"
	"fusewright/harness/design/problem"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/harness/workshop/diagnosis"
	"fusewright/render/document"
	"fusewright/render/report"
)

// diagnoseCmd reckons from readings what is wrong and where.
type diagnoseCmd struct {
	designArg
	Readings []string `arg:"" help:"A file of readings (YAML, or CSV by its ending), or readings such as 10.5=13.21V or \"E1 - to G1 -=31mV\"."`
	In       string   `help:"Situation of the readings on the command line that are not of the bench test." placeholder:"SITUATION"`
	Meter    string   `help:"Class of the meter: common, plain, fine; that of the file when not given." placeholder:"CLASS"`
	Write    bool     `help:"Write what was measured into the design file and show the lines that change."`
	format
	Out string `short:"o" help:"Write the report for the file to this file as well: .pdf with a line to sign, or .txt." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *diagnoseCmd) Validate() error {
	if c.Write && c.Design == "-" {
		return errors.New("--write needs a design file, not standard input")
	}
	return endsIn("--out", c.Out, ".pdf", ".txt")
}

// Run prints the diagnosis; the exit code tells whether something is wrong.
func (c *diagnoseCmd) Run(io *streams, cli *program) error {
	in, err := c.texts(io, cli)
	if err != nil {
		return err
	}
	review, err := in.assess()
	if err != nil {
		return err
	}
	file, err := c.taken(io)
	if err != nil {
		return err
	}
	d, err := diagnosis.Of(review.Circuit, bench.Make(review.Circuit), file)
	if err != nil {
		return err
	}
	now, err := measuredText(in, d)
	if err != nil {
		return err
	}
	rep := report.NewDiagnosis(report.New(review), d, report.ChangedLines(in.design.Data, now))
	if c.Out != "" {
		write := func(b *bytes.Buffer) error { return report.WriteDiagnosis(b, rep) }
		if filepath.Ext(c.Out) == ".pdf" {
			write = pdfOf(review, "Diagnosis", document.Diagnosis(review, rep))
		}
		if err := writeFile(io, c.Out, write); err != nil {
			return err
		}
	}
	err = printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteDiagnosis(b, rep)
	})
	refused := c.Write && len(d.Withheld) > 0
	if err == nil && c.Write && !refused {
		err = c.write(io, in, now)
	}
	if refused && err == nil {
		fmt.Fprintf(io.err, "%s is left as it was: %s is withheld: %s\n", c.Design, d.Withheld[0].What, d.Withheld[0].Why)
	}
	if err == nil && (d.Wrong || refused) {
		err = exitCode(exitFindings)
	}
	return err
}

// taken are the readings of the file and of the command line.
func (c *diagnoseCmd) taken(io *streams) (*readings.File, error) {
	f := &readings.File{}
	var list []*readings.Reading
	var problems problem.List
	note := func(err error) error {
		var more problem.List
		if !errors.As(err, &more) {
			return err
		}
		problems = append(problems, more...)
		return nil
	}
	files := 0
	for _, text := range c.Readings {
		if strings.Contains(text, "=") {
			r, err := readings.Argument(text, c.In)
			if err != nil {
				if err = note(err); err != nil {
					return nil, err
				}
				continue
			}
			list = append(list, r)
			continue
		}
		if files++; files > 1 {
			return nil, fmt.Errorf("%s: one file of readings is wanted, and no more", text)
		}
		io.read = append(io.read, text)
		name, src, err := readInput(io, text, readings.MaxBytes+1)
		if err != nil {
			return nil, err
		}
		got, err := readings.Read(name, src)
		if err != nil {
			if err = note(err); err != nil {
				return nil, err
			}
			continue
		}
		f = got
	}
	f.Readings = append(f.Readings, list...)
	if c.Meter != "" {
		f.Meter, f.MeterPos = c.Meter, problem.Pos{File: "--meter"}
	}
	return f, problems.Err()
}

// measuredText is the design with what was measured; as it was where nothing fits into it.
func measuredText(in *inputs, d *diagnosis.Diagnosis) ([]byte, error) {
	was := in.design.Data
	now := was
	for _, m := range d.Measured {
		if len(m.Set) == 0 {
			continue
		}
		next, err := edit.Set(now, m.Set)
		if err != nil {
			d.Notes = append(d.Notes, m.What+" does not fit into the file as it is written: set it by hand.")
			continue
		}
		in.design.Data = next
		if _, err := in.read(); err != nil {
			d.Notes = append(d.Notes, m.What+" is out of what the design may say, and is left out.")
			continue
		}
		now = next
	}
	in.design.Data = was
	return now, nil
}

// write puts what was measured into the file.
func (c *diagnoseCmd) write(io *streams, in *inputs, now []byte) error {
	was := in.design.Data
	if bytes.Equal(was, now) {
		return nil
	}
	err := writeFile(io, c.Design, func(b *bytes.Buffer) error { b.Write(now); return nil })
	if err != nil || c.json() {
		return err
	}
	return printed(io, func(b *bytes.Buffer) error {
		b.WriteString("\n" + harmless(edit.Diff(in.design.File, was, now)))
		return nil
	})
}
