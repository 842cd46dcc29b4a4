package diagnosis

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
)

// mostOwn is how many readings are taken elsewhere than the bench test asks: each may be of an engine speed of
// its own, with a network to be solved for every suspect.
const mostOwn = 100

// take makes sensors of readings that the network tells of; what else was read or seen is judged by
// its bounds alone.
func (m *model) take(t *bench.Test, placed []*readings.Placed) problem.List {
	var problems problem.List
	own := 0
	for _, p := range placed {
		if p.Check == nil {
			if own++; own > mostOwn {
				continue
			}
		}
		var probe *bench.Probe
		label := p.In
		if p.Check != nil {
			probe = p.Check.Probe
			if label == "" {
				label, _ = readings.Key(p.Section, p.Group, p.Check)
			}
		} else {
			var wrong *problem.Problem
			if probe, wrong = m.place(t, p.Reading); wrong != nil {
				problems.Add(*wrong)
				continue
			}
		}
		if probe == nil || p.Quantity == "" || p.Section != nil && (p.Section.Kind == bench.Charging || p.Section.Kind == bench.Live) {
			continue // what chargers and a running engine give goes by the charge that they meet, which nobody knows
		}
		m.sensors = append(m.sensors, m.sensor(p, probe, label))
	}
	if own > mostOwn {
		problems.Add(problem.Problem{Pos: placed[len(placed)-1].Pos, What: fmt.Sprintf("%d readings of your own", own), Expected: fmt.Sprintf("at most %d beside those of the bench test", mostOwn)})
	}
	return problems
}

// twice refuses what was read twice, wherever each was given: which of them holds nobody can tell.
func twice(placed []*readings.Placed) (problems problem.List) {
	type key struct {
		check  *bench.Check
		group  any
		own    string
		engine float64
	}
	first := map[key]*readings.Placed{}
	for _, p := range placed {
		k := key{check: p.Check, group: p.Group, engine: p.Reading.Engine}
		if p.Check == nil {
			k.own = p.Reading.Check + " in " + p.Reading.In
		}
		if o := first[k]; o != nil {
			also := o.Pos
			problems.Add(problem.Problem{Pos: p.Pos, What: fmt.Sprintf("check %q is given twice", p.Reading.Check), Expected: "each reading once", Also: &also})
			continue
		}
		first[k] = p
	}
	return problems
}

// sensor sets a reading up.
func (m *model) sensor(p *readings.Placed, probe *bench.Probe, label string) *sensor {
	s := &sensor{Placed: p, probe: probe, state: -1, y: p.Value, gain: scaleOf(p, probe)}
	s.y = math.Min(s.y, s.most())
	if probe.Situation != nil {
		s.state = m.stateOf(probe, label, func(o *state) bool { return o.key == stateKey(probe) })
	}
	return s
}

// scaleOf is which scale of the meter a reading is on.
func scaleOf(p *readings.Placed, probe *bench.Probe) int {
	switch {
	case probe.Situation == nil:
		return ohms
	case probe.Amps == nil:
		return volts
	case p.Section != nil && p.Section.Kind == bench.FirstPower:
		return supply
	case p.Check != nil && strings.HasPrefix(p.Check.Where, "clamp"), p.Check == nil && strings.HasPrefix(p.Reading.Check, round):
		return clamp
	}
	return amps
}

// stateKey tells states of one situation apart by what stands at the posts and what is unplugged.
func stateKey(p *bench.Probe) string {
	o := p.Options
	var b strings.Builder
	fmt.Fprintf(&b, "%p %g %g %g %g %v", p.Situation, o.BatteryV, o.BatteryOhm, o.Discharged, o.BanksDischarged, o.NoCharging)
	for _, c := range o.Changes {
		if c.Branch != nil {
			fmt.Fprintf(&b, " %d", c.Branch.Index)
		}
	}
	return b.String()
}

// settle sets up what depends on all readings: the way round of each, and what is uncertain.
func (m *model) settle() {
	m.hold()
	m.uncertain()
	sound := m.solved(nil)
	for i, s := range m.sensors {
		if s.state >= 0 && len(s.probe.Volts) == 1 && sound.pred[i] < -1e-9 && s.Check != nil {
			s.flip = true
		}
	}
}

// unfed puts aside what was read in a state at whose posts no supply can have read so: what stood there
// is not known. The others are marked where they passed.
func (m *model) unfed(placed []*readings.Placed, judged []*Judged) {
	out := map[int]bool{}
	for i, p := range placed {
		for _, s := range m.sensors {
			s.passed = s.passed || s.Placed == p && judged[i].Verdict == Pass
		}
		if p.Check == nil || !p.Check.Posts() || !noSupply(p) {
			continue
		}
		for _, s := range m.sensors {
			out[s.state] = out[s.state] || s.Placed == p && s.state >= 0
		}
	}
	m.sensors = slices.DeleteFunc(m.sensors, func(s *sensor) bool { return out[s.state] })
}

// heldOhm is behind the posts whose voltage is held at what was read.
const heldOhm = 1e-3

// hold puts the volts that were read at the posts in place of a running engine's charging: what that
// gives just at its limit depends on too much to tell of the harness by.
func (m *model) hold() {
	for _, s := range m.sensors {
		if s.state < 0 || len(s.probe.Volts) != 1 || s.probe.Volts[0] != (bench.Span{Plus: m.c.Positive(), Minus: m.c.Negative()}) {
			continue
		}
		if o := m.states[s.state]; o.running() {
			o.opt.NoCharging, o.opt.BatteryV, o.opt.BatteryOhm = true, s.y, heldOhm
		}
	}
	m.sensors = slices.DeleteFunc(m.sensors, func(s *sensor) bool { // what sources give is measured and does not tell of the harness
		b := s.probe.Amps
		apart := b != nil && s.state >= 0 && (b.Kind == circuit.ChargerBranch || b.Kind == circuit.OutputBranch || b.Kind == circuit.BatteryBranch && circuit.Running(m.states[s.state].situation))
		if apart {
			m.aside = append(m.aside, s)
		}
		return apart
	})
}
