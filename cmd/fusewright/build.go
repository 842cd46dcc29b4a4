package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"sync"

	"fusewright/harness"
	"fusewright/render/document"
	"fusewright/render/dxf"
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
	For string `help:"Make what one reader needs, and the dossier of it: builder, installer or reviewer; everything when not given. What an earlier run made for others goes." placeholder:"READER" enum:",builder,installer,reviewer" default:""`
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
	all, err := drawAll(review)
	if err != nil {
		return err
	}
	renderDrawn(out, review, all, c.For)
	if err := io.commitApart(out); err != nil {
		return err
	}
	shown.done()
	io.sayFiles(out)
	rep := report.New(review)
	for _, d := range all {
		if d.paper == schematicPaper {
			if err := proposePaper(io, review, schematic.Options{}, len(d.sheets)); err != nil {
				return err
			}
		}
	}
	io.say("%s: %s\n%s\n", rep.Design.Title, rep.Counts, rep.Caution)
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

// drawn is a paper with its sheets.
type drawn struct {
	*paper
	sheets []*scene.Sheet
	legend document.Legend
}

// renderDrawn renders every file of papers that are drawn: all, or those of a reader's
// set. What an earlier run made of the others goes.
func renderDrawn(out *outputs, r *harness.Review, all []drawn, reader string) {
	out.add("dossier.pdf", writeDossier(r, all, reader)) // the longest by far
	for _, d := range all {
		switch {
		case d.file == "":
		case reader == "" || d.serves(reader):
			out.addPaper(r, d)
		default:
			out.without(d)
		}
	}
}

// drawAll draws every paper, on all processors.
func drawAll(r *harness.Review) ([]drawn, error) {
	r.Remedies() // tried on the design itself, so before anything is drawn
	s, all, errs := subjectOf(r), make([]drawn, len(papers)), make([]error, len(papers))
	var wait sync.WaitGroup
	for i, p := range papers {
		all[i].paper = p
		if p.sheets == nil {
			continue
		}
		wait.Go(func() {
			if !p.shared { // while that one waits, others are drawn
				renderers <- struct{}{}
				defer func() { <-renderers }()
			}
			if all[i].sheets, errs[i] = p.sheets(s); p.legend != nil && errs[i] == nil {
				all[i].legend, errs[i] = p.legend(s)
			}
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// addPaper renders the files of a paper. One without sheets, as the layout of a
// harness without runs, has none, and what an earlier run made of it goes.
func (o *outputs) addPaper(r *harness.Review, d drawn) {
	if len(d.sheets) == 0 && d.paper.sheets != nil {
		o.without(d)
		return
	}
	if d.paper.sheets != nil {
		o.add(d.file+".pdf", pdfOf(r, d.title, slices.Concat(d.sheets, d.legend.Sheets)))
		o.addSheets(d.file, d.sheets, pngDPI, d.pictures...)
	}
	for _, t := range d.texts {
		o.add(d.file+"."+t.ending, func(b *bytes.Buffer) error { return t.write(b, r) })
	}
}

// without lets the files of a paper go that is not made now.
func (o *outputs) without(d drawn) {
	for _, ending := range d.endings() {
		o.replaces = append(o.replaces, d.file+"."+ending)
	}
	for _, format := range d.pictures {
		o.replaces = append(o.replaces, d.file+"-*."+format)
	}
}

// pdfOf writes sheets as one PDF with the design's title and author.
func pdfOf(r *harness.Review, kind string, sheets []*scene.Sheet) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		d := document.DocumentOf(r, kind)
		d.Sheets = sheets
		return pdf.Write(b, d)
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
