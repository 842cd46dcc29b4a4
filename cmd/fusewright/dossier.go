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
type schematicSheets struct {
	plain, solved []*scene.Sheet
	legend        document.Legend
}

func drawSchematic(r *harness.Review) (s schematicSheets, err error) {
	d, err := schematic.Lay(r, schematic.Options{})
	if err != nil {
		return s, err
	}
	s.plain, s.legend = d.Paint(), document.Legend{Sheets: d.Legend(), Block: d.Block(document.BlockMM)}
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
		s := document.Section{Title: d.title, Sheets: d.sheets}
		if !slices.ContainsFunc(all, func(o drawn) bool { return o.bound(reader) && explains(o.sheets, d.legend.Sheets) }) {
			s.Legend = d.legend
		}
		switch {
		case !d.bound(reader):
		case d.paper == findingsPaper && len(r.Findings) == 0:
		case d.paper == findingsPaper:
			first = append(first, s)
		default:
			rest = append(rest, s)
		}
	}
	return append(first, rest...)
}

// bound tells whether a paper is in a reader's set, or in the whole.
func (p *paper) bound(reader string) bool {
	return p.sheets != nil && (reader == "" && !p.apart || reader != "" && p.isFor(reader))
}

// explains tells whether sheets explain all that a legend does.
func explains(sheets, legend []*scene.Sheet) bool {
	given := explained(sheets)
	for what := range explained(legend) {
		if !given[what] {
			return false
		}
	}
	return true
}

// explained are the lists of sheets, and the symbols in them.
func explained(sheets []*scene.Sheet) map[string]bool {
	found := map[string]bool{}
	for _, s := range sheets {
		for _, item := range s.Items {
			if g := item.Begin; g != nil && (g.Class == "list" || g.Class == "legend") {
				found[g.Class+" "+g.Title] = true
			}
		}
	}
	return found
}

// isFor tells whether a paper is bound into a reader's set. What lies on the board at
// full size is bound into none.
func (p *paper) isFor(reader string) bool { return !p.board && p.serves(reader) }

// serves tells whether a paper is for a reader.
func (p *paper) serves(reader string) bool {
	return slices.Contains(strings.Split(p.reader, ", "), reader)
}

// writeDossier writes them as one PDF.
func writeDossier(r *harness.Review, all []drawn, reader string) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		return pdf.Write(b, document.Dossier(r, setTitle(reader), sectionsOf(r, all, reader)))
	}
}
