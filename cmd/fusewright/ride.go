package main

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/study/ride"
	"fusewright/render/document"
	"fusewright/render/report"
	"fusewright/render/svg"
)

// rideCmd follows the battery through the rides of a design.
type rideCmd struct {
	designArg
	Ride string `arg:"" optional:"" help:"The ride; all of the design's when not given."`
	format
	Out string `short:"o" help:"Draw it to this file instead: .svg (one ride) or .pdf." placeholder:"FILE" type:"path"`
}

// Validate refuses endings of other kinds.
func (c *rideCmd) Validate() error { return endsIn("--out", c.Out, ".svg", ".pdf") }

// Run prints rides as text or JSON, or draws them.
func (c *rideCmd) Run(io *streams, cli *program) error {
	review, err := c.assess(io, cli)
	if err != nil {
		return err
	}
	rides, err := c.chosen(review.Design)
	if err != nil {
		return err
	}
	results, err := simulated(review, rides)
	if err != nil {
		return err
	}
	if c.Out != "" {
		return c.draw(io, review, results)
	}
	rep := report.NewRides(report.New(review), review.Design, results, review.Cranking)
	err = printed(io, func(b *bytes.Buffer) error {
		if c.json() {
			return report.WriteJSON(b, rep)
		}
		return report.WriteRides(b, rep)
	})
	return cmp.Or(err, toTheEnd(results))
}

// toTheEnd ends with findings where a ride was given up: what came after is not known.
func toTheEnd(results []*ride.Result) error {
	if slices.ContainsFunc(results, func(r *ride.Result) bool { return r.GivenUp }) {
		return exitCode(exitFindings)
	}
	return nil
}

// chosen is the ride named, or all.
func (c *rideCmd) chosen(d *design.Design) ([]*design.Ride, error) {
	if len(d.Rides) == 0 {
		return nil, fmt.Errorf("%s has no rides (expected a section `rides`; see docs/format.md)", d.File)
	}
	if c.Ride == "" {
		return d.Rides, nil
	}
	var names []string
	for _, r := range d.Rides {
		if strings.EqualFold(r.Name, c.Ride) {
			return []*design.Ride{r}, nil
		}
		names = append(names, r.Name)
	}
	return nil, fmt.Errorf("%s: %w", d.File, notFound("ride", c.Ride, names))
}

func (c *rideCmd) draw(io *streams, review *harness.Review, results []*ride.Result) error {
	sheets, err := document.Rides(review, results)
	if err != nil {
		return err
	}
	switch {
	case filepath.Ext(c.Out) == ".pdf":
		return cmp.Or(writeFile(io, c.Out, pdfOf(review, ridesPaper.title, sheets)), toTheEnd(results))
	case len(sheets) > 1:
		return fmt.Errorf("%s holds one page and there are %d: name one ride, or write a .pdf", c.Out, len(sheets))
	}
	return cmp.Or(writeFile(io, c.Out, func(b *bytes.Buffer) error { return svg.Write(b, sheets[0]) }), toTheEnd(results))
}
