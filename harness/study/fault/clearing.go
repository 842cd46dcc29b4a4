package fault

import (
	"cmp"
	"math"
	"slices"

	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// Clearing is what ends a short.
type Clearing struct {
	// Device is the fuse that opens, the one nearer the fault when two are
	// equal; nil without any.
	Device   *circuit.Branch
	DeviceA  float64 // through it
	FastS    float64 // soonest; 0 when not known
	SlowS    float64 // latest; +Inf when it may never open, or without a device
	SlowNote string  // what the library's band says there
	Assumed  bool    // the device's type is not known and taken as a blade fuse
	// BreaksA is the breaking capacity of the device; 0 = not known. Exceeded
	// names the fuse on the way that has none before it and is good for less (BreaksA).
	BreaksA  float64
	Exceeded *circuit.Branch
	// Bare tells that some of the current comes from the battery without
	// passing a device; Parallel that more than one way feeds the fault.
	Bare, Parallel bool
	// Limited tells that all comes from a charger or converter, which bears a short: it ends nothing, and is waited for by none.
	Limited bool
}

// TooWeak tells that a device is there and may never open.
func (c *Clearing) TooWeak() bool { return c.Device != nil && !c.Bare && math.IsInf(c.SlowS, 1) }

// Device is the fuse of a branch at the ambient of its place; assumed tells
// that the type is not known: a factory fuse is taken as a blade fuse.
func Device(c *circuit.Circuit, b *circuit.Branch) (d fusing.Device, assumed bool) {
	d = b.Device(0)
	d.Type, assumed = deviceType(c, b)
	if assumed && d.Rating != nil {
		d.Rating = fusing.RatingOf(d.Type, d.Rating.RatingA)
	}
	return d, assumed
}

// walk follows the current of one short after another back to the battery.
type walk struct {
	s       *Study
	flow    *flow
	stamp   []int // by node: round in which known holds
	known   []Clearing
	round   int
	wires   []carried
	marked  []int // by wire: round in which it is listed
	through []Carries
	heats   []Heat          // by number of the conditions: what was worked out last
	shorted *circuit.Branch // the wire in which the short is; nil = in a part
	limited []bool          // by node: chargers alone feed it
}

// carried is a wire on the way of the current.
type carried struct {
	wire *circuit.Wire
	amps float64
}

func newWalk(s *Study) *walk {
	w := &walk{s: s, limited: make([]bool, len(s.Circuit.Nodes)), stamp: make([]int, len(s.Circuit.Nodes)), known: make([]Clearing, len(s.Circuit.Nodes)),
		marked: make([]int, len(s.Circuit.Wires)), heats: make([]Heat, len(s.Circuit.Wires))}
	for _, n := range s.Circuit.Downstream() {
		from := n.FedBy()
		fed := slices.ContainsFunc(from, func(b *circuit.Branch) bool { return !w.limited[b.A.Index] })
		w.limited[n.Index] = s.Circuit.OfCharger(n) || len(from) > 0 && !fed && !s.Circuit.IsPost(n)
	}
	return w
}

// share of a short's current below which a branch does not carry it: coils and
// leaks. A whisker is no more than rounding.
const share, whisker = 0.02, 1e-9

// result follows one short.
func (w *walk) result(p point, f flow) Result {
	w.flow, w.wires, w.through, w.shorted = &f, w.wires[:0], nil, nil
	if p.wire != nil {
		w.shorted = p.wire.Branch
	}
	w.round++
	r := Result{CurrentA: f.amps, Seen: f.seen}
	switch {
	case p.wire == nil:
		r.Clearing = w.node(p.draws[0].Node)
	default:
		r.Clearing = w.along(p)
	}
	if p.back != nil {
		w.goBack(p.back)
		r.Clearing = w.backFuses(p.back, r.Clearing)
	}
	w.heat(&r)
	r.Through = w.through
	return r
}

// along is what clears a short of a wire: what stands before it, and, where
// current comes round by its far end too, the later of the two.
func (w *walk) along(p point) Clearing {
	b := p.wire.Branch
	if beyond := w.flow.amps - w.flow.through(b); w.s.looped && p.share < 1 && beyond > share*w.flow.amps {
		before := 0.0
		if p.share > 0 {
			before = w.flow.through(b)
		}
		w.carry(p.wire, math.Max(before, beyond)) // what comes round by its far end
	}
	var c Clearing
	if p.share > 0 {
		c = w.branch(b)
	} else {
		c = w.node(p.wire.From.Node)
	}
	for _, more := range p.wire.To.Node.FedBy() {
		if more != b && w.carries(more) {
			c = both(c, w.branch(more))
		}
	}
	for _, more := range w.comeBack(p.wire.To.Node) {
		c = both(c, w.backward(more))
	}
	if w.s.Circuit.BothWays() && w.s.Circuit.IsPost(p.wire.To.Node) {
		bare := nothing()
		bare.Bare = true
		c = both(c, bare)
	}
	return c
}

func nothing() Clearing { return Clearing{SlowS: math.Inf(1), FastS: math.Inf(1)} }

func (w *walk) carries(b *circuit.Branch) bool { return w.flow.through(b) > share*w.flow.amps }

// node is what clears a short at a node: the latest over the ways that feed it.
func (w *walk) node(n *circuit.Node) Clearing {
	if w.stamp[n.Index] == w.round {
		return w.known[n.Index]
	}
	if way := &w.s.stems.feed[n.Index]; way.long >= longStem {
		w.carryAll(way)
		return w.stem(way)
	}
	w.stamp[n.Index] = w.round
	c := nothing()
	if w.s.Circuit.IsPost(n) {
		c.Bare = true
		w.known[n.Index] = c
		return c
	}
	c.Limited = w.limited[n.Index]
	w.known[n.Index] = c
	first := true
	for _, b := range w.bringing(n) {
		if more := w.branch(b); first {
			c, first = more, false
		} else {
			c = both(c, more)
		}
	}
	for _, b := range w.comeBack(n) {
		if more := w.backward(b); first {
			c, first = more, false
		} else {
			c = both(c, more)
		}
	}
	w.known[n.Index] = c
	return c
}

// bringing lists the feeds of a node that bring it current, the shorted wire left out: those that
// carry the short, or, where its current comes round by other ways, the one that brings the most of the rest. What
// passes that passes its fuses too.
func (w *walk) bringing(n *circuit.Node) (list []*circuit.Branch) {
	var most *circuit.Branch
	for _, b := range n.FedBy() {
		switch {
		case b == w.shorted: // its current ends in the short
		case w.carries(b):
			list = append(list, b)
		case w.flow.through(b) > whisker*w.flow.amps && (most == nil || w.flow.through(b) > w.flow.through(most)):
			most = b
		}
	}
	if len(list) == 0 && most != nil {
		list = append(list, most)
	}
	return list
}

// comeBack lists the branches that a node feeds and that bring it current, from beyond them: the
// link of two batteries is fed from both ends, and so is a leg of a ring.
func (w *walk) comeBack(n *circuit.Node) (list []*circuit.Branch) {
	if !w.s.looped {
		return nil
	}
	for _, b := range n.FeedsOn() {
		if w.flow.through(b) < -share*w.flow.amps {
			list = append(list, b)
		}
	}
	return list
}

// backward is what clears a short fed through a branch from its far end.
func (w *walk) backward(b *circuit.Branch) Clearing {
	amps := math.Abs(w.flow.through(b))
	if b.Wire != nil {
		w.carry(b.Wire, amps)
	}
	c := w.node(b.B)
	if b.Kind != circuit.FuseBranch {
		return c
	}
	return w.opens(b, amps, c)
}

// both is two ways that feed a fault: it ends when the later is open.
func both(a, b Clearing) Clearing {
	switch {
	case a.Limited && a.Device == nil:
		return b
	case b.Limited && b.Device == nil:
		return a
	}
	out := a
	if b.SlowS > a.SlowS || b.Bare && !a.Bare {
		out = b
	}
	out.FastS = math.Max(a.FastS, b.FastS)
	out.Bare = a.Bare || b.Bare
	out.Parallel = true
	if out.Exceeded == nil {
		out.Exceeded = a.Exceeded
	}
	if out.Exceeded == nil {
		out.Exceeded = b.Exceeded
	}
	return out
}

// branch is what clears a short fed by a branch: of devices in series the one
// that must open first.
func (w *walk) branch(b *circuit.Branch) Clearing {
	amps := math.Abs(w.flow.through(b))
	if b.Wire != nil {
		w.carry(b.Wire, amps)
	}
	c := w.node(b.A)
	if b.Kind != circuit.FuseBranch {
		return c
	}
	return w.opens(b, amps, c)
}

// stem is node for those on a stem, whose wires are listed.
func (w *walk) stem(way *stem) Clearing {
	if way.fuse == nil {
		return w.node(way.foot)
	}
	amps := math.Abs(w.flow.through(way.fuse))
	before := &w.s.stems.feed[way.fuse.A.Index]
	if before.foot == nil {
		return w.opens(way.fuse, amps, w.node(way.foot))
	}
	return w.opens(way.fuse, amps, w.stem(before))
}

// breaksA is the breaking capacity of a device at the system's voltage.
func (w *walk) breaksA(t *library.FuseType) float64 {
	return t.BreakingAt(w.s.Circuit.Design.NominalV())
}

// opens is what clears a short through a fuse, given what clears it before.
func (w *walk) opens(b *circuit.Branch, amps float64, c Clearing) Clearing {
	d, assumed := w.s.devices.of(b)
	o, first := d.Open(amps), c.Device == nil || c.Bare
	if w.s.looped {
		w.through = append(w.through, Carries{b, amps, o.FastS, o.SlowS})
	}
	if c.Device == nil || c.Bare || !(c.SlowS < o.SlowS) {
		was := c
		c = Clearing{Device: b, DeviceA: amps, SlowS: o.SlowS, SlowNote: o.Note, Assumed: assumed,
			FastS: math.Inf(1), Exceeded: was.Exceeded}
		if was.Device != nil && !was.Bare {
			c.FastS = was.FastS
		}
		if d.Type != nil {
			c.BreaksA = w.breaksA(d.Type)
		}
	}
	c.FastS = math.Min(c.FastS, o.FastS)
	if first && c.Exceeded == nil && amps > w.s.devices.breaksA[b.Index] {
		c.Exceeded = b
	}
	return c
}

func (w *walk) carry(wire *circuit.Wire, amps float64) {
	if w.marked[wire.Index] != w.round {
		w.marked[wire.Index] = w.round
		w.wires = append(w.wires, carried{wire, amps})
	}
}

// carryAll lists the wires that stand for all on a stem, with the most current
// that any of them carries.
func (w *walk) carryAll(way *stem) {
	amps := math.Abs(w.flow.through(way.first))
	for s := way.wires; s != nil; s = s.next {
		w.carry(s.wire, amps)
	}
}

// goBack lists the returns that bring the current of a short inside a part.
func (w *walk) goBack(n *circuit.Node) {
	if way := &w.s.stems.back[n.Index]; way.long >= longStem {
		w.carryAll(way)
		w.goBack(way.foot)
		return
	}
	for _, b := range n.ReturnsBy() {
		amps := math.Abs(w.flow.through(b))
		if amps < share*w.flow.amps || b.Wire != nil && w.marked[b.Wire.Index] == w.round {
			continue
		}
		if b.Wire != nil {
			w.carry(b.Wire, amps)
		}
		w.goBack(b.B)
	}
}

// backFuses is what clears a short whose current has one way back, with the fuses that
// stand in it; what no fuse of the feed clears is left as it is.
func (w *walk) backFuses(n *circuit.Node, c Clearing) Clearing {
	for range w.s.Circuit.Branches {
		out := n.ReturnsBy()
		if len(out) != 1 || c.Device == nil || c.Bare {
			break
		}
		if out[0].Kind == circuit.FuseBranch {
			c = w.opens(out[0], math.Abs(w.flow.through(out[0])), c)
		}
		n = out[0].B
	}
	return c
}

// heat finds the wire on the way that comes nearest to damage, the first of
// equal ones.
func (w *walk) heat(r *Result) {
	var worst Heat
	for _, c := range w.wires {
		if h := w.heatOf(c, w.lasts(c, r.SlowS)); w.s.Wires.Rated(c.wire) && (worst.Wire == nil || w.nearer(h, &worst)) {
			worst = *h
			worst.Wire = c.wire
		}
	}
	if worst.Wire != nil {
		w.s.Wires.finish(&worst)
		r.Worst = &worst
	}
}

// lasts is how long a wire carries its current: where more than one battery feeds a short,
// until the device opens that carries the same, on the side of the battery that drives it.
func (w *walk) lasts(c carried, shortS float64) float64 {
	const same = 0.02
	own := -1.0
	for _, x := range w.through {
		if math.Abs(x.Amps-c.amps) <= same*c.amps {
			own = math.Max(own, x.SlowS)
		}
	}
	if own < 0 {
		return shortS
	}
	return math.Min(own, shortS)
}

// heatOf is Wires.Heat without the end temperature, which wires of one kind on a
// way share.
func (w *walk) heatOf(c carried, seconds float64) *Heat {
	was := &w.heats[w.s.Wires.same[c.wire.Index]]
	if was.Wire == nil || was.Amps != c.amps || was.Seconds != seconds {
		*was = w.s.Wires.stands(c.wire, c.amps, seconds)
	}
	return was
}

// nearer compares two wires by the margin in time, and where both stand the
// current for good by temperature against limit; of equal ones a feed goes first.
func (w *walk) nearer(a, b *Heat) bool {
	if less := compare(a.Margin(), b.Margin()); less != 0 {
		return less < 0
	}
	w.s.Wires.finish(a)
	w.s.Wires.finish(b)
	return cmp.Or(compare(b.EndC-b.LimitC, a.EndC-a.LimitC), cmp.Compare(a.Wire.Role, b.Wire.Role)) < 0
}

// compare is cmp.Compare for figures that rounding may have parted.
func compare(a, b float64) int {
	if math.Abs(a-b) <= 1e-9*math.Abs(a) {
		return 0
	}
	return cmp.Compare(a, b)
}
