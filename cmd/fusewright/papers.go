package main

import (
	"bytes"
	"fmt"
	"strings"
	"sync"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/cutting"
	"fusewright/harness/workshop/formboard"
	"fusewright/harness/workshop/purchase"
	"fusewright/render/document"
	"fusewright/render/layout"
	"fusewright/render/page"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// paper is one document of a harness. What build writes, what the dossier binds,
// the help of build and the table of the README follow from the list of papers.
type paper struct {
	title  string
	file   string // its files without their ending; "" = in the dossier alone
	reader string // who it is for
	shows  string // what, for the README
	apart  bool   // not bound into the whole dossier
	board  bool   // to lie on the board at full size: bound into no set
	// sheets draws it; none where the design has nothing for it. nil = it is no paper but a
	// file to look at on a screen, whose texts are all there is.
	sheets func(*subject) ([]*scene.Sheet, error)
	// legend is bound behind them in a PDF: what found no room on them.
	legend func(*subject) (document.Legend, error)
	// shared: drawn together with another, so that drawing it may be waiting.
	shared bool
	// pictures are the formats of which each sheet gives a file, beside the PDF.
	pictures []string
	texts    []textForm
}

// textForm is a file beside the PDF that is not made of its sheets.
type textForm struct {
	ending string
	write  func(b *bytes.Buffer, r *harness.Review) error
}

// subject is what papers are drawn of. What several have of it is made once, when one
// asks for it.
type subject struct {
	*harness.Review
	board     func() *formboard.Board
	schematic func() (schematicSheets, error)
}

func subjectOf(r *harness.Review) *subject {
	return &subject{r, sync.OnceValue(func() *formboard.Board { return formboard.Lay(r.Circuit) }),
		sync.OnceValues(func() (schematicSheets, error) { return drawSchematic(r) })}
}

// The papers that have commands of their own.
var (
	schematicPaper = &paper{title: "Schematic", file: "schematic", reader: "installer, reviewer", pictures: []string{"svg", "png"},
		shows:  "standard symbols, fed from the left; every wire with number, colour, size, length; findings flagged",
		sheets: func(s *subject) ([]*scene.Sheet, error) { d, err := s.schematic(); return d.plain, err },
		legend: func(s *subject) (document.Legend, error) { d, err := s.schematic(); return d.legend, err }}
	cutListPaper = &paper{title: "Cut list", file: "cut-list", reader: "installer",
		shows: "each wire with its cut length and what is in it, ends, terminals, strip lengths, label, a box to tick; " +
			"the order of work and what a test crimp must hold",
		sheets: plain(document.CutList),
		texts: []textForm{{"csv", func(b *bytes.Buffer, r *harness.Review) error {
			return document.CutListCSV(b, lengths.Of(r.Design), cutting.List(r.Circuit))
		}}}}
	billPaper = &paper{title: "Bill of materials", file: "bom", reader: "builder",
		shows:  "what to buy, with waste and spares, rounded to how it is sold",
		sheets: plain(func(r *harness.Review) []*scene.Sheet { return document.Bill(r, purchase.List(r.Circuit)) }),
		texts: []textForm{{"csv", func(b *bytes.Buffer, r *harness.Review) error {
			return document.BillCSV(b, purchase.List(r.Circuit))
		}}}}
	budgetPaper = &paper{title: "Charging budget", file: "budget", reader: "builder",
		shows:  "charging output against engine speed with each situation's demand, break-even speeds, load combinations",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return document.Budget(s.Review) },
		texts:  []textForm{{"svg", budgetPicture}}}
	ridesPaper = &paper{title: "Rides", reader: "builder", sheets: rideSheets,
		shows: "each ride of the design leg by leg: charge, volts and currents of each battery over time"}
	studyPaper = &paper{title: "Fault and protection study", file: "study", reader: "reviewer",
		shows:  "every short and single fault, what opens and when; fuse against wire, load and fuse; worst cases",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return document.Study(s.Review) },
		texts: []textForm{{"txt", func(b *bytes.Buffer, r *harness.Review) error {
			return report.WriteStudy(b, report.NewStudy(r))
		}}}}
	findingsPaper = &paper{title: "Findings", file: "findings", reader: "reviewer", sheets: plain(document.Findings),
		shows: "what is wrong, most severe first, with numbers, reason and remedy",
		texts: []textForm{{"txt", func(b *bytes.Buffer, r *harness.Review) error {
			return report.WriteText(b, report.New(r).ToKeep())
		}}, {"json", func(b *bytes.Buffer, r *harness.Review) error {
			return report.WriteJSON(b, report.New(r).ToKeep())
		}}}}
	benchPaper = &paper{title: "Bench test", file: "bench", reader: "installer",
		shows:  "the test before the panels go back: what each reading must be, and what a wrong one means",
		sheets: plain(func(r *harness.Review) []*scene.Sheet { return document.Bench(r, bench.Make(r.Circuit)) })}
)

// papers are all, in the order of the dossier.
var papers = []*paper{
	schematicPaper,
	{title: "Schematic with solved values", reader: "reviewer", shared: true,
		sheets: func(s *subject) ([]*scene.Sheet, error) { d, err := s.schematic(); return d.solved, err },
		shows:  "the schematic with the volts, amperes and fuse shares of the heaviest situation"},
	{title: "Layout", file: "layout", reader: "installer", pictures: []string{"svg"},
		shows:  "the loom to scale for the board: lengths, breakouts, bundles, covers, clamps",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return layout.Draw(s.Review, s.board()) }},
	{title: "Layout at full size", file: "layout-1to1", reader: "installer", apart: true, board: true,
		shows:  "the same in full size, long runs broken, to tape together",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return layout.FullSize(s.Review, s.board()) }},
	cutListPaper,
	{title: "Connection table", file: "connections", reader: "installer", sheets: func(s *subject) ([]*scene.Sheet, error) { return document.Connections(s.Review, s.board()), nil },
		shows: "which wire goes to which terminal"},
	billPaper,
	{title: "Fuse card", file: "fuse-card", reader: "installer", sheets: plain(document.FuseCard),
		shows: "the card for the lid"},
	{title: "Wire labels", file: "labels", reader: "installer", apart: true, sheets: plain(document.Labels),
		shows: "the wire labels, two a wire, on self-adhesive sheets",
		texts: []textForm{{"csv", func(b *bytes.Buffer, r *harness.Review) error {
			return document.LabelsCSV(b, cutting.List(r.Circuit))
		}}}},
	budgetPaper,
	ridesPaper,
	studyPaper,
	{title: "Voltage along each circuit", file: "voltages", reader: "reviewer",
		shows:  "where the volts go along each circuit",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return document.Profiles(s.Review) }},
	{title: "Wire loading", file: "loading", reader: "reviewer",
		shows:  "how far each wire is loaded",
		sheets: func(s *subject) ([]*scene.Sheet, error) { return document.Loading(s.Review) }},
	findingsPaper,
	benchPaper,
	{title: "Page", file: "page", reader: "builder, installer, reviewer", apart: true,
		shows: "to look at on a screen or phone, without a server or network, and to mail: the schematic to click in, findings, planner, " +
			"cut list and bench test with ticks and readings that the browser keeps",
		texts: []textForm{{"html", func(b *bytes.Buffer, r *harness.Review) error { return page.WriteOneFile(b, r) }}}},
	{title: "Sources", reader: "reviewer", sheets: plain(document.Sources),
		shows: "where each figure that was used comes from, and how certain it is"},
}

// plain makes the sheets of a paper that cannot fail.
func plain(sheets func(*harness.Review) []*scene.Sheet) func(*subject) ([]*scene.Sheet, error) {
	return func(s *subject) ([]*scene.Sheet, error) { return sheets(s.Review), nil }
}

// as writes the paper alone, in the form of a file ending: a text, else PDF.
func (p *paper) as(r *harness.Review, ending string) func(*bytes.Buffer) error {
	return func(b *bytes.Buffer) error {
		for _, t := range p.texts {
			if "."+t.ending == ending {
				return t.write(b, r)
			}
		}
		sheets, err := p.sheets(subjectOf(r))
		if err != nil {
			return err
		}
		return pdfOf(r, p.title, sheets)(b)
	}
}

// endings are those of its files, the PDF first if there is one.
func (p *paper) endings() []string {
	var all []string
	if p.sheets != nil {
		all = append([]string{"pdf"}, p.pictures...)
	}
	for _, t := range p.texts {
		all = append(all, t.ending)
	}
	return all
}

// paperHelp is the list of papers for the help of build.
func paperHelp() string {
	var b strings.Builder
	b.WriteString("Papers, for whom, and those apart; the others are bound in dossier.pdf:\n")
	for _, p := range papers {
		name := p.file
		if name == "" {
			name = "dossier"
		}
		fmt.Fprintf(&b, "\n  %-11s  %-12s  %s (%s)", name, strings.Join(p.endings(), " "), p.title, p.reader)
		if p.apart {
			b.WriteString(", apart")
		}
	}
	return b.String()
}
