package warm

import (
	"runtime"
	"slices"
	"sync"

	"fusewright/harness/design"
	"fusewright/harness/network/solve"
)

// Solve finds the operating point of one situation with the wires warm, under
// options whose WireTempC is not looked at. The search starts from the
// temperatures of another result of the same circuit, or from the ambients when
// that is nil; where it ends does not depend on it by more than a tenth of a
// kelvin.
func (m *Model) Solve(p *solve.Plan, s *design.Situation, opt solve.Options, from *Result) *Result {
	r := &Result{WireC: make([]float64, len(m.Wires)), used: make([]float64, len(m.Wires))}
	for i := range m.Wires {
		r.used[i] = capped(m.Wires[i].AmbientC)
		if from != nil { // a hotter place lifts the wire by about as much
			r.used[i] = capped(max(r.used[i], from.used[i]))
		}
	}
	copy(r.WireC, r.used)
	opt.WireTempC = r.UsedC
	run := search{Result: r, m: m, at: m.SituationOf(s), net: p.Network(s, opt)}
	run.run()
	return r
}

// All solves every situation of the design, in design order, and then further ones, each under its
// options and from the result of the same situation in from (nil = from the
// ambients). It uses the machine's processors; the results do not depend on how
// many there are.
func (m *Model) All(p *solve.Plan, opt func(situation int) solve.Options, from []*Result, further ...*design.Situation) []*Result {
	d := m.Circuit.Design
	if d == nil {
		return nil
	}
	situations := slices.Concat(d.Situations, further)
	out := make([]*Result, len(situations))
	each(len(out), func(i int) {
		var start *Result
		if from != nil {
			start = from[i]
		}
		out[i] = m.Solve(p, situations[i], opt(i), start)
	})
	return out
}

// Solutions are the operating points of results.
func Solutions(results []*Result) []*solve.Solution {
	out := make([]*solve.Solution, len(results))
	for i, r := range results {
		out[i] = r.Solution
	}
	return out
}

// each runs jobs on the machine's processors.
func each(n int, job func(int)) {
	next := make(chan int)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wait.Go(func() {
			for i := range next {
				job(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}
