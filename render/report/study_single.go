package report

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// StudyLost is a shared return that is lost.
type StudyLost struct {
	Ref      string     `json:"ref"`
	Part     string     `json:"part"`
	Shared   []string   `json:"shared_by"`
	Affected []StudyHit `json:"affected"`
	Unsolved []string   `json:"unsolved,omitempty"`
}

// StudyHit is what the loss of a return does to one part.
type StudyHit struct {
	Ref       string   `json:"ref"`
	Part      string   `json:"part"`
	Effect    string   `json:"effect"`
	Situation string   `json:"situation"`
	BeforeV   *float64 `json:"before_v"`
	AfterV    *float64 `json:"after_v"`
}

// StudyStrung is a fault in a string of loads in series.
type StudyStrung struct {
	Ref       string   `json:"ref"`
	Part      string   `json:"part"`
	Fault     string   `json:"fault"`               // shorted, touches the frame
	Suffers   string   `json:"suffers,omitempty"`   // the load that gets most of what it bears; "" = none is on in any situation
	BeforeV   *float64 `json:"before_v,omitempty"`  // of it
	AfterV    *float64 `json:"after_v,omitempty"`   // of it
	BearsV    *float64 `json:"bears_v,omitempty"`   // its maximum, else 1.5 times what it is rated for
	Over      bool     `json:"over"`                // it gets more
	Situation string   `json:"situation,omitempty"` // where that is most
	Unsolved  []string `json:"unsolved,omitempty"`
}

// StudyAbreast is one of several wires side by side that is lost.
type StudyAbreast struct {
	Lost      string   `json:"lost"`
	Left      string   `json:"left,omitempty"` // "" = none carries anything
	Situation string   `json:"situation,omitempty"`
	BeforeA   *float64 `json:"before_a"`
	AfterA    *float64 `json:"after_a"`
	Unsolved  []string `json:"unsolved,omitempty"`
}

// StudyWeld is a relay contact that no longer opens.
type StudyWeld struct {
	Contact string   `json:"contact"`
	Part    string   `json:"part"`
	Live    []string `json:"live"`           // whatever anyone does
	ByHand  []string `json:"live_by_switch"` // while a switch is closed
	DrawA   *float64 `json:"draw_a"`
}

// StudyCondition is a supply condition of the exposures.
type StudyCondition struct {
	Volts     *float64 `json:"volts"`
	Seconds   *float64 `json:"seconds"`
	Source    string   `json:"source"`
	Certainty string   `json:"certainty"`
}

// StudyExposure is a part under overvoltage and a reversed battery.
type StudyExposure struct {
	Ref     string   `json:"ref"`
	Part    string   `json:"part"`
	HighV   *float64 `json:"high_v"`
	BearsV  *float64 `json:"bears_v"`
	High    string   `json:"high"`               // bears it, exposed, not known, in no situation
	AsIfOn  bool     `json:"as_if_on,omitempty"` // no situation with the engine running turns it on
	Reached string   `json:"reached"`            // by a reversed battery: at once, by switch, with the key, never
	Suffers string   `json:"suffers"`            // yes, not known, no
}

func (rep *StudyReport) addSingle(s *fault.Study) {
	for _, l := range s.Lost {
		rep.Lost = append(rep.Lost, lostRow(l))
	}
	for _, a := range s.Abreast {
		row := StudyAbreast{Lost: a.Lost.Number, BeforeA: finite(a.BeforeA), AfterA: finite(a.AfterA), Unsolved: a.Unsolved}
		if a.Left != nil {
			row.Left, row.Situation = a.Left.Number, a.Situation.Name
		}
		rep.Abreast = append(rep.Abreast, row)
	}
	for _, x := range s.Strung {
		rep.Strung = append(rep.Strung, strungRow(x))
	}
	for _, w := range s.Welded {
		rep.Welded = append(rep.Welded, weldRow(w))
	}
	rep.High, rep.Reverse = conditionOf(s.High), conditionOf(s.Reverse)
	for _, e := range s.Exposed {
		rep.Exposed = append(rep.Exposed, exposureRow(e))
	}
}

func conditionOf(c fault.Condition) StudyCondition {
	return StudyCondition{Volts: finite(c.Volts), Seconds: finite(c.Seconds), Source: c.Source.Text,
		Certainty: c.Source.Certainty}
}

func lostRow(l *fault.Lost) StudyLost {
	row := StudyLost{Affected: []StudyHit{}, Unsolved: l.Unsolved}
	row.Ref, row.Part = refOf(l.Branch), partOf(l.Branch)
	for _, p := range l.Shared() {
		row.Shared = append(row.Shared, p.Name)
	}
	for _, a := range l.All() {
		row.Affected = append(row.Affected, StudyHit{Ref: refOf(a.Branch), Part: partOf(a.Branch),
			Effect: string(a.Effect), Situation: a.Situation.Name, BeforeV: finite(a.BeforeV), AfterV: finite(a.AfterV)})
	}
	return row
}

// refOf is the wire number or the part's designation of a branch.
func refOf(b *circuit.Branch) string {
	if b.Wire != nil {
		return b.Wire.Number
	}
	return b.Part.Ref
}

func partOf(b *circuit.Branch) string {
	if b.Wire != nil {
		return b.Wire.From.Part.Name
	}
	return b.Part.Name
}

func strungRow(x *fault.Strung) StudyStrung {
	row := StudyStrung{Fault: "shorted", Unsolved: x.Unsolved}
	if x.Chafed != nil {
		row.Ref, row.Part, row.Fault = x.Chafed.Number, x.Chafed.From.Part.Name, "touches the frame"
	} else {
		row.Ref, row.Part = refOf(x.Shorted), partOf(x.Shorted)
	}
	if x.Suffers != nil {
		row.Suffers, row.Situation, row.Over = x.Suffers.Part.Name, x.Situation.Name, x.Over()
		row.BeforeV, row.AfterV, row.BearsV = finite(x.BeforeV), finite(x.AfterV), finite(x.BearsV)
	}
	return row
}

func weldRow(w *fault.Welded) StudyWeld {
	row := StudyWeld{Contact: w.Contact.Name, Part: w.Contact.Part.Name, Live: []string{}, ByHand: []string{},
		DrawA: finite(w.DrawA)}
	for _, h := range w.Hot {
		if h.ByHand {
			row.ByHand = append(row.ByHand, h.Branch.Part.Name)
		} else {
			row.Live = append(row.Live, h.Branch.Part.Name)
		}
	}
	return row
}

func exposureRow(e *fault.Exposure) StudyExposure {
	row := StudyExposure{Ref: e.Branch.Part.Ref, Part: e.Branch.Part.Name, HighV: finite(e.HighV),
		Reached: string(e.Reached), Suffers: "no", AsIfOn: e.HighIn == nil && !math.IsNaN(e.HighV)}
	switch {
	case row.HighV == nil:
		row.High = "in no situation"
	case e.BearsV == 0:
		row.High = "not known"
	case e.Over():
		row.High = "exposed"
	default:
		row.High = "withstands it"
	}
	if e.BearsV > 0 {
		row.BearsV = finite(e.BearsV)
	}
	switch {
	case e.Says || e.Diode:
		row.Suffers = "yes"
	case e.Suffers:
		row.Suffers = "not known"
	}
	return row
}
