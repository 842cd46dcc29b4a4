package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic"
	"fusewright/render/symbol"
)

// drawCmd draws the schematic.
type drawCmd struct {
	designArg
	Out   string `short:"o" help:"File to write; .svg, .pdf, .png or .dxf chooses the kind." default:"schematic.svg" placeholder:"FILE" type:"path"`
	DPI   int    `name:"dpi" help:"Dots per inch of a PNG." default:"150" placeholder:"N"`
	Bench bool   `help:"Leave the findings off, for the bench."`

	Symbols   string `help:"IEC or IEEE: symbols to IEC 60617 or IEEE 315; as in the design when not given." enum:",IEC,IEEE" default:"" placeholder:"SET"`
	Relays    string `help:"assembled or detached: relays as one part, or coil and contacts apart; as in the design when not given." enum:",assembled,detached" default:"" placeholder:"FORM"`
	Situation string `help:"Write the solved volts, amperes and fuse shares of this situation into the drawing." placeholder:"NAME"`
}

// Validate refuses resolutions that give an empty or a giant picture.
func (c *drawCmd) Validate() error {
	return checkPicture("--out", c.Out, c.DPI)
}

// checkPicture refuses a file of an unknown kind or an unusable resolution.
func checkPicture(option, path string, dpi int) error {
	if dpi < 20 || dpi > 1200 {
		return fmt.Errorf("--dpi %d is out of range (expected 20 to 1200)", dpi)
	}
	return endsIn(option, path, ".svg", ".pdf", ".png", ".dxf")
}

// Run draws all sheets.
func (c *drawCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	review.Remedies() // the bench sheet stands as the flagged one does
	opt := schematic.Options{NoFindings: c.Bench, Relays: c.Relays, Situation: c.Situation}
	if c.Symbols != "" {
		opt.Symbols = symbol.SetByName(c.Symbols)
	}
	if c.Situation != "" {
		if _, err := situationOf(review.Design, c.Situation); err != nil {
			return err
		}
	}
	drawing, err := schematic.Lay(review, opt)
	if err != nil {
		return err
	}
	sheets := drawing.Paint()
	bound := sheets // a PDF has the legend behind them, where it found no room
	if filepath.Ext(c.Out) == ".pdf" {
		bound = slices.Concat(sheets, drawing.Legend())
	}
	out, err := putDrawing(io, c.Out, c.DPI, review, schematicPaper.title, bound)
	if err != nil {
		return err
	}
	io.sayFiles(out)
	return proposePaper(io, review, opt, len(sheets))
}

// proposePaper tells of a larger paper on which the schematic takes fewer sheets than it
// has now.
func proposePaper(io *streams, review *harness.Review, opt schematic.Options, now int) error {
	size, sheets, err := schematic.Larger(review, opt, now)
	if size != "" {
		io.say("The schematic takes %s; on %s it takes %d: sheet: {size: %s}\n", wording.Count(now, "sheet", "sheets"), size, sheets, size)
	}
	return err
}

// putDrawing writes sheets to a file of the kind that its ending says; pictures
// of a second and further sheet get its number.
func putDrawing(io *streams, path string, dpi int, review *harness.Review, kind string, sheets []*scene.Sheet) (*outputs, error) {
	ext := filepath.Ext(path)
	whole := pdfOf(review, kind, sheets)
	if ext != ".pdf" {
		whole = func(b *bytes.Buffer) error { return writePicture(b, sheets[0], ext[1:], dpi) }
	}
	if ext == ".pdf" || len(sheets) == 1 && isLink(path) {
		out, name, err := outputsAt(path)
		if err != nil {
			return nil, err
		}
		out.add(name, whole)
		return out, io.commitApart(out)
	}
	out := newOutputs(filepath.Dir(path))
	out.addSheets(strings.TrimSuffix(filepath.Base(path), ext), sheets, dpi, ext[1:])
	return out, io.commitApart(out)
}
