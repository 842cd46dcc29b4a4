package library

// Meter is a class of meters: how far a reading may be off.
type Meter struct {
	Name   string  `key:"name" need:""`
	Counts float64 `key:"counts" need:"" in:"1000,2000000"` // largest figure of a scale, in last places
	// Shares of the reading.
	VoltShare  float64 `key:"volts share" need:"" in:"0,0.2"`
	OhmShare   float64 `key:"ohms share" need:"" in:"0,0.2"`
	AmpShare   float64 `key:"amps share" need:"" in:"0,0.2"` // in series
	ClampShare float64 `key:"clamp share" need:"" in:"0,0.2"`
	Digits     float64 `key:"digits" need:"" in:"0,100"` // of the last place
	ClampA     float64 `key:"clamp A" need:"" in:"0,10"` // in place of digits
	Source     Source
}

// Meter finds a class of meters; nil when there is none.
func (l *Library) Meter(name string) *Meter { return find(l.Meters, name, meterNames) }

func meterNames(m *Meter) (string, []string) { return m.Name, nil }

// Suspicion is how often a kind of place is at fault.
type Suspicion struct {
	Kind   string  `key:"kind" need:""`
	Odds   float64 `key:"odds" need:"" in:"0.000001,1"` // of one such place
	Source Source
}

// Suspicion finds the odds of a kind; nil when there are none.
func (l *Library) Suspicion(kind string) *Suspicion { return find(l.Suspicions, kind, suspicionNames) }

func suspicionNames(s *Suspicion) (string, []string) { return s.Kind, nil }
