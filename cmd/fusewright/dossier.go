package main

import (
	"bytes"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/study/ride"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/schematic"
	"fusewright/render/schematic/solved"
)

// schematicSheets are the sheets of one placement: the schematic, what found no room on
// it, and the schematic with the values of the heaviest situation, if there is one.
type schematicSheets struct{ plain, legend, solved []*scene.Sheet }

func drawSchematic(r *harness.Review) (s schematicSheets, err error) {
	d, err := schematic.Lay(r, schematic.Options{})
	if err != nil {
		return s, err
	}
	s.plain, s.legend = d.Paint(), d.Legend()
	if name := solved.HeaviestSituation(r); name != "" {
		if d, err = schematic.Solve(d, r, name); err != nil {
			return s, err
		}
		s.solved = d.Paint()
	}
	return s, nil
}

// rideSheets follows every ride of the design; none without rides.
func rideSheets(s *subject) ([]*scene.Sheet, error) {
	results, err := simulated(s.Review, s.Design.Rides)
	if err != nil || len(results) == 0 {
		return nil, err
	}
	return document.Rides(s.Review, results)
}

// simulated follows rides.
func simulated(r *harness.Review, rides []*design.Ride) ([]*ride.Result, error) {
	var results []*ride.Result
	for _, each := range rides {
		result, err := ride.Simulate(r.Circuit, each, ride.Options{})
		if err != nil {
			return nil, err
		}
		results = append(results, result)
	}
	return results, nil
}

// readers are who a set of papers can be for; the whole is for all of them.
const (
	builder   = "builder"
	installer = "installer"
	reviewer  = "reviewer"
)

// setTitle is the title of a reader's set; "" = the whole.
func setTitle(reader string) string {
	if reader == "" {
		return "Dossier"
	}
	return "Dossier for the " + reader
}

// sectionsOf are the papers of the dossier, or of a reader's set. Findings come first
// of all, and are left out when there are none: the cover says so.
func sectionsOf(r *harness.Review, all []drawn, reader string) []document.Section {
	var first, rest []document.Section
	for _, d := range all {
		s := document.Section{Title: d.title, Sheets: slices.Concat(d.sheets, d.legend)}
		switch {
		case reader == "" && d.apart, reader != "" && !d.isFor(reader):
		case d.paper == findingsPaper && len(r.Findings) == 0:
		case d.paper == findingsPaper:
			first = append(first, s)
		default:
			rest = append(rest, s)
		}
	}
	return append(first, rest...)
}

// isFor tells whether a paper is bound into a reader's set. What lies on the board at
// full size is bound into none.
func (p *paper) isFor(reader string) bool {
	return !p.board && slices.Contains(strings.Split(p.reader, ", "), reader)
}

// writeDossier writes them as one PDF.
func writeDossier(r *harness.Review, all []drawn, reader string) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		return pdf.Write(b, document.Dossier(r, setTitle(reader), sectionsOf(r, all, reader)))
	}
}
