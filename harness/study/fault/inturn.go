package fault

import (
	"math"
	"slices"

	"fusewright/harness/network/circuit"
)

// alone tells whether all of the last short passes every device on its way, so that the first to
// open ends it. Of a further battery that feeds it too each has its own device; one battery's devices in a ring share.
func (w *walk) alone() bool {
	return !slices.ContainsFunc(w.through, func(x Carries) bool {
		return x.Amps < (1-share)*w.flow.amps && (!w.s.Circuit.BothWays() || w.s.rings.In(x.Device))
	})
}

// inTurn follows a short that several devices feed: when the first has opened the others carry all of
// it. Each opens at its latest, by the shares of its time that it has spent at each current. It is followed with all
// devices in, and with each of them out from the start, since one may be out or be early; kept is
// what hurts a wire most.
func (w *walk) inTurn(l *loom, p point, backOhm float64, r *Result) {
	if r.Bare || r.Device == nil {
		return
	}
	most := slices.Clone(w.through)
	follow := func(out ...*circuit.Branch) sequence {
		seq := sequence{w: w, loom: l, point: p, backOhm: backOhm, open: out, spent: map[*circuit.Branch]float64{}, wires: map[*circuit.Wire]*Heat{}, worst: map[*circuit.Wire]*Heat{}}
		seq.run(&most)
		return seq
	}
	all := follow()
	all.into(r)
	for _, x := range slices.Clone(most) {
		if slices.ContainsFunc(r.Through, func(y Carries) bool { return y.Device == x.Device && y.Amps < (1-share)*r.CurrentA }) {
			one := *r
			if seq := follow(x.Device); seq.device != nil {
				one.Out = x.Device
				if seq.into(&one); one.Worst != nil && !one.Worst.Survives() && (r.Worst == nil || one.Worst.Margin() < r.Worst.Margin()) {
					*r = one
				}
			}
		}
	}
	r.Through = most
}

// sequence is a short with the devices that open one after another.
type sequence struct {
	w       *walk
	loom    *loom
	point   point
	backOhm float64
	open    []*circuit.Branch // from the start, then in the order of opening

	spent   map[*circuit.Branch]float64 // share of its time to open
	wires   map[*circuit.Wire]*Heat     // as each is now
	worst   map[*circuit.Wire]*Heat     // of each the stretch with the least margin
	order   []*circuit.Wire
	device  *circuit.Branch // the last to open; nil = nothing flows
	deviceA float64
	atS     float64
	lastS   float64 // of atS, since the last but one opened
	before  []*circuit.Branch
	over    *circuit.Branch
}

// run goes from one opening to the next. Most is kept at the most that each device carries.
func (s *sequence) run(most *[]Carries) {
	for range len(s.w.s.Circuit.Branches) {
		f, ok := s.loom.without(s.open).current(s.point, s.backOhm)
		if !ok {
			return
		}
		r := s.w.result(s.point, f)
		through := slices.Clone(s.w.through)
		if s.over == nil {
			s.over = r.Exceeded
		}
		next, forS := -1, math.Inf(1)
		for i, x := range through {
			keep(most, x)
			if left := (1 - s.spent[x.Device]) * x.SlowS; next < 0 || left <= forS {
				next, forS = i, left
			}
		}
		if next < 0 {
			return
		}
		if s.device != nil {
			s.before = append(s.before, s.device)
		}
		opens := through[next]
		s.device, s.deviceA = opens.Device, opens.Amps
		s.atS, s.lastS = s.atS+forS, forS
		for _, c := range s.w.wires {
			s.warm(c, forS)
		}
		if math.IsInf(forS, 1) {
			return
		}
		for _, x := range through {
			s.spent[x.Device] += forS / x.SlowS
		}
		s.open = append(slices.Clip(s.open), opens.Device)
	}
}

// keep notes the most that a device carries.
func keep(most *[]Carries, x Carries) {
	if i := slices.IndexFunc(*most, func(y Carries) bool { return y.Device == x.Device }); i < 0 {
		*most = append(*most, x)
	} else if x.Amps > (*most)[i].Amps {
		(*most)[i] = x
	}
}

// warm heats a wire on from where it stands: as if its current had flowed for as long as that takes.
// One that is hotter than its current ever makes it cools, and counts as it was.
func (s *sequence) warm(c carried, seconds float64) {
	wires := s.w.s.Wires
	if !wires.Rated(c.wire) {
		return
	}
	was := s.wires[c.wire]
	if was == nil {
		s.order = append(s.order, c.wire)
	} else if c.wire.Spec.Type != nil && c.wire.Spec.Size != nil {
		seconds += wires.model(c.wire).since(c.amps, was.EndC)
		if math.IsInf(seconds, 1) && !math.IsInf(s.atS, 1) {
			return
		}
	}
	h := wires.Heat(c.wire, c.amps, seconds)
	h.Until = s.device
	s.wires[c.wire] = &h
	if worst := s.worst[c.wire]; worst == nil || s.w.nearer(&h, worst) {
		s.worst[c.wire] = &h
	}
}

// into writes what was found into a result.
func (s *sequence) into(r *Result) {
	if s.device == nil {
		return
	}
	d, assumed := s.w.s.devices.of(s.device)
	r.Device, r.DeviceA, r.SlowS, r.Assumed, r.Before, r.BreaksA = s.device, s.deviceA, s.atS, assumed, s.before, 0
	r.LastS = s.lastS
	r.SlowNote = d.Open(s.deviceA).Note
	if d.Type != nil {
		r.BreaksA = s.w.breaksA(d.Type)
	}
	r.FastS = math.Min(r.FastS, r.SlowS)
	if r.Exceeded == nil {
		r.Exceeded = s.over
	}
	r.Worst, r.Others = nil, nil
	for _, wire := range s.order {
		h := s.worst[wire]
		if !h.Survives() {
			r.Others = append(r.Others, h)
		}
		if r.Worst == nil || s.w.nearer(h, r.Worst) {
			r.Worst = h
		}
	}
	r.Others = slices.DeleteFunc(r.Others, func(h *Heat) bool { return h == r.Worst })
}

// without is a loom with devices open, kept for the next short.
func (l *loom) without(open []*circuit.Branch) *loom {
	if len(open) == 0 {
		return l
	}
	key := keyOf(open)
	if known := l.fewer[key]; known != nil {
		return known
	}
	fewer := &loom{c: l.c, hot: l.hot, state: l.state, feedOhm: l.feedOhm, plan: l.plan}
	for _, n := range l.nets {
		if n := newNet(l.plan, opened(n.opt, open), n.of); n != nil {
			fewer.nets = append(fewer.nets, n)
		}
	}
	if l.fewer == nil {
		l.fewer = map[string]*loom{}
	}
	l.fewer[key] = fewer
	return fewer
}
