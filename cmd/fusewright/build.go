package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"

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

// mostWires is the largest harness that every paper is made of: a memory of
// 2 GiB holds its papers, of well over a thousand pages.
const mostWires = 2000

// manyWires is where memory begins to count for more than time.
const manyWires = 500

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
	review, err := c.assessUpTo(mostWires, io, cli)
	if err != nil {
		return err
	}
	if len(review.Circuit.Wires) > manyWires {
		defer debug.SetGCPercent(debug.SetGCPercent(50)) // a quarter less memory for a tenth more time
	}
	out := newOutputs(c.folder())
	out.progress = shown
	if err := renderAll(out, review); err != nil {
		return err
	}
	if err := io.commitApart(out); err != nil {
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
	board := formboard.Lay(r.Circuit)
	made, err := drawings(r, board)
	if err != nil {
		return err
	}
	out.addSheets("schematic", made["Schematic"], pngDPI, "png", "svg")
	addLayout(out, r, board, made["Layout"])
	out.add("dossier.pdf", writeDossier(r, made)) // the longest by far
	addPages(out, r, made)
	addLists(out, r)
	out.add("budget.svg", func(b *bytes.Buffer) error { return svg.Write(b, made["Charging budget"][0]) })
	return nil
}

// drawings draws the sheets that a file of their own and the dossier share, by
// title, and the long ones that the dossier alone has.
func drawings(r *harness.Review, board *formboard.Board) (map[string][]*scene.Sheet, error) {
	papers := []struct {
		title string
		draw  func() ([]*scene.Sheet, error)
	}{
		{"Schematic", func() ([]*scene.Sheet, error) { return schematic.Draw(r, schematic.Options{}) }},
		{"Schematic with solved values", func() ([]*scene.Sheet, error) { return solvedSheets(r) }},
		{"Bench test", func() ([]*scene.Sheet, error) { return document.Bench(r, bench.Make(r.Circuit)), nil }},
		{"Layout", func() ([]*scene.Sheet, error) { return layout.Draw(r, board, layout.Options{}) }},
		{"Charging budget", func() ([]*scene.Sheet, error) { return document.Budget(r) }},
		{"Fault and protection study", func() ([]*scene.Sheet, error) { return document.Study(r) }},
		{"Voltage along each circuit", func() ([]*scene.Sheet, error) { return document.Profiles(r) }},
		{"Wire loading", func() ([]*scene.Sheet, error) { return document.Loading(r) }},
	}
	sheets, errs := make([][]*scene.Sheet, len(papers)), make([]error, len(papers))
	var all sync.WaitGroup
	for i, p := range papers {
		all.Go(func() {
			renderers <- struct{}{}
			defer func() { <-renderers }()
			sheets[i], errs[i] = p.draw()
		})
	}
	all.Wait()
	made := map[string][]*scene.Sheet{}
	for i, p := range papers {
		if errs[i] != nil {
			return nil, errs[i]
		}
		made[p.title] = sheets[i]
	}
	return made, nil
}

// addPages adds the papers.
func addPages(out *outputs, r *harness.Review, made map[string][]*scene.Sheet) {
	for _, f := range []struct {
		name, title string
		sheets      []*scene.Sheet
	}{
		{"schematic.pdf", "Schematic", made["Schematic"]},
		{"cut-list.pdf", "Cut list", document.CutList(r)},
		{"connections.pdf", "Connection table", document.Connections(r)},
		{"fuse-card.pdf", "Fuse card", document.FuseCard(r)},
		{"labels.pdf", "Wire labels", document.Labels(r)},
		{"bom.pdf", "Bill of materials", document.Bill(r, purchase.List(r.Circuit))},
		{"budget.pdf", "Charging budget", made["Charging budget"]},
		{"study.pdf", "Fault and protection study", made["Fault and protection study"]},
		{"findings.pdf", "Findings", document.Findings(r)},
		{"voltages.pdf", "Voltage along each circuit", made["Voltage along each circuit"]},
		{"loading.pdf", "Wire loading", made["Wire loading"]},
		{"bench.pdf", "Bench test", made["Bench test"]},
	} {
		out.add(f.name, pdfOf(r, f.title, f.sheets))
	}
}

// addLists adds what other programs and terminals read.
func addLists(out *outputs, r *harness.Review) {
	rows := cutting.List(r.Circuit)
	for _, f := range []struct {
		name  string
		write func(*bytes.Buffer) error
	}{
		{"cut-list.csv", func(b *bytes.Buffer) error { return document.CutListCSV(b, lengths.Of(r.Design), rows) }},
		{"labels.csv", func(b *bytes.Buffer) error { return document.LabelsCSV(b, rows) }},
		{"bom.csv", func(b *bytes.Buffer) error { return document.BillCSV(b, purchase.List(r.Circuit)) }},
		{"study.txt", func(b *bytes.Buffer) error { return report.WriteStudy(b, report.NewStudy(r)) }},
		{"findings.txt", func(b *bytes.Buffer) error { return report.WriteText(b, report.New(r).ToKeep()) }},
		{"findings.json", func(b *bytes.Buffer) error { return report.WriteJSON(b, report.New(r).ToKeep()) }},
	} {
		out.add(f.name, f.write)
	}
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

// quickSheets is the most sheets whose pictures are packed as small as they go.
// Of more, as a harness of many hundred wires has, they are written in less time
// and take more room; the pixels are the same.
const quickSheets = 24

// addSheets renders each sheet in each picture format: NAME.svg, NAME-2.svg, …
// Pictures that an earlier run wrote with a higher number are removed at the end.
func (o *outputs) addSheets(name string, sheets []*scene.Sheet, dpi int, formats ...string) {
	for _, format := range formats {
		for i, s := range sheets {
			file := name + "." + format
			if i > 0 {
				file = fmt.Sprintf("%s-%d.%s", name, i+1, format)
			}
			o.add(file, func(b *bytes.Buffer) error {
				if format == "png" && len(sheets) > quickSheets {
					return png.WriteQuick(b, s, float64(dpi))
				}
				return writePicture(b, s, format, dpi)
			})
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
