package main

import (
	"bytes"
	"fmt"

	"fusewright/harness"
	"fusewright/harness/bench"
	"fusewright/harness/formboard"
	"fusewright/harness/purchase"
	"fusewright/harness/ride"
	"fusewright/render/document"
	"fusewright/render/layout"
	"fusewright/render/pdf"
	"fusewright/render/scene"
	"fusewright/render/schematic"
)

// solvedSheets is the schematic with the values of the heaviest situation.
func solvedSheets(r *harness.Review) ([]*scene.Sheet, error) {
	name := schematic.HeaviestSituation(r)
	if name == "" {
		return nil, nil
	}
	return schematic.Draw(r, schematic.Options{Situation: name})
}

// dossierPapers are the sections of the dossier in order. One without sheets is
// left out.
var dossierPapers = []struct {
	title  string
	sheets func(*harness.Review) ([]*scene.Sheet, error)
}{
	{"Schematic", func(r *harness.Review) ([]*scene.Sheet, error) { return schematic.Draw(r, schematic.Options{}) }},
	{"Schematic with solved values", solvedSheets},
	{"Layout", func(r *harness.Review) ([]*scene.Sheet, error) {
		return layout.Draw(r, formboard.Lay(r.Circuit), layout.Options{})
	}},
	{"Cut list", plain(document.CutList)},
	{"Connection table", plain(document.Connections)},
	{"Bill of materials", func(r *harness.Review) ([]*scene.Sheet, error) {
		return document.Bill(r, purchase.List(r.Circuit)), nil
	}},
	{"Fuse card", plain(document.FuseCard)},
	{"Charging budget", document.Budget},
	{"Rides", rideSheets},
	{"Fault and protection study", document.Study},
	{"Voltage along each circuit", document.Profiles},
	{"Wire loading", document.Loading},
	{"Findings", plain(document.Findings)},
	{"Bench test", func(r *harness.Review) ([]*scene.Sheet, error) {
		return document.Bench(r, bench.Make(r.Circuit)), nil
	}},
	{"Sources", plain(document.Sources)},
}

// plain makes a paper of one that cannot fail.
func plain(sheets func(*harness.Review) []*scene.Sheet) func(*harness.Review) ([]*scene.Sheet, error) {
	return func(r *harness.Review) ([]*scene.Sheet, error) { return sheets(r), nil }
}

// rideSheets follows every ride of the design; none without rides.
func rideSheets(r *harness.Review) ([]*scene.Sheet, error) {
	var results []*ride.Result
	for _, each := range r.Design.Rides {
		result, err := ride.Simulate(r.Circuit, each, ride.Options{})
		if err != nil {
			return nil, err
		}
		results = append(results, result)
	}
	if len(results) == 0 {
		return nil, nil
	}
	return document.Rides(r, results)
}

// dossierOf makes the sections of the dossier. Papers that are made already are
// given by their titles.
func dossierOf(r *harness.Review, made map[string][]*scene.Sheet) ([]document.Section, error) {
	var sections []document.Section
	for _, p := range dossierPapers {
		sheets, ok := made[p.title]
		if !ok {
			var err error
			if sheets, err = p.sheets(r); err != nil {
				return nil, fmt.Errorf("%s: %w", p.title, err)
			}
		}
		sections = append(sections, document.Section{Title: p.title, Sheets: sheets})
	}
	return sections, nil
}

// writeDossier writes all papers as one PDF.
func writeDossier(r *harness.Review, made map[string][]*scene.Sheet) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		sections, err := dossierOf(r, made)
		if err != nil {
			return err
		}
		return pdf.Write(b, document.Dossier(r, sections))
	}
}
