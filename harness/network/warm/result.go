package warm

import (
	"fmt"
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

const (
	// agreedK and agreedShare end the search: temperatures within a tenth of a
	// kelvin and currents within a thousandth of the pass before.
	agreedK, agreedShare = 0.1, 1e-3
	// traceA is the current below which a change does not count.
	traceA = 1e-4
	// mostPasses bounds the search; after dampAfter each step goes half way.
	mostPasses, dampAfter = 16, 4
	// HottestC is the temperature up to which copper's resistance by the straight
	// line holds within 0.5 % (package conductor). A wire that would pass it has
	// long lost its insulation: its resistance counts as at this temperature,
	// and Over names the wire.
	HottestC = 250.0
)

// Result is the operating point of a situation with its wires warm.
type Result struct {
	Solution *solve.Solution
	// WireC is the conductor temperature by wire index, in °C; +Inf = no steady
	// state below the melting point of copper.
	WireC   []float64
	Passes  int  // solutions made
	Settled bool // temperatures and currents agree
	Why     string
	// Over are the wires without a steady temperature up to HottestC.
	Over []*circuit.Wire

	used []float64 // what the resistances rest on: WireC up to HottestC
}

// UsedC is the temperature that a wire's resistance in the Solution rests on.
func (r *Result) UsedC(w *circuit.Wire) float64 { return r.used[w.Index] }

// Usable tells whether the numbers of the result may be used.
func (r *Result) Usable() bool { return r.Solution.Status == solve.Converged }

// search is one result in the making.
type search struct {
	*Result
	m       *Model
	at      int // the situation's index
	net     *solve.Network
	before  []float64 // currents of the pass before, by wire
	changeK float64   // between what was used and what the currents give
}

// run goes round until temperatures and currents agree.
func (s *search) run() {
	for {
		s.Passes++
		s.Solution = s.net.Solution()
		if s.Solution.Status != solve.Converged {
			s.Why = fmt.Sprintf("with the wires warm: %s", s.Solution.Status)
			return
		}
		s.measure()
		steady := s.currentsSteady()
		if s.Settled = s.changeK <= agreedK/10 || s.changeK <= agreedK && steady; s.Settled {
			s.sayOver()
			return
		}
		if s.Passes == mostPasses {
			s.Why = fmt.Sprintf("wire temperatures still change by %.2g K after %d solutions", s.changeK, s.Passes)
			return
		}
		s.heat()
	}
}

// measure finds the temperature of each wire at its present current.
func (s *search) measure() {
	s.changeK = 0
	for i := range s.m.Wires {
		l := &s.m.Wires[i]
		s.WireC[i] = l.ConductorIn(s.at, s.Solution.BranchA[l.Wire.Branch.Index])
		s.changeK = math.Max(s.changeK, math.Abs(capped(s.WireC[i])-s.used[i]))
	}
}

// heat takes the measured temperatures as the next to solve with.
func (s *search) heat() {
	for i, c := range s.WireC {
		c = capped(c)
		if s.Passes >= dampAfter {
			c = (c + s.used[i]) / 2
		}
		s.used[i] = c
	}
	s.net.Reheat(s.UsedC)
}

// currentsSteady compares the wires' currents with those of the pass before,
// and keeps the new ones.
func (s *search) currentsSteady() bool {
	steady := s.before != nil
	if s.before == nil {
		s.before = make([]float64, len(s.m.Wires))
	}
	for i := range s.m.Wires {
		amps := s.Solution.BranchA[s.m.Wires[i].Wire.Branch.Index]
		if change := math.Abs(amps - s.before[i]); change > agreedShare*math.Abs(amps)+traceA {
			steady = false
		}
		s.before[i] = amps
	}
	return steady
}

func (s *search) sayOver() {
	for i, c := range s.WireC {
		if c > HottestC {
			s.Over = append(s.Over, s.m.Wires[i].Wire)
		}
	}
	switch len(s.Over) {
	case 0:
	case 1:
		s.Why = fmt.Sprintf("wire %s has no steady temperature below %.0f °C", s.Over[0].Number, HottestC)
	default:
		s.Why = fmt.Sprintf("wire %s and %d more have no steady temperature below %.0f °C",
			s.Over[0].Number, len(s.Over)-1, HottestC)
	}
}

func capped(c float64) float64 { return math.Min(c, HottestC) }
