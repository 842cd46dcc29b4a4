package bench

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// How far the batteries are drawn down before chargers are read in use: a full one takes little.
// Common practice, no source.
const (
	takingUsual, takingLeast, takingMost = 0.3, 0.2, 0.5
	leastChargeA                         = 2 * ClampFixedA // what a clamp can tell from nothing
)

const basisCharging = "chargers in use: worst cases with batteries half to four fifths full; 2.5 % and 0.1 A for a clamp (common practice, no source); " +
	"a panel's share of its power is the sun's"

// charging reads what each charger gives in use, with the passes in which the drops of their
// leads may be read: those on the sun are left out, which gives what it will.
func (m *maker) charging() (passes []*solved, list []*Section) {
	sec := &Section{Kind: Charging, Title: "Live: chargers in use", Setup: []string{"When all else has passed. Draw what they charge down to between a half and " +
		"four fifths first: a full one takes little. Nothing else on. A clamp round the output lead of each charger."}}
	m.taking = true
	defer func() { m.taking = false }()
	for _, by := range []struct{ from, setup string }{{"battery", "Engine warm, outdoors, " + secured(m.d) + ". Give a charger its delay to start."},
		{"engine", "Engine warm, outdoors, " + secured(m.d) + ": the second alternator, its regulator at its own stud."},
		{"panel", "The panels in the sun; the cover on and off again must show."},
		{"mains", "A shore charger by its own plug; nothing on its mains side is worked on here."}} {
		s := m.giving(by.from)
		if s == nil {
			continue
		}
		p := &solved{situation: s, spread: m.situation(s), section: sec}
		g := m.outputs(p, by.from)
		if len(g.Checks) == 0 {
			continue
		}
		g.Title = s.Name
		sec.Setup, sec.Groups = append(sec.Setup, by.setup), append(sec.Groups, g)
		if by.from != "panel" {
			passes = append(passes, p)
		}
	}
	if len(sec.Groups) == 0 {
		return nil, nil
	}
	return passes, []*Section{sec}
}

// giving is the situation in which chargers of a kind are read alone; nil where the engine's
// speed would be needed and is not known.
func (m *maker) giving(from string) *design.Situation {
	switch idle := m.d.Charging.IdleRPM.Value; from {
	case "panel":
		return &design.Situation{Name: "In the sun, engine stopped", Key: design.KeyOff, Sun: 1, SunShare: 1}
	case "mains":
		return &design.Situation{Name: "On shore power, engine stopped", Key: design.KeyOff, Shore: true}
	default:
		if !(idle > 0) {
			return nil
		}
		return &design.Situation{Name: fmt.Sprintf("Fast idle, %s", quantity.Plain(math.Round(fastIdleTimes*idle), quantity.Speed)),
			Key: design.KeyOn, EngineRPM: fastIdleTimes * idle}
	}
}

// outputs are the readings of the chargers of a kind, each at its output lead.
func (m *maker) outputs(s *solved, from string) *Group {
	g := &Group{}
	for _, w := range m.c.Wires {
		x, ok := w.From.Part.Source.(*design.Charger)
		if !ok || x.Type == nil || x.Type.From != from || w.From.Name != "out" || !s.ok() || m.readAsSupply(x) {
			continue
		}
		nominal, low, high := s.of(func(sol *solve.Solution) float64 { return math.Abs(sol.Amps(w.Branch)) })
		c := &Check{Ref: w.From.Part.Ref, Name: w.From.Part.Name, Where: "clamp round " + w.Number, Quantity: quantity.Current, Nominal: nominal,
			Basis: basisCharging, Probe: s.at(Probe{Amps: w.Branch})}
		c.Low, c.High = widen(low, high, ClampShare, ClampFixedA)
		switch {
		case from == "panel":
			c.Where, c.Nominal, c.Low = c.Where+", with the sun there is", nan(), leastChargeA
		case nominal < leastChargeA:
			m.missing = append(m.missing, c.Ref+" "+c.Name+" is not read in use: by the figures of the design it gives nothing at fast idle.")
			continue
		}
		g.Checks = append(g.Checks, c)
	}
	return g
}

// readAsSupply tells of a converter whose output a pass reads: it charges nothing, and what it feeds shows it.
func (m *maker) readAsSupply(x *design.Charger) bool {
	return x.Converts() && slices.ContainsFunc(m.supplies, func(p *circuit.Part) bool { return p.Source == design.Part(x) })
}
