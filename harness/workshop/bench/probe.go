package bench

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Probe is where the meter is at a check, for those who reckon with what it shows. One of Volts,
// Amps, Wire, Return and Coil is set; a check without a probe is seen, timed or told by a part alone.
type Probe struct {
	Volts []Span          // between two points; of several the largest
	Amps  *circuit.Branch // magnitude of the current through it
	// Situation and Options are the state of the circuit for volts and amperes at nominal values.
	Situation *design.Situation
	Options   solve.Options

	Wire   *circuit.Wire     // ohms of it, or of a piece of a parted one, from end to end
	Return []*circuit.Branch // ohms of a way back, in series
	Coil   *circuit.Part     // ohms of a relay's coil with what lies across it
}

// Span is two points for the leads of a voltmeter, red first.
type Span struct{ Plus, Minus *circuit.Node }

// at is a probe in a pass.
func (s *solved) at(p Probe) *Probe {
	p.Situation, p.Options = s.situation, s.opt
	return &p
}

func (s *solved) between(plus, minus *circuit.Node) *Probe {
	return s.at(Probe{Volts: []Span{{plus, minus}}})
}

// Pass is the state in which the bench test reads a situation, for readings of one's own:
// that of the section, else as the design has it with the batteries as on a bench.
func (t *Test) Pass(s *design.Situation) (*design.Situation, solve.Options) {
	for _, sec := range t.Sections {
		if sec.Situation == nil || sec.Situation.Name != s.Name {
			continue
		}
		for _, c := range sec.Checks() {
			if c.Probe != nil && c.Probe.Situation == sec.Situation {
				return c.Probe.Situation, c.Probe.Options
			}
		}
	}
	return s, solve.Options{Discharged: UsualDischarge, BanksDischarged: FurtherUsual}
}

// batteryBranch is the branch of the first battery.
func (m *maker) batteryBranch() *circuit.Branch {
	at := slices.IndexFunc(m.c.Branches, func(b *circuit.Branch) bool { return b.Kind == circuit.BatteryBranch })
	return m.c.Branches[at]
}
