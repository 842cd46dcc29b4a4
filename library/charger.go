package library

import "cmp"

// ChargerType is a charger of a battery: one that another battery feeds, a solar panel's
// controller, or one on shore power; or a converter that feeds loads of a lower voltage. Volts are at 25 °C.
type ChargerType struct {
	Name       string    `key:"name" need:""`
	Aliases    []string  `key:"aliases"`
	Family     string    `key:"family"`                                                        // the same for other system voltages; see ChargerFor
	From       string    `key:"from" need:"" words:"battery|panel|mains|engine" show:"from *"` // what it takes its power from
	Volts      float64   `key:"volts" need:"" in:"6,48"`                                       // nominal, of what it charges
	InputV     float64   `key:"input V" in:"6,48" show:"from *"`                               // nominal, of what feeds it; of a converter, which feeds loads of its own voltage and charges nothing
	RatingA    float64   `key:"rating A" need:"" in:"0.5,500" show:"*"`                        // most it gives
	OutV       float64   `key:"output V" need:"" in:"5,64" show:"holds *"`                     // held once the battery takes less
	StartsV    float64   `key:"starts V" in:"5,64" show:"starts at *"`                         // at its input; of one fed by a battery
	StopsV     float64   `key:"stops V" in:"5,64" show:"stops at *"`                           // at its input: it takes less, down to nothing, rather than go below
	Efficiency float64   `key:"efficiency" in:"0.5,1" show:"efficiency *%"`                    // output power over input power
	Generator  string    `key:"generator"`                                                     // the kind of charging system that one driven by the engine is
	Tracks     bool      `key:"tracks" show:"gives the power of its panels"`                   // of a panel's controller: it gives the panel's power, not its current
	OwnA       float64   `key:"own mA" in:"0,1000" per:"1000" show:"own draw *"`               // always drawn: at its input, else at what it charges
	End        string    `key:"end" need:""`                                                   // terminal kind; or FlyingLeads
	Wire       LeastWire `key:"least wire"`                                                    // at its input and its output
	Source     Source
}

func (t *ChargerType) check(m *row) {
	if m.has("least wire") && t.Wire.Mm2 == 0 {
		m.r.report(m.node, "the least wire of a charger is given in \"mm2\"", "", "")
	}
	if t.From == "battery" {
		switch {
		case t.StartsV == 0:
			m.missing("starts V")
		case t.StopsV == 0 || t.StopsV >= t.StartsV:
			m.r.report(m.node, "\"stops V\" is not below \"starts V\"", "", "")
		case t.Efficiency == 0:
			m.missing("efficiency")
		}
	}
	if t.InputV > 0 && (t.From != "battery" || t.InputV == t.Volts) {
		m.r.report(m.node, "\"input V\" is of a converter: from a battery, of other \"volts\"", "", "")
	}
	if (t.From == "engine") != (t.Generator != "") {
		m.r.report(m.node, "\"generator\" is of one from the engine", "", "")
	}
	if t.Tracks && t.Efficiency == 0 {
		m.missing("efficiency")
	}
}

// SystemV is the nominal voltage of the system that it belongs to: of a converter that at its input.
func (t *ChargerType) SystemV() float64 {
	if t.InputV > 0 {
		return t.InputV
	}
	return t.Volts
}

// Charger finds a charger by name or alias; nil when there is none.
func (l *Library) Charger(name string) *ChargerType { return find(l.Chargers, name, chargerNames) }

// ChargerFor is Charger for a system voltage: the charger of that name, or the member of its
// family, which may be named too, for that voltage.
func (l *Library) ChargerFor(name string, systemV float64) *ChargerType {
	t := cmp.Or(l.Charger(name), find(l.Chargers, name, func(t *ChargerType) (string, []string) { return t.Family, nil }))
	if t == nil || fold(name) == fold(t.Name) || t.SystemV() == systemV {
		return t
	}
	for _, other := range l.Chargers {
		if other.Family != "" && other.Family == t.Family && other.SystemV() == systemV {
			return other
		}
	}
	return t
}

func chargerNames(t *ChargerType) (string, []string) { return t.Name, t.Aliases }
