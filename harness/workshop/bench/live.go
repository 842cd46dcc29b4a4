package bench

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// solved is a situation with its spread and its section.
type solved struct {
	situation *design.Situation
	spread
	section *Section
}

// situations makes a section of each situation: with the key off first, then
// with the engine stopped, then with it running.
func (m *maker) situations() []*Section {
	var all []*solved
	for _, rank := range []int{0, 1, 2} {
		for _, s := range m.d.Situations {
			if order(s) == rank {
				all = append(all, &solved{situation: s, spread: m.situation(s)})
			}
		}
	}
	var out []*Section
	for _, s := range all {
		s.section = m.section(s)
		out = append(out, s.section)
	}
	m.drops(all)
	return out
}

func order(s *design.Situation) int {
	switch {
	case s.Key == design.KeyOff:
		return 0
	case !circuit.Running(s):
		return 1
	}
	return 2
}

// section is one situation: posts, feeds, blocks and loads.
func (m *maker) section(s *solved) *Section {
	kind := InUse
	if s.situation.Key == design.KeyOff && len(s.situation.On) == 0 && len(s.situation.Closed) == 0 {
		kind = Parked
	}
	sec := &Section{Kind: kind, Title: "Situation: " + s.situation.Name, Situation: s.situation, Setup: m.setup(s.situation)}
	if !s.ok() {
		sec.Trouble = "No readings can be given: " + string(s.nominal.Status) + ". " + s.nominal.Why
		return sec
	}
	source := &Group{Title: "Source and main feed", Checks: append([]*Check{m.posts(s)}, m.feeds(s)...)}
	if order(s.situation) == 0 {
		source.Checks = append(source.Checks, m.standby(s))
	}
	sec.Groups = append(sec.Groups, source)
	if g := m.points(s); len(g.Checks) > 0 {
		sec.Groups = append(sec.Groups, g)
	}
	return sec
}

// setup is how to bring the situation about.
func (m *maker) setup(s *design.Situation) []string {
	text := "Key off."
	if s.Key == design.KeyOn {
		text = "Key on, engine stopped."
		if circuit.Running(s) {
			text = fmt.Sprintf("Engine at %s.", quantity.Plain(math.Round(s.EngineRPM), quantity.Speed))
		}
	}
	var on, switches []string
	for _, l := range s.On {
		on = append(on, l.Name)
	}
	closed := circuit.Contacts(m.c, s)
	for _, b := range m.c.Branches {
		if b.Closer != nil && b.Closer.Switch != nil && closed[b.Index] {
			switches = append(switches, b.Part.Ref+" "+b.Part.Name)
		}
	}
	text += " Loads on: " + wording.And(on) + ". Switches closed: " + wording.And(switches) + "."
	lines := []string{text}
	if order(s) == 0 {
		lines = append(lines, "Wait until control units sleep, some minutes. While a meter is in series, do not turn the key and do not "+
			"switch loads on.")
	}
	return lines
}

// posts is the battery voltage, read first; the range is where the bounds hold.
func (m *maker) posts(s *solved) *Check {
	nominal, low, high := s.of(func(sol *solve.Solution) float64 { return sol.NodeV[m.c.Positive().Index] })
	low, high = widen(low, high, VoltShare, VoltFixedV/2)
	return &Check{Ref: m.battery(), Name: "battery", Where: "posts: read first, keep it", Quantity: quantity.Voltage,
		Nominal: nominal, Low: low, High: high, Basis: basisVolts}
}

// feeds is the current of every wire that leaves the battery, and through taps.
func (m *maker) feeds(s *solved) []*Check {
	var out []*Check
	for _, w := range m.c.Wires {
		if w.Branch.Feeds() && w.From.Node == m.c.Positive() {
			c := amps(s, w.Branch)
			c.Ref, c.Name, c.Where = w.Number, "main feed", c.Where+" "+w.Number+" to "+w.To.Part.Ref
			out = append(out, c)
		}
	}
	for _, p := range m.c.Parts {
		if p.Kind == circuit.Tap && len(p.Branches) > 0 {
			c := amps(s, p.Branches[0])
			c.Ref, c.Name, c.Where = p.Ref, p.Name, c.Where+" its wires"
			out = append(out, c)
		}
	}
	return out
}

// battery is the battery's reference.
func (m *maker) battery() string { return m.c.Positive().Terminals[0].Part.Ref }

// seriesA is the current up to which a meter goes in series with the key off: a
// clamp is too coarse there, and above it the meter's own fuse is at risk.
const seriesA = 1.0

// amps is a reading of the current of a branch.
func amps(s *solved, b *circuit.Branch) *Check {
	return current(s, func(sol *solve.Solution) float64 { return math.Abs(sol.Amps(b)) })
}

// standby is what the battery loses with the key off, the machine's own included.
func (m *maker) standby(s *solved) *Check {
	c := current(s, func(sol *solve.Solution) float64 { return sol.BatteryA })
	c.Ref, c.Name, c.Where = m.battery(), "all that is drawn", c.Where+" the battery's negative lead"
	return c
}

func current(s *solved, value func(*solve.Solution) float64) *Check {
	nominal, low, high := s.of(value)
	c := &Check{Quantity: quantity.Current, Nominal: nominal, Where: "clamp round", Basis: basisClamp}
	c.Low, c.High = widen(low, high, ClampShare, ClampFixedA)
	if order(s.situation) == 0 && high < seriesA {
		c.Where, c.Basis = "meter in series with", basisStandby
		c.Low, c.High = widen(low, high, StandbyShare, StandbyFixedA)
	}
	return c
}

// points are the voltages of blocks and loads.
func (m *maker) points(s *solved) *Group {
	g := &Group{Title: "Voltages of blocks and loads, as far as they lie below the battery's"}
	for _, p := range m.c.Parts {
		var plus, minus *circuit.Node
		where := "+ and −"
		switch p.Kind {
		case circuit.Block:
			plus, minus, where = p.Terminal("in").Node, m.c.Negative(), "input and battery −"
		case circuit.Load:
			plus, minus = p.Terminal("+").Node, p.Terminal("-").Node
			if l, ok := p.Source.(*design.Load); ok && slices.Contains(s.situation.Reversed, l) {
				plus, minus, where = minus, plus, "− and +, the other way round"
			}
		default:
			continue
		}
		c := m.below(s, plus, minus)
		c.Ref, c.Name, c.Where = p.Ref, p.Name, where
		g.Checks = append(g.Checks, c)
	}
	return g
}

// below is how far the voltage between two nodes lies under the battery's; a
// dead point is said as such.
func (m *maker) below(s *solved, plus, minus *circuit.Node) *Check {
	volts := func(sol *solve.Solution) float64 {
		v := sol.NodeV[plus.Index] - sol.NodeV[minus.Index]
		if math.IsNaN(v) {
			return 0
		}
		return v
	}
	nominal := volts(s.nominal)
	if math.Abs(nominal) < deadV {
		return &Check{Quantity: quantity.Voltage, Nominal: 0, Low: nan(), High: deadV, Basis: basisDead}
	}
	battery := m.c.Positive().Index
	c := &Check{Quantity: quantity.Voltage, Below: true, ShowsV: nominal, Basis: basisVolts}
	drop, low, high := s.of(func(sol *solve.Solution) float64 { return sol.NodeV[battery] - volts(sol) })
	c.Nominal = drop
	c.Low, c.High = widen(low, high, VoltShare, VoltFixedV)
	return c
}
