package main

import (
	"bytes"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/study/ride"
	"fusewright/render/document"
	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/schematic"
	"fusewright/render/schematic/solved"
)

// solvedSheets is the schematic with the values of the heaviest situation.
func solvedSheets(s *subject) ([]*scene.Sheet, error) {
	name := solved.HeaviestSituation(s.Review)
	if name == "" {
		return nil, nil
	}
	return schematic.Draw(s.Review, schematic.Options{Situation: name})
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

// sectionsOf are the papers of the dossier.
func sectionsOf(all []drawn) []document.Section {
	var sections []document.Section
	for _, d := range all {
		if !d.apart {
			sections = append(sections, document.Section{Title: d.title, Sheets: d.sheets})
		}
	}
	return sections
}

// writeDossier writes them as one PDF.
func writeDossier(r *harness.Review, all []drawn) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error { return pdf.Write(b, document.Dossier(r, sectionsOf(all))) }
}
