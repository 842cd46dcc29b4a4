// Package report prints a review as text for people and as JSON for programs.
// Both come from the same Report, so that they cannot disagree. The JSON shape
// is versioned and described in docs/report.md.
package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/caution"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/workshop/cutting"
)

// Version is the version of the JSON shape. It rises when a field changes its
// meaning or goes; new fields do not raise it.
const Version = 1

// Caution stands on every report.
const Caution = caution.Report

// Report is a review in print order.
type Report struct {
	Fusewright int       `json:"fusewright_report"`
	Design     Heading   `json:"design"`
	Counts     Counts    `json:"counts"`
	Findings   []Finding `json:"findings"`
	// Causes group the open findings; Together is all their remedies in one copy.
	Causes     []CauseRow  `json:"causes,omitempty"`
	Together   *TrialRow   `json:"together,omitempty"`
	Situations []Situation `json:"situations"`
	Wires      []WireLimit `json:"wires,omitempty"`
	Budget     *Budget     `json:"budget,omitempty"`
	// Compared says that the findings were held against a baseline.
	Compared bool   `json:"compared,omitempty"`
	Caution  string `json:"caution"`

	lengths lengths.Unit
	starts  []StudyStart
}

// Heading names the design.
type Heading struct {
	File     string  `json:"file"`
	Title    string  `json:"title"`
	Vehicle  string  `json:"vehicle,omitempty"`
	Revision string  `json:"revision,omitempty"`
	Date     string  `json:"date,omitempty"`
	SystemV  float64 `json:"system_v"`
	Practice string  `json:"practice"`
}

// Counts of open findings by severity, and of accepted ones.
type Counts struct {
	Danger   int `json:"danger"`
	Fault    int `json:"fault"`
	Advice   int `json:"advice"`
	Accepted int `json:"accepted"`
}

// CountsOf counts findings.
func CountsOf(list []*finding.Finding) Counts {
	c := Counts{Danger: finding.Count(list, finding.Danger), Fault: finding.Count(list, finding.Fault),
		Advice: finding.Count(list, finding.Advice)}
	c.Accepted = len(list) - c.Danger - c.Fault - c.Advice
	return c
}

// Finding is one finding.
type Finding struct {
	Number    int      `json:"number"` // as in drawings and papers; shared by those printed as one
	Severity  string   `json:"severity"`
	Rule      string   `json:"rule"`
	Part      string   `json:"part"`
	Ref       string   `json:"ref,omitempty"`
	Wire      string   `json:"wire,omitempty"` // what the wire is to the part: "feed", "return"
	File      string   `json:"file"`
	Line      int      `json:"line"`
	Col       int      `json:"col"`
	What      string   `json:"what"`
	Numbers   []Number `json:"numbers,omitempty"`
	Situation string   `json:"situation,omitempty"`
	Why       string   `json:"why"`
	Change    string   `json:"change"`
	Source    string   `json:"source,omitempty"`
	Accepted  string   `json:"accepted,omitempty"`
	// Known says that the baseline has it already.
	Known bool `json:"known,omitempty"`
	// Cause is the same for findings of the rule that one thing causes; Figure is
	// what decides the finding, as an acceptance gives it, and Accept the entry that
	// would accept it, but for the reason.
	Cause  string `json:"cause,omitempty"`
	Figure string `json:"figure,omitempty"`
	Accept string `json:"accept,omitempty"`

	// UnsourcedShare is how much of what the finding is judged by, volts lost or amperes
	// allowed, rests on values from memory, without a source or assumed, 0 to 1; null =
	// not looked at. NoMargin: it is more than what lies between the figure and its limit.
	UnsourcedShare *float64 `json:"unsourced_share,omitempty"`
	NoMargin       bool     `json:"no_margin,omitempty"`

	of *finding.Finding
}

// Number is a figure with its unit; null when it has no finite value.
type Number struct {
	Name  string   `json:"name"`
	Value *float64 `json:"value"`
	Unit  string   `json:"unit"`

	lengths lengths.Unit // in which String prints metres
}

// Situation is the operating point in one situation. Loads and wires are empty
// when it could not be solved.
type Situation struct {
	Name      string  `json:"name"`
	Key       string  `json:"key"`
	EngineRPM float64 `json:"engine_rpm"`
	// Positions are those of switches that have several, by the switch's name.
	Positions map[string]string `json:"positions,omitempty"`
	Status    string            `json:"status"`
	Why       string            `json:"why,omitempty"`
	BatteryA  *float64          `json:"battery_a"`
	ChargingA *float64          `json:"charging_a"`
	// HeatWhy says what the wire temperatures of this situation lack; "" = nothing.
	HeatWhy string    `json:"heat_why,omitempty"`
	Loads   []LoadRow `json:"loads,omitempty"`
	Wires   []WireRow `json:"wires,omitempty"`
}

// LoadRow is a load at the operating point.
type LoadRow struct {
	Part    string   `json:"part"`
	Ref     string   `json:"ref"`
	On      bool     `json:"on"`
	Volts   *float64 `json:"volts"`
	Amperes *float64 `json:"amperes"`
	Watts   *float64 `json:"watts"`
	// ShareOfRated is the power as a share of the rated power.
	ShareOfRated *float64 `json:"share_of_rated"`
	// Drop is lost between the battery's posts and the load while it is on, and
	// Corner the worst that both may be here; null = off, or not known.
	DropV       *float64 `json:"drop_v"`
	CornerDropV *float64 `json:"corner_drop_v"`
	CornerVolts *float64 `json:"corner_volts"`
}

// WireRow is a wire at the operating point.
type WireRow struct {
	Number  string   `json:"number"`
	Size    string   `json:"size"`
	LengthM float64  `json:"length_m"` // to cut
	Amperes *float64 `json:"amperes"`
	DropV   *float64 `json:"drop_v"`
	LossW   *float64 `json:"loss_w"`
	// ConductorC is the temperature of the conductor; null = none below the
	// melting point of copper. Corner figures are the worst that may be here.
	ConductorC       *float64 `json:"conductor_c"`
	CornerAmperes    *float64 `json:"corner_amperes"`
	CornerConductorC *float64 `json:"corner_conductor_c"`
}

// WireLimit is what a wire may carry for good where it is laid, at the design's
// ambient and at the corner's.
type WireLimit struct {
	Number        string     `json:"number"`
	Allowed       AllowedRow `json:"allowed"`
	AllowedCorner AllowedRow `json:"allowed_corner"`
}

// Budget is the charging balance.
type Budget struct {
	VehicleA    *float64     `json:"vehicle_a"`
	StandbyA    *float64     `json:"standby_a"`
	StandbyDays *float64     `json:"standby_days"`
	StartAh     *float64     `json:"start_ah"` // what a start of the engine takes
	Starter     string       `json:"starter"`  // the part, or the library's row that is taken for it
	Lines       []BudgetLine `json:"lines"`
	KeyOff      []BudgetLine `json:"key_off,omitempty"` // situations with the key off and something on
	// Further is what the further batteries give with the key off and nothing on.
	Further []BankLine `json:"further_batteries,omitempty"`

	basis       string // what output and likely demand count with, in words
	lasts       string // how long a situation is taken to last, and one with the key off
	lastsOff    string
	spoken      design.Spoken
	start       battery.Start
	startBackAh float64
}

// BudgetLine is one situation's balance; null = none or never.
type BudgetLine struct {
	Situation    string     `json:"situation"`
	EngineRPM    float64    `json:"engine_rpm"`
	OutputA      *float64   `json:"output_a"`
	VehicleA     *float64   `json:"vehicle_a"`
	AccessoryA   *float64   `json:"accessory_a"`
	SpareA       *float64   `json:"spare_a"`
	LikelyA      *float64   `json:"likely_demand_a"` // with the tolerances of the loads
	ReturnHours  *float64   `json:"start_returned_hours"`
	BreakEvenRPM *float64   `json:"break_even_rpm"`
	BusV         *float64   `json:"bus_v"`
	BatteryA     *float64   `json:"battery_a"` // out of a full battery, duty counted
	BatteryHours *float64   `json:"battery_hours"`
	Opens        bool       `json:"protection_opens,omitempty"` // on what is drawn
	PeakA        *float64   `json:"peak_a"`                     // out of a full battery with all that is on drawing at once
	Further      []BankLine `json:"further_batteries,omitempty"`

	breaksEvenAt string // the break-even speed in words
}

// BankLine is what a further battery gives in a situation, on average; null hours = no end.
type BankLine struct {
	Battery  string   `json:"battery"`
	BatteryA *float64 `json:"battery_a"` // out of it; negative = it is charged
	PeakA    *float64 `json:"peak_a"`    // the same with all that is on drawing at once
	Hours    *float64 `json:"hours_to_reserve"`
	Opens    bool     `json:"protection_opens,omitempty"` // on what is drawn
	Reserve  float64  `json:"reserve"`                    // state of charge
	Charge   *float64 `json:"charge,omitempty"`           // state of charge in the situation; left out when full
	Sun      float64  `json:"sun,omitempty"`              // mean share of the panels' rated power, night counted
}

// lacking is a state of charge below full; nil = full.
func lacking(charge float64) *float64 {
	if charge == 1 {
		return nil
	}
	return &charge
}

// CautionOf is the caution on a report of a design.
func CautionOf(d *design.Design) string {
	text := Caution
	if d.Afloat() {
		text = caution.ReportAfloat
	}
	text = d.Cautioned(text)
	if d.NamesPetrol() {
		text += " " + caution.Petrol
	}
	return text
}

// New makes the report of a review.
func New(r *harness.Review) *Report {
	d := r.Design
	rep := &Report{
		Fusewright: Version,
		Design:     heading(d),
		Counts:     CountsOf(r.Findings),
		Findings:   []Finding{},
		Caution:    CautionOf(d),
		lengths:    lengths.Of(d),
	}
	if r.Cranking != nil {
		rep.starts = startRows(r.Cranking)
	}
	for _, f := range r.Findings {
		rep.Findings = append(rep.Findings, findingRow(f, rep.lengths))
	}
	for i, s := range r.Solutions {
		row := situation(r.Circuit, s)
		row.addCorners(r, i)
		rep.Situations = append(rep.Situations, row)
	}
	if r.Corners != nil {
		for _, w := range r.Circuit.Wires {
			rep.Wires = append(rep.Wires, WireLimit{w.Number,
				allowedRow(r.Corners, w, false), allowedRow(r.Corners, w, true)})
		}
	}
	if r.Budget != nil {
		rep.Budget = BudgetOf(r)
	}
	return rep
}

// ToKeep is the report for a file that is kept or sent on: it names the design
// without folders, which say who made it and where, and would make other bytes
// of the same design elsewhere. A report for the screen names it as it was given,
// so that the line can be opened.
func (rep *Report) ToKeep() *Report {
	kept := *rep
	kept.Design.File = filepath.Base(rep.Design.File)
	kept.Findings = slices.Clone(rep.Findings)
	for i := range kept.Findings {
		kept.Findings[i].File = filepath.Base(kept.Findings[i].File)
	}
	return &kept
}

// heading names the design a report is about.
func heading(d *design.Design) Heading {
	return Heading{
		File: d.File, Title: d.Title.Value, Vehicle: d.Vehicle.Value, Revision: d.Revision.Value,
		Date: d.Date.Value, SystemV: d.SystemV.Value, Practice: d.Practice.Name,
	}
}

func findingRow(f *finding.Finding, u lengths.Unit) Finding {
	row := Finding{
		Number: f.Number, Severity: f.Severity.String(), Rule: f.Rule, Part: f.Part, Ref: f.Ref,
		File: f.Pos.File, Line: f.Pos.Line, Col: f.Pos.Col,
		What: f.What, Situation: f.Situation, Why: f.Why, Change: f.Change,
		Source: f.Source, Accepted: f.Accepted, Wire: f.Wire, Known: f.Known,
		Cause: f.Cause, Figure: f.Figure.String(), of: f, NoMargin: f.Unsourced.NoMargin(),
	}
	if u := f.Unsourced; u.Unit != "" {
		row.UnsourcedShare = finite(u.Share())
	}
	if f.Accepted == "" {
		row.Accept = acceptance(f)
	}
	for _, n := range f.Numbers {
		row.Numbers = append(row.Numbers, Number{Name: n.Name, Value: finite(n.Value), Unit: n.Unit, lengths: u})
	}
	return row
}

func situation(c *circuit.Circuit, s *solve.Solution) Situation {
	row := Situation{
		Name: s.Situation.Name, Key: string(s.Situation.Key), EngineRPM: s.Situation.EngineRPM,
		Status: string(s.Status), Why: s.Why, Positions: map[string]string{},
	}
	at, _ := circuit.Positions(c, s.Situation)
	for sw, position := range at {
		row.Positions[sw.Name] = position
	}
	if s.Status != solve.Converged {
		return row
	}
	row.BatteryA, row.ChargingA = finite(s.BatteryA), finite(s.ChargingA)
	for _, b := range c.Branches {
		switch {
		case b.Kind == circuit.LoadBranch && b.Load.Load != nil:
			row.Loads = append(row.Loads, loadRow(s, b))
		case b.Kind == circuit.WireBranch:
			row.Wires = append(row.Wires, wireRow(s, b))
		}
	}
	return row
}

func loadRow(s *solve.Solution, b *circuit.Branch) LoadRow {
	v, a := s.Volts(b), s.Amps(b)
	return LoadRow{
		Part: b.Part.Name, Ref: b.Part.Ref, On: s.LoadOn[b.Index],
		Volts: finite(v), Amperes: finite(a), Watts: finite(v * a),
		ShareOfRated: finite(v * a / b.Load.PowerW),
	}
}

func wireRow(s *solve.Solution, b *circuit.Branch) WireRow {
	w, v, a := b.Wire, s.Volts(b), s.Amps(b)
	row := WireRow{
		Number: w.Number, LengthM: cutting.LengthM(w),
		Amperes: finite(a), DropV: finite(math.Abs(v)), LossW: finite(v * a),
	}
	if w.Spec.Size != nil {
		row.Size = w.Spec.Size.Label
	}
	return row
}

// lasting is how long a situation with the key so is taken to last.
func lasting(d *design.Design, key design.KeyState) string {
	return quantity.Plain(budget.LastsS(d, &design.Situation{Key: key}), quantity.Duration)
}

// BudgetOf is the rows of the charging budget.
func BudgetOf(r *harness.Review) *Budget {
	b := r.Budget
	out := &Budget{
		VehicleA: finite(b.VehicleA), StandbyA: finite(b.StandbyA), StandbyDays: finite(b.StandbyDays),
		Lines: []BudgetLine{}, basis: budget.OutputBasis(r.Design) + b.Beside() + b.ShuntBasis(r.Design) + " " + budget.LikelyBasis(r.Design),
		StartAh: finite(b.Start.Ah()), Starter: b.Start.Starter, start: b.Start, startBackAh: b.StartBackAh,
		lasts: lasting(r.Design, design.KeyOn), lastsOff: lasting(r.Design, design.KeyOff), spoken: r.Design.Spoken(),
	}
	for _, l := range b.Lines {
		out.Lines = append(out.Lines, budgetLine(l))
	}
	out.Further = bankLines(b.Parked, 0)
	for _, l := range b.KeyOff {
		out.KeyOff = append(out.KeyOff, budgetLine(l))
	}
	return out
}

func budgetLine(l *budget.Line) BudgetLine {
	line := BudgetLine{Situation: l.Situation.Name, EngineRPM: l.Situation.EngineRPM, breaksEvenAt: l.BreaksEvenAt()}
	if l.Usable {
		line.OutputA, line.VehicleA, line.AccessoryA = finite(l.OutputA), finite(l.VehicleA), finite(l.AccessoryA)
		line.BusV, line.BatteryA = finite(l.BusV), finite(l.BatteryA)
		line.LikelyA, line.ReturnHours, line.PeakA = finite(l.LikelyA), finite(l.ReturnHours), finite(l.PeakA)
		line.SpareA, line.BreakEvenRPM, line.BatteryHours = finite(l.SpareA), finite(l.BreakEvenRPM), finite(l.BatteryHours)
		if line.Opens = l.Opens; l.Opens {
			line.BatteryHours = new(float64)
		}
		line.Further = bankLines(l.Banks, l.Situation.SunShare)
	}
	return line
}

func bankLines(banks []budget.BankLine, sun float64) (list []BankLine) {
	for _, x := range banks {
		list = append(list, BankLine{x.Bank.Name, finite(x.A), finite(x.PeakA), finite(x.Hours), x.Opens, budget.Reserve(x.Bank), lacking(x.Charge), sun})
	}
	return list
}

// WriteJSON writes any report value indented, with a final newline. Characters
// that steer a terminal or turn the reading direction are written as \u escapes.
func WriteJSON(w io.Writer, value any) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(value); err != nil {
		return err
	}
	_, err := w.Write(escapeUnseen(b.Bytes()))
	return err
}

// escapeUnseen escapes what is not seen. Beyond plain line ends and spaces such
// characters stand only inside the texts of a JSON file.
func escapeUnseen(data []byte) []byte {
	unseen := func(r rune) bool { return r >= 0x7f && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) }
	if bytes.IndexFunc(data, unseen) < 0 {
		return data
	}
	var out []byte
	for _, r := range string(data) {
		if !unseen(r) {
			out = utf8.AppendRune(out, r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			out = fmt.Appendf(out, "\\u%04x", unit)
		}
	}
	return out
}

// finite rounds to nine significant digits, so that the last bits of a solution
// do not show, and gives nil for what JSON cannot hold.
func finite(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	if v != 0 {
		scale := math.Pow(10, 8-math.Floor(math.Log10(math.Abs(v))))
		if r := math.Round(v*scale) / scale; !math.IsNaN(r) && !math.IsInf(r, 0) {
			v = r
		}
	}
	if v == 0 {
		v = 0 // no negative zero
	}
	return &v
}
