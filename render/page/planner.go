package page

import (
	"math"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/charging"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/outlook"
)

// Planner is what can be asked of the view "Planner".
type Planner struct {
	Starts   []Start      `json:"starts"`
	Controls []Control    `json:"controls"`
	Output   [][2]float64 `json:"output"` // rpm, A: hot, ready to draw
	Marks    []SpeedMark  `json:"marks"`  // idle and cruise
	MostRPM  float64      `json:"mostRpm"`
	Basis    string       `json:"basis"`
	Noun     string       `json:"noun"` // "machine", "boat"
}

// SpeedMark is an engine speed with a name.
type SpeedMark struct {
	Name string  `json:"name"`
	RPM  float64 `json:"rpm"`
}

// Start is a situation or leg to begin with.
type Start struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Ride  bool   `json:"ride,omitempty"`
	State Asked  `json:"state"`
}

// Control is what one hand, or the day, sets.
type Control struct {
	ID    string   `json:"id"`
	Ref   string   `json:"ref,omitempty"`
	Title string   `json:"title"`
	Kind  string   `json:"kind"`
	Words []string `json:"words"`
	Note  string   `json:"note,omitempty"`
}

// Asked is a state, as the page asks for it.
type Asked struct {
	Start   string            `json:"start"`
	Key     string            `json:"key"` // "on" or "off"
	RPM     float64           `json:"speedPerMin"`
	AirC    float64           `json:"airC"`
	ParkedH float64           `json:"parkedH"`
	Charge  float64           `json:"charge"`
	Set     map[string]string `json:"set"`
}

// State is what the planner takes.
func (a Asked) State() outlook.State {
	return outlook.State{Start: a.Start, KeyOn: a.Key != "off", SpeedPerMin: a.RPM, AirC: a.AirC, ParkedH: a.ParkedH, Charge: a.Charge, Set: a.Set}
}

func asked(s outlook.State) Asked {
	key := "off"
	if s.KeyOn {
		key = "on"
	}
	return Asked{s.Start, key, s.SpeedPerMin, s.AirC, s.ParkedH, s.Charge, s.Set}
}

// parkedFirstH is how long a state begins with standing: two days.
const parkedFirstH = 48

// plannerOf is nothing: the page asks for it when the view is first seen, since legs of rides begin as
// those before them end, and a save waits for no ride. The page that is one file has it in PlannerAlone.
func plannerOf(*harness.Review) any { return nil }

// PlannerOf makes it. It follows each ride of a review once.
func PlannerOf(r *harness.Review) *Planner {
	p, d := r.Outlook(), r.Design
	m := &Planner{Noun: d.Spoken().Noun, Basis: budget.OutputBasis(d) + r.Budget.Beside(), Output: [][2]float64{}, Starts: []Start{}, Controls: []Control{}}
	for i, s := range p.Starts {
		a := asked(s.State)
		a.ParkedH = parkedFirstH
		m.Starts = append(m.Starts, Start{s.ID, s.Title, i >= len(d.Situations), a})
	}
	for _, c := range p.Controls {
		m.Controls = append(m.Controls, controlRow(r, c))
	}
	if curve := charging.Of(&d.Charging); len(r.Budget.Output) > 0 && curve.CutIn() < r.Budget.Output[0].RPM {
		m.Output = append(m.Output, [2]float64{curve.CutIn(), 0})
	}
	for _, x := range r.Budget.Output {
		m.Output = append(m.Output, [2]float64{x.RPM, x.CurrentA})
		m.MostRPM = math.Max(m.MostRPM, x.RPM)
	}
	for _, x := range []SpeedMark{{"idle", d.Charging.IdleRPM.Value}, {"cruise", d.Charging.CruiseRPM.Value}} {
		if x.RPM > 0 {
			m.Marks = append(m.Marks, x)
		}
	}
	return m
}

func controlRow(r *harness.Review, c *outlook.Control) Control {
	row := Control{ID: c.ID, Title: c.Title, Kind: string(c.Kind), Words: c.Words}
	if part := r.Circuit.PartOf(c.Part()); part != nil {
		row.Ref = part.Ref
	}
	var names []string
	for _, l := range c.Loads {
		if design.Part(l) != c.Part() {
			names = append(names, l.Name)
		}
	}
	switch {
	case len(names) > 0:
		row.Note = wording.Some(names, 4)
	case c.Kind != outlook.ByHand && string(c.Kind) != c.Title:
		row.Note = string(c.Kind)
	}
	if len(names) > 0 && (c.Kind == outlook.ByWater || c.Kind == outlook.ByPush || c.Kind == outlook.Latch) {
		row.Note += " · " + string(c.Kind)
	}
	return row
}

// Outlook is the answer to a state.
type Outlook struct {
	State   Asked             `json:"state"`
	Words   map[string]string `json:"words"`
	Trouble string            `json:"trouble,omitempty"`

	// Of the picture, in A and rpm; null = none.
	OutputA     *float64     `json:"outputA"`
	DemandA     *float64     `json:"demandA"`  // now
	RunningA    *float64     `json:"runningA"` // with the engine running
	LikelyA     *float64     `json:"likelyA"`
	VehicleA    *float64     `json:"vehicleA"`
	SpareA      *float64     `json:"spareA"`
	EvenRPM     *float64     `json:"evenRpm"`
	SpareText   string       `json:"spareText"`
	DemandText  string       `json:"demandText"`
	RunningText string       `json:"runningText"`
	Says        []string     `json:"says"` // the picture in words
	Big         []Big        `json:"big"`
	Drawn       []Drawn      `json:"drawn"`
	Loads       []LoadRow    `json:"loads"`
	Fuses       []LoadingRow `json:"fuses"`
	Wires       []LoadingRow `json:"wires"`
	MoreFuses   int          `json:"moreFuses,omitempty"` // that carry less
	MoreWires   int          `json:"moreWires,omitempty"`
	Sets        *Sets        `json:"sets,omitempty"`
	Shed        []ShedRow    `json:"shed"`
	Kept        string       `json:"kept,omitempty"`
	Apart       string       `json:"apart,omitempty"` // a sentence
}

// Big is one of the large figures: what it is, the figure, its unit, and a line below.
type Big struct {
	Label string `json:"label"`
	Value string `json:"value"`
	Unit  string `json:"unit,omitempty"`
	Note  string `json:"note,omitempty"`
	Tone  string `json:"tone,omitempty"` // "short", "spare" or ""
}

// Drawn is what a control switches, or what has none.
type Drawn struct {
	ID   string `json:"id,omitempty"`
	Name string `json:"name"`
	Text string `json:"text"`
	On   bool   `json:"on"`
}

// LoadRow is a load with what it has.
type LoadRow struct {
	Ref    string  `json:"ref"`
	Name   string  `json:"name"`
	V      string  `json:"v"`
	WorstV string  `json:"worstV"`
	Drop   string  `json:"drop"`
	Worst  string  `json:"worst"`
	Limit  string  `json:"limit"`
	Share  float64 `json:"share"`          // of the drop at worst in the limit
	Over   string  `json:"over,omitempty"` // how grave what is above the limit is
}

// LoadingRow is a fuse or wire with what it carries of what it may.
type LoadingRow struct {
	Ref   string  `json:"ref"`
	Name  string  `json:"name"`
	A     string  `json:"a"`
	Worst string  `json:"worst"`
	May   string  `json:"may"`
	Share float64 `json:"share"` // nominal of what it may; above 9 where that is nothing
	Hot   string  `json:"hot,omitempty"`
	Over  string  `json:"over,omitempty"` // how grave what is above it is
}

// Sets are the largest sets that run together.
type Sets struct {
	Capacity string   `json:"capacity"`
	Columns  []Column `json:"columns"`
	Rows     []SetRow `json:"rows"`
	Complete bool     `json:"complete"`
	Now      SetRow   `json:"now"`
}

// Column is what one hand switches.
type Column struct {
	Name string `json:"name"`
	A    string `json:"a"`
}

// SetRow is one set.
type SetRow struct {
	Has   []bool            `json:"has"`
	Draws string            `json:"draws"`
	Spare string            `json:"spare"`
	Short bool              `json:"short,omitempty"`
	Set   map[string]string `json:"set,omitempty"`
}

// ShedRow is one step of switching off.
type ShedRow struct {
	Name  string            `json:"name"`
	Gains string            `json:"gains,omitempty"`
	Left  string            `json:"left,omitempty"`
	Short bool              `json:"short,omitempty"`
	Off   bool              `json:"off,omitempty"` // already
	Set   map[string]string `json:"set,omitempty"`
}

// mostRows is how many fuses and wires the page lists, the most loaded first.
const mostRows = 40

// number is a finite number, else null.
func number(v float64) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	return &v
}

func amps(v float64) string { return quantity.Format(v, quantity.Current) }

// signed is a current with its sign.
func signed(v float64) string {
	if v > 0 {
		return "+" + amps(v)
	}
	return amps(v)
}

// OutlookOf puts the answer to a state into words.
func OutlookOf(r *harness.Review, f *outlook.Figures) *Outlook {
	o := &Outlook{State: asked(f.State), Words: f.Words, Trouble: f.Trouble, Says: []string{}, Big: []Big{}, Drawn: []Drawn{},
		Loads: []LoadRow{}, Fuses: []LoadingRow{}, Wires: []LoadingRow{}, Shed: []ShedRow{}}
	if f.Trouble != "" {
		o.Big = append(o.Big, parkedBig(r, f.State, f.Parked))
		return o
	}
	o.OutputA, o.DemandA, o.RunningA = number(f.OutputA), number(f.VehicleA+f.AccessoryA), number(f.RunningA)
	o.LikelyA, o.VehicleA, o.SpareA, o.EvenRPM = number(f.LikelyA), number(f.VehicleA), number(f.SpareA), number(f.BreakEvenRPM)
	o.SpareText, o.DemandText, o.RunningText = signed(f.SpareA), amps(f.VehicleA+f.AccessoryA), amps(f.RunningA)
	if f.State.SpeedPerMin == 0 {
		o.DemandText = amps(outlook.OutA(f.Line))
		out := outlook.OutA(f.Line)
		o.DemandA = &out
	}
	o.Says, o.Big = sentences(r, f), bigs(r, f)
	for _, x := range f.Drawn {
		o.Drawn = append(o.Drawn, Drawn{x.ID, x.Name, amps(x.A), x.On})
	}
	o.Drawn = append(o.Drawn, Drawn{Name: "the " + r.Design.Spoken().Noun + " itself", Text: amps(f.VehicleA), On: true})
	for _, x := range f.Loads {
		if !x.On {
			continue
		}
		worst, limit := quantity.Against(x.DropV.Corner, x.LimitV, quantity.Voltage)
		o.Loads = append(o.Loads, LoadRow{x.Ref, x.Load.Name, quantity.Format(x.V.Nominal, quantity.Voltage), quantity.Format(x.V.Corner, quantity.Voltage),
			quantity.Format(x.DropV.Nominal, quantity.Voltage), worst, limit, share(x.DropV.Corner / x.LimitV), overLimit(x)})
	}
	o.Fuses, o.Wires = loadings(f.Fuses), loadings(f.Wires)
	o.MoreFuses, o.MoreWires = max(0, len(o.Fuses)-mostRows), max(0, len(o.Wires)-mostRows)
	o.Fuses, o.Wires = o.Fuses[:len(o.Fuses)-o.MoreFuses], o.Wires[:len(o.Wires)-o.MoreWires]
	for _, x := range f.Shed {
		row := ShedRow{Name: x.Name, Off: x.Off, Set: x.Set}
		if !x.Off {
			row.Gains, row.Left, row.Short = amps(x.GainsA), amps(x.LeftA), f.State.SpeedPerMin > 0 && x.LeftA < 0
		}
		o.Shed = append(o.Shed, row)
	}
	if len(f.Kept) > 0 {
		o.Kept = wording.Some(f.Kept, 4)
	}
	o.Sets, o.Apart = setsOf(f), apart(f)
	return o
}

// overLimit is how grave a load's drop is: what is lost at worst alone is only suspected.
func overLimit(x outlook.Load) string {
	switch {
	case !(x.DropV.Corner > x.LimitV):
		return ""
	case x.Load.Critical && x.DropV.Nominal > 2*x.LimitV:
		return finding.Danger.String()
	case x.DropV.Nominal > x.LimitV:
		return finding.Fault.String()
	}
	return finding.Advice.String()
}

// share is a finite share for a bar.
func share(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return math.Min(v, 9.99)
}

func loadings(list []outlook.Loading) []LoadingRow {
	rows := []LoadingRow{}
	for _, x := range list {
		if x.A.Corner == 0 {
			continue
		}
		a, may := quantity.Against(x.A.Nominal, x.MayA, quantity.Current)
		row := LoadingRow{Ref: x.Ref, Name: x.Name, A: a, Worst: amps(x.A.Corner), May: may, Share: share(x.Share)}
		switch {
		case x.Share > 1 && x.Branch.Wire != nil && x.C > x.Branch.Wire.Spec.Type.ClassC:
			row.Over = finding.Danger.String()
		case x.Share > 1:
			row.Over = finding.Fault.String()
		case x.A.Corner > x.MayA:
			row.Over = finding.Advice.String()
		}
		if !math.IsNaN(x.C) {
			row.Hot = quantity.Format(x.C, quantity.Temperature)
		}
		rows = append(rows, row)
	}
	return rows
}

// apart says which batteries' loads are left out of sets and of what to switch off; "" = none.
func apart(f *outlook.Figures) string {
	if len(f.Apart) == 0 {
		return ""
	}
	return "What " + wording.And(f.Apart) + " feeds is not among it: a charger takes no more for it, and that battery gives the rest."
}

func setsOf(f *outlook.Figures) *Sets {
	if f.Sets.Columns == nil {
		return nil
	}
	s := &Sets{Capacity: amps(f.Sets.CapacityA), Complete: f.Sets.Complete, Columns: []Column{}, Rows: []SetRow{}}
	now := SetRow{Spare: amps(f.SpareA), Short: f.SpareA < 0, Draws: amps(f.Sets.CapacityA - f.SpareA)}
	for _, c := range f.Sets.Columns {
		s.Columns = append(s.Columns, Column{c.Name, amps(c.A)})
		now.Has = append(now.Has, c.On)
	}
	s.Now = now
	for _, x := range f.Sets.Rows {
		s.Rows = append(s.Rows, SetRow{Has: x.Has, Draws: amps(x.DrawsA), Spare: amps(x.SpareA), Set: x.Set})
	}
	return s
}
