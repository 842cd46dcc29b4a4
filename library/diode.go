package library

// DiodeType is a diode that stands in a feed or return as a part of its own.
type DiodeType struct {
	Name     string   `key:"name" need:""`
	Aliases  []string `key:"aliases"`
	KneeV    float64  `key:"knee mV" need:"" in:"10,2000" per:"1000"`        // below it, the leak alone
	DropV    float64  `key:"drop mV" need:"" in:"10,3000" per:"1000"`        // at RatingA, 25 °C
	RatingA  float64  `key:"rating A" need:"" in:"0.01,1000" show:"*"`       // lasting, forward
	ReverseV float64  `key:"reverse V" need:"" in:"5,2000" show:"reverse *"` // highest repetitive
	LeakA    float64  `key:"leak mA" need:"" in:"0.000001,1000" per:"1000"`  // at ReverseV, 25 °C
	End      string   `key:"end" need:""`                                    // terminal kind; or FlyingLeads
	Source   Source
}

// SlopeOhm is the resistance above the knee.
func (d *DiodeType) SlopeOhm() float64 { return (d.DropV - d.KneeV) / d.RatingA }

// LeakOhm is the resistance below the knee and in reverse.
func (d *DiodeType) LeakOhm() float64 { return d.ReverseV / d.LeakA }

func (d *DiodeType) check(m *row) {
	if d.DropV <= d.KneeV {
		m.r.report(m.node, "\"drop mV\" is not above \"knee mV\"", "", "")
	}
}

// Diode finds a diode by name or alias; nil when there is none.
func (l *Library) Diode(name string) *DiodeType { return find(l.Diodes, name, diodeNames) }

func diodeNames(d *DiodeType) (string, []string) { return d.Name, d.Aliases }
