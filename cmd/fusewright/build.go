package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"fusewright/harness"
	"fusewright/harness/bench"
	"fusewright/harness/cutting"
	"fusewright/harness/formboard"
	"fusewright/harness/lengths"
	"fusewright/harness/purchase"
	"fusewright/render/document"
	"fusewright/render/dxf"
	"fusewright/render/layout"
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
	shown := io.progress()
	defer shown.done()
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	out := newOutputs(c.folder())
	out.progress = shown
	if err := renderAll(out, review); err != nil {
		return err
	}
	if err := out.commit(); err != nil {
		return err
	}
	shown.done()
	io.sayFiles(out)
	rep := report.New(review)
	io.say("%s: %s\n%s\n", rep.Design.Title, rep.Counts, report.Caution)
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
	out.addSheets("schematic", sheets, pngDPI, "png", "svg")
	board := formboard.Lay(r.Circuit)
	layoutSheets, err := layout.Draw(r, board, layout.Options{})
	if err != nil {
		return err
	}
	addLayout(out, r, board, layoutSheets)
	bill := purchase.List(r.Circuit)
	rows := cutting.List(r.Circuit)
	budgetSheets, err := document.Budget(r)
	if err != nil {
		return err
	}
	study, err := document.Study(r)
	if err != nil {
		return err
	}
	profiles, err := document.Profiles(r)
	if err != nil {
		return err
	}
	loading, err := document.Loading(r)
	if err != nil {
		return err
	}
	benchSheets := document.Bench(r, bench.Make(r.Circuit))
	made := map[string][]*scene.Sheet{"Schematic": sheets, "Layout": layoutSheets, "Charging budget": budgetSheets,
		"Fault and protection study": study, "Voltage along each circuit": profiles, "Wire loading": loading,
		"Bench test": benchSheets}
	files := []struct {
		name  string
		write func(*bytes.Buffer) error
	}{
		{"dossier.pdf", writeDossier(r, made)}, // the longest by far
		{"schematic.pdf", pdfOf(r, "Schematic", sheets)},
		{"cut-list.csv", func(b *bytes.Buffer) error { return document.CutListCSV(b, lengths.Of(r.Design), rows) }},
		{"cut-list.pdf", pdfOf(r, "Cut list", document.CutList(r))},
		{"connections.pdf", pdfOf(r, "Connection table", document.Connections(r))},
		{"fuse-card.pdf", pdfOf(r, "Fuse card", document.FuseCard(r))},
		{"labels.pdf", pdfOf(r, "Wire labels", document.Labels(r))},
		{"labels.csv", func(b *bytes.Buffer) error { return document.LabelsCSV(b, rows) }},
		{"bom.csv", func(b *bytes.Buffer) error { return document.BillCSV(b, bill) }},
		{"bom.pdf", pdfOf(r, "Bill of materials", document.Bill(r, bill))},
		{"budget.svg", func(b *bytes.Buffer) error { return svg.Write(b, budgetSheets[0]) }},
		{"budget.pdf", pdfOf(r, "Charging budget", budgetSheets)},
		{"study.txt", func(b *bytes.Buffer) error { return report.WriteStudy(b, report.NewStudy(r)) }},
		{"study.pdf", pdfOf(r, "Fault and protection study", study)},
		{"findings.txt", func(b *bytes.Buffer) error { return report.WriteText(b, report.New(r)) }},
		{"findings.json", func(b *bytes.Buffer) error { return report.WriteJSON(b, report.New(r)) }},
		{"findings.pdf", pdfOf(r, "Findings", document.Findings(r))},
		{"voltages.pdf", pdfOf(r, "Voltage along each circuit", profiles)},
		{"loading.pdf", pdfOf(r, "Wire loading", loading)},
		{"bench.pdf", pdfOf(r, "Bench test", benchSheets)},
	}
	for _, f := range files {
		out.add(f.name, f.write)
	}
	return nil
}

// addLayout renders the layout sheets and the board at full size. A harness
// without runs has no board and gets neither.
func addLayout(out *outputs, r *harness.Review, board *formboard.Board, sheets []*scene.Sheet) {
	if len(sheets) == 0 {
		out.replaces = append(out.replaces, "layout.pdf", "layout.svg", "layout-*.svg", "layout-1to1.pdf")
		return
	}
	out.addSheets("layout", sheets, pngDPI, "svg")
	out.add("layout.pdf", pdfOf(r, "Layout", sheets))
	pages := layout.FullSize(r, board)
	if len(pages) == 0 {
		out.replaces = append(out.replaces, "layout-1to1.pdf")
		return
	}
	out.add("layout-1to1.pdf", pdfOf(r, "Layout at full size", pages))
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
func (o *outputs) addSheets(name string, sheets []*scene.Sheet, dpi int, formats ...string) {
	for _, format := range formats {
		for i, s := range sheets {
			file := name + "." + format
			if i > 0 {
				file = fmt.Sprintf("%s-%d.%s", name, i+1, format)
			}
			o.add(file, func(b *bytes.Buffer) error { return writePicture(b, s, format, dpi) })
		}
		o.replaces = append(o.replaces, name+"-*."+format)
	}
}

// writePicture writes one sheet as SVG, PNG or DXF.
func writePicture(b *bytes.Buffer, s *scene.Sheet, format string, dpi int) error {
	switch format {
	case "png":
		return png.Write(b, s, float64(dpi))
	case "dxf":
		return dxf.Write(b, s)
	}
	return svg.Write(b, s)
}
