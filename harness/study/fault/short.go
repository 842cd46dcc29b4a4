package fault

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Where is where along a wire, or in what, a short lies.
type Where string

// The places of shorts.
const (
	NearEnd Where = "near end" // towards the source
	Between Where = "between"  // at a place that the wire passes
	FarEnd  Where = "far end"
	Inside  Where = "inside" // across a load, a coil or a charger
)

// Short is a bolted short of a feed to the return, or across a part.
type Short struct {
	Wire   *circuit.Wire // the wire bared; nil inside a part
	Part   *circuit.Part // the part shorted inside; nil along a wire
	Branch *circuit.Branch
	Where  Where
	At     string  // the place; "" when the design does not say
	AlongM float64 // from the near end
	// Fed tells whether a battery reaches it at all; Behind that diodes alone keep one from it, so that what
	// charges feeds it by itself.
	Fed, Behind bool
	Results     [2]Result // Strong, Weak
}

// Result is a short in one state of the source.
type Result struct {
	CurrentA float64 // prospective: what flows before anything opens
	Seen     Seen
	Clearing
	// Worst is the wire on the way that comes nearest to damage; nil when the
	// way has none. The current of a short flows through wires before it too.
	Worst *Heat
	// Through are the devices on the way with the most that each carries, in a circuit in which current
	// may come round: not all of a short passes each.
	Through []Carries
	// Others are the wires besides Worst that it hurts, where several fuses feed the short.
	Others []*Heat
	// Before are the devices that open before the last one, Out one that is out from the start,
	// where that is worse. LastS is how much of SlowS passes after the last of Before has opened.
	Before []*circuit.Branch
	Out    *circuit.Branch
	LastS  float64
}

// Carries is a device with its current.
type Carries struct {
	Device *circuit.Branch
	Amps   float64
	FastS  float64 // soonest opening
	SlowS  float64 // latest opening
}

// point is where current is drawn.
type point struct {
	draws []solve.Draw
	share float64 // of the wire's length before it
	wire  *circuit.Wire
	back  *circuit.Node // where the return begins; nil = the battery or the frame
}

// job is a short with where it draws current, by state.
type job struct {
	short  *Short
	points [2]point
}

// shorts studies every place, several at once; each writes its own result, so
// that the study does not depend on how many.
func (s *Study) shorts() {
	c := s.Circuit
	var ready sync.WaitGroup
	ready.Go(s.Wires.prepare)
	looms := s.looms()
	ready.Wait()
	for _, wire := range c.Wires {
		if wire.Branch.BehindLoad() {
			continue // what flows there has passed a load
		}
		if wire.Role == circuit.FeedWire || wire.Role == circuit.CoilFeedWire {
			s.alongWire(wire)
		}
	}
	for _, b := range c.Branches {
		if isAccessory(b) && len(b.String) == 0 || b.IsCoil() || b.Kind == circuit.OutputBranch && !b.OfCharger().Converts() {
			s.insidePart(b)
		}
	}
	s.Shorts = make([]*Short, len(s.jobs))
	var next atomic.Int64
	for range min(runtime.GOMAXPROCS(0), 1+len(s.jobs)/chunk) {
		ready.Go(func() {
			w, own := newWalk(s), again(looms)
			for at := int(next.Add(chunk)) - chunk; at < len(s.jobs); at = int(next.Add(chunk)) - chunk {
				for k := at; k < min(at+chunk, len(s.jobs)); k++ {
					s.Shorts[k] = s.jobs[k].short
					s.study(w, &s.jobs[k], own)
				}
			}
		})
	}
	ready.Wait()
	s.jobs = nil
}

// chunk is how many shorts a goroutine takes at a time.
const chunk = 64

// looms solves the circuit by state: contacts pulled, then at rest where that
// differs.
func (s *Study) looms() (looms [2][]*loom) {
	c := s.Circuit
	src := sources(c)
	var ready sync.WaitGroup
	for state := range looms {
		s.States[state] = src[state].words
		ready.Go(func() {
			looms[state] = append(looms[state], newLoom(s.plan, c, src[state], state, false))
			if hasBreaks(c) {
				looms[state] = append(looms[state], newLoom(s.plan, c, src[state], state, true))
			}
		})
	}
	ready.Wait()
	return looms
}

// alongWire studies a wire's ends and the places that it passes.
func (s *Study) alongWire(wire *circuit.Wire) {
	for _, sh := range places(wire) {
		strong := point{wire: wire, share: sh.AlongM / wire.LengthM}
		if !(wire.LengthM > 0) {
			strong.share = 1
		}
		strong.draws = split(wire, strong.share)
		weak := strong
		if sh.Where == FarEnd {
			weak = acrossLoad(wire, weak)
		}
		s.jobs = append(s.jobs, job{sh, [2]point{strong, weak}})
		s.byWire[wire.Index] = append(s.byWire[wire.Index], sh)
	}
}

// split is a current drawn somewhere along a wire as currents drawn at its two
// ends, in the inverse proportion of the resistances to them.
func split(wire *circuit.Wire, share float64) []solve.Draw {
	switch share { // the same as any other short at that node, to the last digit
	case 0:
		return []solve.Draw{{Node: wire.From.Node, Amps: 1}}
	case 1:
		return []solve.Draw{{Node: wire.To.Node, Amps: 1}}
	}
	return []solve.Draw{{Node: wire.From.Node, Amps: 1 - share}, {Node: wire.To.Node, Amps: share}}
}

// acrossLoad makes the weak short at a load's terminals one to its return.
func acrossLoad(wire *circuit.Wire, p point) point {
	plus, minus, ok := wire.To.Part.Draws()
	if !ok || wire.To != plus || minus.Node.Index == 0 || len(minus.Node.ReturnsBy()) == 0 {
		return p
	}
	back := minus.Node
	for _, l := range wire.To.Part.Branches {
		if n := len(l.String); n > 0 { // to what the whole string returns to
			back = l.String[n-1].B
		}
	}
	p.draws = append(p.draws[:len(p.draws):len(p.draws)], solve.Draw{Node: back, Amps: -1})
	p.back = back
	return p
}

// across are the two nodes that a short inside a part joins: the ends of what draws, or, of a
// charger's output, those between which the battery that it charges drives current back.
func across(b *circuit.Branch) (plus, minus *circuit.Node, ok bool) {
	if b.Kind == circuit.OutputBranch {
		return b.A, b.B, true
	}
	hot, back, ok := b.Part.Draws()
	if !ok {
		return nil, nil, false
	}
	return hot.Node, back.Node, true
}

// Across are the nodes that a short inside a part joins.
func (sh *Short) Across() (plus, minus *circuit.Node) {
	plus, minus, _ = across(sh.Branch)
	return plus, minus
}

// In names what a short lies inside of: a part, or the output of a charger that has an input too.
func (sh *Short) In() string {
	if sh.Branch.Kind == circuit.OutputBranch && sh.Part.Converts() != nil {
		return "output of " + sh.Part.Name
	}
	return sh.Part.Name
}

// Feeders are the nearest fuses through which a short inside a part is fed.
func (sh *Short) Feeders(guards circuit.Guards, linked *circuit.Linked) []*circuit.Branch {
	plus, _, ok := across(sh.Branch)
	if !ok {
		return nil
	}
	fuses, _ := guards.Above(plus)
	if sh.Branch.Kind == circuit.OutputBranch {
		fuses, _ = linked.Into(plus)
	}
	return fuses
}

// insidePart studies a short inside a load, a coil or a charger, which its return carries.
func (s *Study) insidePart(b *circuit.Branch) {
	plus, minus, ok := across(b)
	if !ok || len(minus.ReturnsBy()) == 0 {
		return
	}
	sh := &Short{Part: b.Part, Branch: b, Where: Inside}
	if b.Part.Place != nil {
		sh.At = b.Part.Place.Name
	}
	p := point{draws: []solve.Draw{{Node: plus, Amps: 1}, {Node: minus, Amps: -1}}, share: 1, back: minus}
	s.jobs = append(s.jobs, job{sh, [2]point{p, p}})
	for x := range s.Circuit.WaysHome(plus, minus) {
		if x.Wire != nil {
			s.byWire[x.Wire.Index] = append(s.byWire[x.Wire.Index], sh)
		}
	}
}

// places lists the points of a wire: its ends and the places on its way.
func places(wire *circuit.Wire) []*Short {
	near := &Short{Wire: wire, Where: NearEnd}
	far := &Short{Wire: wire, Where: FarEnd, AlongM: wire.LengthM}
	at := wire.From.Part.Place
	if at != nil {
		near.At = at.Name
	}
	if p := wire.To.Part.Place; p != nil {
		far.At = p.Name
	}
	return append(append([]*Short{near}, between(wire)...), far)
}

// poleAt names the pole of a connector that parts a wire at a place: ", X3:2"; "" = none.
func poleAt(wire *circuit.Wire, at *design.Place) string {
	for _, p := range wire.Poles {
		if x := p.Inline.Part; x.Place == at {
			return fmt.Sprintf(", %s:%d", x.Ref, p.Cavity)
		}
	}
	return ""
}

// between follows the runs from place to place. A wire whose length the design
// gives is taken to pass them in the proportion of the runs.
func between(wire *circuit.Wire) []*Short {
	route, along := 0.0, 0.0
	for _, b := range wire.Route {
		route += b.Run.LengthM.Value
	}
	if !(route > 0) {
		return nil
	}
	var list []*Short
	at := wire.From.Part.Place
	for _, b := range wire.Route[:len(wire.Route)-1] {
		along += b.Run.LengthM.Value
		if at == b.Run.From {
			at = b.Run.To
		} else {
			at = b.Run.From
		}
		list = append(list, &Short{Wire: wire, Where: Between, At: at.Name + poleAt(wire, at),
			AlongM: along / route * wire.LengthM})
	}
	return list
}
