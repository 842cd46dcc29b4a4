package corner

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
)

// Set is every situation of a design in every state, and after them those in which a load
// of several feeds is on by one of them alone (circuit.Alone).
type Set struct {
	Model      *warm.Model // at the design's ambients
	Hot        *warm.Model // at the corner's
	Tolerances *Tolerances
	Results    [states][]*warm.Result // by state, by situation in design order, then by Alone
	Alone      []*design.Situation
}

// Compute solves every situation of a circuit in every state.
func Compute(c *circuit.Circuit) *Set { return compute(c, warm.New(c)) }

// ComputeBy is Compute with a rater of the design's library and practice that
// remembers from circuit to circuit.
func ComputeBy(c *circuit.Circuit, rater *conductor.Rater) *Set {
	return compute(c, warm.NewBy(c, rater))
}

func compute(c *circuit.Circuit, m *warm.Model) *Set {
	t := TolerancesOf(c.Design)
	s := &Set{Model: m, Tolerances: t, Alone: c.Alone()}
	s.Hot = s.Model.Hotter(t.AmbientK)
	plan := solve.Prepare(c)
	s.everyState(func(m *warm.Model, opt func(int) solve.Options, from []*warm.Result) []*warm.Result {
		return m.All(plan, opt, from, s.Alone...)
	})
	return s
}

// Of is one situation, which need be none of the design's, in every state: situation 0 of a set
// of its own.
func (s *Set) Of(plan *solve.Plan, x *design.Situation) *Set {
	one := &Set{Model: s.Model, Hot: s.Hot, Tolerances: s.Tolerances}
	one.everyState(func(m *warm.Model, opt func(int) solve.Options, from []*warm.Result) []*warm.Result {
		var start *warm.Result
		if from != nil {
			start = from[0]
		}
		return []*warm.Result{m.Solve(plan, x, opt(0), start)}
	})
	return one
}

// everyState fills in the results of every state by a way to solve all situations in one.
func (s *Set) everyState(solved func(*warm.Model, func(int) solve.Options, []*warm.Result) []*warm.Result) {
	t, d := s.Tolerances, s.Model.Circuit.Design
	nominal := solved(s.Model, func(int) solve.Options { return solve.Options{} }, nil)
	s.Results[Nominal] = nominal
	for state := Nominal + 1; state < states; state++ {
		from := nominal
		switch {
		case state == Fresh: // differs from High by contacts alone
			from = s.Results[High]
		case state == High:
			from = s.Results[Weak]
		}
		s.Results[state] = solved(s.In(state), func(i int) solve.Options { return t.options(d, state, nominal[i]) }, from)
	}
}

// In is the wires where they lie in a state.
func (s *Set) In(state State) *warm.Model {
	if movedIn[state].places {
		return s.Hot
	}
	return s.Model
}

// Solutions are the nominal operating points of the design's own situations.
func (s *Set) Solutions() []*solve.Solution {
	all := s.Every()
	return all[:len(all)-len(s.Alone)]
}

// Every are these, and after them those of Alone.
func (s *Set) Every() []*solve.Solution { return warm.Solutions(s.Results[Nominal]) }

// Solution is the nominal operating point of a situation.
func (s *Set) Solution(situation int) *solve.Solution { return s.Results[Nominal][situation].Solution }

// Options are what the solver takes for a situation in a state, wire
// temperatures included, so that others can solve the very same network.
func (s *Set) Options(situation int, state State) solve.Options {
	opt := s.Tolerances.options(s.Model.Circuit.Design, state, s.Results[Nominal][situation])
	opt.WireTempC = s.Results[state][situation].UsedC
	return opt
}

// Value is a figure three ways: at nominal values; as it is likely, each
// independent tolerance moved alone to its bound and the deviations to the worse
// combined by the root of the sum of their squares; and at its worst, all tolerances at
// once, or one alone where the others relieve it. Likely is never beyond that: where
// tolerances do not add up, as a converter's current in a low supply, the root would be.
type Value struct {
	Nominal, Likely, Corner float64
	At                      State // the state of Corner; Nominal when no corner is worse
}

// Kind is one of the three figures of a Value.
type Kind int

// The kinds, from the mildest to the gravest.
const (
	AtNominal Kind = iota
	AtLikely
	AtWorst
)

// KindOf is the kind that the library's word means.
func KindOf(word string) Kind {
	switch word {
	case "nominal":
		return AtNominal
	case "likely":
		return AtLikely
	}
	return AtWorst
}

// Of is the figure of a kind.
func (v Value) Of(k Kind) float64 { return [...]float64{v.Nominal, v.Likely, v.Corner}[k] }

// Usable tells whether a situation has an operating point at nominal; only then
// have its figures a meaning.
func (s *Set) Usable(situation int) bool { return s.Results[Nominal][situation].Usable() }

// worst takes a figure in every usable state and keeps the greatest (sign 1) or
// the least (sign -1).
func (s *Set) worst(situation int, sign float64, figure func(*warm.Result) float64) Value {
	v := Value{Nominal: figure(s.Results[Nominal][situation])}
	v.Corner = v.Nominal
	var worse [states]float64 // by how much a figure is worse in a state than at nominal; 0 = not
	for state := Nominal + 1; state < states; state++ {
		r := s.Results[state][situation]
		if !r.Usable() {
			continue
		}
		if by := sign * (figure(r) - v.Nominal); by > 0 { // not of two without bound
			worse[state] = by
		}
		if x := v.Nominal + sign*worse[state]; sign*x > sign*v.Corner {
			v.Corner, v.At = x, state
		}
	}
	sum := 0.0
	for _, bounds := range alone {
		most := 0.0
		for _, state := range bounds {
			most = math.Max(most, worse[state])
		}
		sum += most * most
	}
	v.Likely = v.Nominal + sign*math.Min(math.Sqrt(sum), sign*(v.Corner-v.Nominal))
	return v
}

// Unsolved is the first state in which a situation that works at nominal has no
// operating point; false when it has one in all.
func (s *Set) Unsolved(situation int) (*solve.Solution, State, bool) {
	if !s.Usable(situation) {
		return nil, Nominal, false
	}
	for _, state := range Corners {
		if r := s.Results[state][situation]; !r.Usable() {
			return r.Solution, state, true
		}
	}
	return nil, Nominal, false
}

// Drop is the voltage lost between the battery's posts and a load that is on,
// feed and return together, in volts; zero where the load is off.
func (s *Set) Drop(situation int, load *circuit.Branch) Value {
	return s.worst(situation, 1, func(r *warm.Result) float64 {
		if !r.Solution.LoadOn[load.Index] {
			return 0
		}
		return r.Solution.LostV(load)
	})
}

// Figure is a figure of the solution, the greatest (sign 1) or the least (sign -1)
// being the worst.
func (s *Set) Figure(situation int, sign float64, figure func(*solve.Solution) float64) Value {
	return s.worst(situation, sign, func(r *warm.Result) float64 { return figure(r.Solution) })
}

// LoadV is the voltage of a load, the least being the worst; zero where no
// closed path leads to it.
func (s *Set) LoadV(situation int, load *circuit.Branch) Value {
	return s.worst(situation, -1, func(r *warm.Result) float64 {
		if v := r.Solution.LoadV(load); !math.IsNaN(v) {
			return v
		}
		return 0
	})
}

// Amps is the magnitude of a branch's current.
func (s *Set) Amps(situation int, b *circuit.Branch) Value {
	return s.worst(situation, 1, func(r *warm.Result) float64 {
		return math.Abs(r.Solution.BranchA[b.Index])
	})
}

// WireC is the conductor temperature of a wire.
func (s *Set) WireC(situation int, w *circuit.Wire) Value {
	return s.worst(situation, 1, func(r *warm.Result) float64 { return r.WireC[w.Index] })
}
