package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"fusewright/harness"
	"fusewright/harness/cutting"
	"fusewright/harness/purchase"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/png"
	"fusewright/render/report"
	"fusewright/render/scene"
	"fusewright/render/schematic"
	"fusewright/render/svg"
)

// pngDPI is the resolution of pictures made without a choice.
const pngDPI = 150

// buildCmd makes everything.
type buildCmd struct {
	designArg
	failOn
	Out string `short:"o" help:"Folder for the files." placeholder:"DIR" default:"" type:"path"`
}

// Run assesses the design, renders every file, and puts them in place together.
func (c *buildCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	out := newOutputs(c.folder())
	if err := renderAll(out, review); err != nil {
		return err
	}
	if err := out.commit(); err != nil {
		return err
	}
	for _, name := range out.names {
		fmt.Fprintln(io.out, filepath.Join(out.dir, name))
	}
	rep := report.New(review)
	fmt.Fprintf(io.out, "%s: %s\n%s\n", rep.Design.Title, rep.Counts, report.Caution)
	return c.verdict(review.Findings)
}

// folder is the chosen folder, or out/ with the design's name.
func (c *buildCmd) folder() string {
	if c.Out != "" {
		return c.Out
	}
	if c.Design == "-" {
		return "out"
	}
	base := filepath.Base(c.Design)
	return filepath.Join("out", strings.TrimSuffix(base, filepath.Ext(base)))
}

// renderAll renders every file of a review.
func renderAll(out *outputs, r *harness.Review) error {
	sheets, err := schematic.Draw(r, schematic.Options{})
	if err != nil {
		return err
	}
	if err := out.addSheets("schematic", sheets, "svg", "png"); err != nil {
		return err
	}
	bill := purchase.List(r.Circuit)
	rows := cutting.List(r.Circuit)
	budgetSheets, err := document.Budget(r)
	if err != nil {
		return err
	}
	files := []struct {
		name  string
		write func(*bytes.Buffer) error
	}{
		{"schematic.pdf", pdfOf(r, "Schematic", sheets)},
		{"cut-list.csv", func(b *bytes.Buffer) error { return document.CutListCSV(b, rows) }},
		{"cut-list.pdf", pdfOf(r, "Cut list", document.CutList(r))},
		{"bom.csv", func(b *bytes.Buffer) error { return document.BillCSV(b, bill) }},
		{"bom.pdf", pdfOf(r, "Bill of materials", document.Bill(r, bill))},
		{"budget.svg", func(b *bytes.Buffer) error { return svg.Write(b, budgetSheets[0]) }},
		{"budget.pdf", pdfOf(r, "Charging budget", budgetSheets)},
		{"findings.txt", func(b *bytes.Buffer) error { return report.WriteText(b, report.New(r)) }},
		{"findings.json", func(b *bytes.Buffer) error { return report.WriteJSON(b, report.New(r)) }},
		{"findings.pdf", pdfOf(r, "Findings", document.Findings(r))},
	}
	for _, f := range files {
		if err := out.add(f.name, f.write); err != nil {
			return err
		}
	}
	return nil
}

// pdfOf writes sheets as one PDF with the design's title and author.
func pdfOf(r *harness.Review, kind string, sheets []*scene.Sheet) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		return pdf.Write(b, &scene.Document{
			Title:   kind + " · " + r.Design.Title.Value,
			Author:  r.Design.Author.Value,
			Subject: document.Caution,
			Sheets:  sheets,
		})
	}
}

// addSheets renders each sheet in each picture format: NAME.svg, NAME-2.svg, …
// Pictures of earlier runs with a higher number are removed at the end.
func (o *outputs) addSheets(name string, sheets []*scene.Sheet, formats ...string) error {
	for _, format := range formats {
		for i, s := range sheets {
			file := name + "." + format
			if i > 0 {
				file = fmt.Sprintf("%s-%d.%s", name, i+1, format)
			}
			err := o.add(file, func(b *bytes.Buffer) error { return writePicture(b, s, format, pngDPI) })
			if err != nil {
				return err
			}
		}
		o.replaces = append(o.replaces, name+"-*."+format)
	}
	return nil
}

// writePicture writes one sheet as SVG or PNG.
func writePicture(b *bytes.Buffer, s *scene.Sheet, format string, dpi int) error {
	if format == "png" {
		return png.Write(b, s, float64(dpi))
	}
	return svg.Write(b, s)
}
