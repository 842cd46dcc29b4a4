package page

import (
	"fusewright/harness"
	"fusewright/harness/network/solve"
)

// Situation is the operating point in one situation.
type Situation struct {
	Name   string  `json:"name"`
	Key    string  `json:"key"` // "on" or "off"
	RPM    float64 `json:"rpm,omitempty"`
	Solved bool    `json:"solved"`
	Why    string  `json:"why,omitempty"` // what failed
}

func (m *Model) situations(r *harness.Review) {
	m.Situations = []Situation{}
	for _, s := range r.Solutions {
		m.Situations = append(m.Situations, Situation{Name: s.Situation.Name, Key: string(s.Situation.Key), RPM: s.Situation.EngineRPM,
			Solved: s.Status == solve.Converged, Why: s.Why})
	}
}
