package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"fusewright/render/schematic"
	"fusewright/render/symbol"
)

// drawCmd draws the schematic.
type drawCmd struct {
	designArg
	Out   string `short:"o" help:"File to write; .svg, .pdf, .png or .dxf chooses the kind." default:"schematic.svg" placeholder:"FILE" type:"path"`
	DPI   int    `name:"dpi" help:"Dots per inch of a PNG." default:"150" placeholder:"N"`
	Bench bool   `help:"Leave the findings off, for the bench."`

	Symbols   string `help:"IEC or IEEE: symbols after IEC 60617 or IEEE 315; left out: as the design says." enum:",IEC,IEEE" default:"" placeholder:"SET"`
	Relays    string `help:"assembled or detached: relays as one part, or coil and contacts apart; left out: as the design says." enum:",assembled,detached" default:"" placeholder:"FORM"`
	Situation string `help:"Write the solved volts, amperes and fuse shares of this situation into the drawing." placeholder:"NAME"`
}

// Validate refuses resolutions that give an empty or a giant picture.
func (c *drawCmd) Validate() error {
	if c.DPI < 20 || c.DPI > 1200 {
		return fmt.Errorf("--dpi %d is out of range (expected 20 to 1200)", c.DPI)
	}
	switch filepath.Ext(c.Out) {
	case ".svg", ".pdf", ".png", ".dxf":
		return nil
	}
	return fmt.Errorf("--out %s has no known ending (expected .svg, .pdf, .png or .dxf)", filepath.Base(c.Out))
}

// Run draws all sheets; pictures of a second and further sheet get its number.
func (c *drawCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	opt := schematic.Options{NoFindings: c.Bench, Relays: c.Relays, Situation: c.Situation}
	if c.Symbols != "" {
		opt.Symbols = symbol.SetByName(c.Symbols)
	}
	if c.Situation != "" {
		if _, err := situationOf(review.Design, c.Situation); err != nil {
			return err
		}
	}
	sheets, err := schematic.Draw(review, opt)
	if err != nil {
		return err
	}
	ext := filepath.Ext(c.Out)
	out := newOutputs(filepath.Dir(c.Out))
	name := strings.TrimSuffix(filepath.Base(c.Out), ext)
	if ext == ".pdf" {
		err = out.add(filepath.Base(c.Out), pdfOf(review, "Schematic", sheets))
	}
	for i, s := range sheets {
		if ext == ".pdf" || err != nil {
			break
		}
		file := name + ext
		if i > 0 {
			file = fmt.Sprintf("%s-%d%s", name, i+1, ext)
		}
		err = out.add(file, func(b *bytes.Buffer) error { return writePicture(b, s, ext[1:], c.DPI) })
	}
	if err != nil {
		return err
	}
	if err := out.commit(); err != nil {
		return err
	}
	for _, file := range out.names {
		io.say("%s\n", filepath.Join(out.dir, file))
	}
	return nil
}
