package page

import (
	"fusewright/harness"
	"fusewright/harness/formula/battery"
	"fusewright/harness/study/outlook"
)

// PlannerAlone is the planner for a reader without the program: the answers to the situations of
// the design, and the table of all combinations, from which planner_alone.js answers the rest.
// outlook.Table says what of it is exact.
type PlannerAlone struct {
	Plan    *Planner            `json:"-"`       // what can be asked, which stands in the model
	Answers map[string]*Outlook `json:"answers"` // by start
	Table   *outlook.Table      `json:"table"`
	Order   []ShedRow           `json:"order"`   // what may be switched off, first thing first
	Reserve float64             `json:"reserve"` // charge below which a start is not sure, at 25 °C
	Parked  string              `json:"parked"`  // "parked", "moored"
	Drain   string              `json:"drain"`
	Days    string              `json:"days"`
	Inexact string              `json:"inexact"` // a sentence for the page
}

// PlannerFor makes the planner of the page that is one file. It solves some hundred states.
func PlannerFor(r *harness.Review) *PlannerAlone {
	p := r.Outlook()
	a := &PlannerAlone{Plan: PlannerOf(r), Answers: map[string]*Outlook{}, Table: p.TableOf(), Order: []ShedRow{}, Parked: r.Design.Spoken().Parked,
		Drain: amps(r.Budget.StandbyA), Days: hours(24 * r.Budget.StandbyDays),
		Inexact: "What is to spare and where output meets demand are reckoned for each combination. How long the battery lasts is read " +
			"between reckoned points, for a full battery at 25 °C. Volts and loading are those of the design's situations alone."}
	if b := battery.Of(r.Design); b != nil {
		a.Reserve = b.StartReserve(battery.RatedC)
	}
	for _, s := range p.Starts[:len(r.Design.Situations)] {
		state := s.State
		state.ParkedH = parkedFirstH
		a.Answers[s.ID] = OutlookOf(r, p.Compute(state))
	}
	for _, s := range p.Order() {
		a.Order = append(a.Order, ShedRow{Name: s.Name, Set: s.Set})
	}
	return a
}
