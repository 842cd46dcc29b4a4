package diagnosis

import (
	"math"
	"runtime"
	"sync"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

// model is a circuit with the readings taken on it and with what is uncertain of it when nothing
// is wrong.
type model struct {
	c       *circuit.Circuit
	plan    *solve.Plan
	meter   *library.Meter
	sensors []*sensor
	aside   []*sensor // of what sources give, which is no matter of the harness
	states  []*state
	spreads []spread
	tol     *corner.Tolerances
	odds    func(kind string) float64
	// soundPred is what sensors read of a sound circuit; expected is the logarithm of the evidence
	// that it has on average.
	soundPred      []float64
	expected       float64
	singles, pairs int               // explanations that were weighed
	alone          map[int][]float64 // by number of a fault that breaks or joins: what was read less what it makes expected
}

// point is the circuit with some faults: what every sensor would read, and how that moves with
// what is uncertain.
type point struct {
	faults []*fault
	nets   []*solve.Network
	sols   []*solve.Solution
	pred   []float64
	grad   [][]float64 // by sensor: by column of spreads
	slopes [][]float64 // by sensor: by branch, per ohm or per whole power
	behind [][]float64 // see model.behind
}

// solved gives what sensors would read with faults; from is a point with the first of them, whose
// states serve where the others change nothing.
func (m *model) solved(from *point, faults ...*fault) *point {
	p := &point{faults: faults, nets: make([]*solve.Network, len(m.states)), sols: make([]*solve.Solution, len(m.states))}
	for i, s := range m.states {
		if from != nil && allInert(faults[len(from.faults):], from.sols[i]) {
			p.nets[i], p.sols[i] = from.nets[i], from.sols[i]
			continue
		}
		p.nets[i] = m.plan.Network(s.situation, change(s.opt, faults, asDesigned))
		p.sols[i] = p.nets[i].Solution()
	}
	p.pred = make([]float64, len(m.sensors))
	for i, s := range m.sensors {
		p.pred[i] = m.predict(s, p)
	}
	return p
}

func allInert(faults []*fault, sol *solve.Solution) bool {
	for _, f := range faults {
		if !f.inert(sol) {
			return false
		}
	}
	return true
}

func (m *model) predict(s *sensor, p *point) float64 {
	if s.state < 0 {
		return s.ohmsOf(func(b *circuit.Branch, w *circuit.Wire) float64 { return p.ohm(b, w) })
	}
	return s.seen(p.sols[s.state])
}

// ohm is the resistance of a branch, or of a piece of its wire.
func (p *point) ohm(b *circuit.Branch, w *circuit.Wire) float64 {
	if w != nil {
		return withOhm(p.faults, b, w, w.ConductorOhm20+w.EndsOhm)
	}
	return withOhm(p.faults, b, nil, b.Ohm)
}

// slope fills in how every sensor moves with the resistance of each branch, or the power of each
// load, and so with everything that is uncertain. Each reading takes one solution of the network on
// the factorisation that is there: the network is reciprocal, so that what a current at the
// meter's points does to a branch is what a change of the branch does to the meter.
func (m *model) slope(p *point) {
	if p.slopes != nil {
		return
	}
	p.slopes = make([][]float64, len(m.sensors))
	p.grad = make([][]float64, len(m.sensors))
	var wait sync.WaitGroup
	byState := make([][]int, len(m.states)+1)
	for i, s := range m.sensors {
		byState[s.state+1] = append(byState[s.state+1], i)
	}
	limit := make(chan struct{}, max(1, runtime.GOMAXPROCS(0)))
	nets := map[*solve.Network][]int{}
	var order []*solve.Network
	for k, list := range byState {
		if k == 0 {
			for _, i := range list {
				m.coldSlope(p, i)
			}
			continue
		}
		n := p.nets[k-1]
		if nets[n] == nil {
			order = append(order, n)
		}
		nets[n] = append(nets[n], list...)
	}
	for _, n := range order {
		wait.Go(func() {
			limit <- struct{}{}
			defer func() { <-limit }()
			r := n.Responder()
			for _, i := range nets[n] {
				m.liveSlope(p, i, n, r)
			}
		})
	}
	wait.Wait()
}

// coldSlope is that of a reading without power, by its own branches.
func (m *model) coldSlope(p *point, i int) {
	s := m.sensors[i]
	p.slopes[i] = make([]float64, len(m.c.Branches))
	if p.pred[i] < s.most() {
		s.ohmsOf(func(b *circuit.Branch, w *circuit.Wire) float64 {
			ohm := p.ohm(b, w)
			p.slopes[i][b.Index] = 1
			if s.probe.Coil != nil {
				p.slopes[i][b.Index] = p.pred[i] * p.pred[i] / (ohm * ohm)
			}
			return ohm
		})
	}
	p.grad[i] = make([]float64, len(m.spreads))
	for k := range m.spreads {
		p.grad[i][k] = m.spreads[k].of(p.slopes[i], m.sensors[i], p.pred[i], nil)
	}
}

// liveSlope is that of a reading under power.
func (m *model) liveSlope(p *point, i int, n *solve.Network, r *solve.Response) {
	s, sol := m.sensors[i], p.sols[m.sensors[i].state]
	by := make([]float64, len(m.c.Branches))
	source := make([]float64, len(m.c.Branches)) // per volt of a source's own
	p.slopes[i], p.grad[i] = by, make([]float64, len(m.spreads))
	if r == nil || p.pred[i] >= s.limitA() {
		return
	}
	a, z, weight, own := s.adjoint(n, sol)
	if weight != 0 && r.Draw(solve.Draw{Node: a, Amps: weight}, solve.Draw{Node: z, Amps: -weight}) {
		for _, b := range m.c.Branches {
			law, ok := n.Law(b)
			if !ok {
				continue
			}
			across := r.At(b.A) - r.At(b.B) // moved by an ampere drawn at the meter
			by[b.Index], source[b.Index] = moved(law, b, sol.Amps(b), across)
		}
	}
	if own != nil {
		own(by, source)
	}
	for k := range m.spreads {
		p.grad[i][k] = m.spreads[k].of(by, s, p.pred[i], source)
	}
}

// adjoint is where a current stands for the meter, how strong, and what of the reading is by the
// branch itself.
func (s *sensor) adjoint(n *solve.Network, sol *solve.Solution) (a, z *circuit.Node, weight float64, own func(by, source []float64)) {
	if b := s.probe.Amps; b != nil {
		law, ok := n.Law(b)
		if !ok {
			return b.A, b.B, 0, nil
		}
		i := sol.Amps(b)
		_, siemens := law.At(sol.Volts(b))
		sign := math.Copysign(1, i)
		return b.A, b.B, sign * siemens, func(by, source []float64) {
			d, e := changed(law, b, i)
			by[b.Index] += sign * d
			source[b.Index] += sign * e
		}
	}
	span, sign := s.probe.Volts[0], s.sign()
	if len(s.probe.Volts) > 1 {
		most := 0.0
		for _, x := range s.probe.Volts {
			if v := math.Abs(spanV(sol, x)); v > most {
				most, span, sign = v, x, math.Copysign(1, spanV(sol, x))
			}
		}
	}
	if math.IsNaN(sol.NodeV[span.Plus.Index]) || math.IsNaN(sol.NodeV[span.Minus.Index]) {
		return span.Plus, span.Minus, 0, nil
	}
	return span.Plus, span.Minus, sign, nil
}

// changed is by how much a branch's current moves at the same volts: per ohm of its resistance, of
// a load per whole of its power; and per volt of a source's own.
func changed(law solve.Law, b *circuit.Branch, amps float64) (own, source float64) {
	switch law.Kind {
	case solve.Ohmic:
		if b.Load != nil {
			return amps, 0
		}
		return -amps / law.Ohm, 0
	case solve.Store:
		if amps >= law.LimitA {
			return 0, 0
		}
		return -amps / law.Ohm, -1 / law.Ohm
	case solve.Charger:
		if -amps >= law.LimitA*(1-1e-9) {
			return amps, 0 // at its limit, which is its power
		}
		return 0, -1 / law.Ohm
	case solve.Valve:
		return 0, 0
	}
	return amps, 0
}

// moved is what a change of a branch does to a meter, with across what the meter's current does to it.
func moved(law solve.Law, b *circuit.Branch, amps, across float64) (own, source float64) {
	d, e := changed(law, b, amps)
	return across * d, across * e
}

// newModel takes a circuit with its bench test.
func newModel(c *circuit.Circuit, meter *library.Meter, lib *library.Library) *model {
	return &model{c: c, alone: map[int][]float64{}, plan: solve.Prepare(c), meter: meter, tol: corner.TolerancesOf(c.Design),
		odds: func(kind string) float64 {
			if s := lib.Suspicion(kind); s != nil {
				return s.Odds
			}
			return library.Default().Suspicion(kind).Odds
		}}
}

// stateOf is the place of a state in the model; a new one where none is the same.
func (m *model) stateOf(p *bench.Probe, label string, same func(*state) bool) int {
	for i, s := range m.states {
		if s.situation == p.Situation && same(s) {
			return i
		}
	}
	m.states = append(m.states, &state{situation: p.Situation, opt: p.Options, label: label, key: stateKey(p)})
	return len(m.states) - 1
}

// running tells whether the charging system gives in a state.
func (s *state) running() bool { return circuit.Running(s.situation) && !s.opt.NoCharging }
