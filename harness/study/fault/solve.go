package fault

import (
	"math"

	"fusewright/harness/network/circuit"
)

// study works out a short in both states.
func (s *Study) study(w *walk, j *job, looms [2][]*loom) {
	sh := j.short
	for state, p := range j.points {
		for _, l := range looms[state] {
			f, ok := l.current(p, s.backOhm(p, l))
			if !ok {
				sh.Behind = sh.Behind || f.seen.Behind
				continue
			}
			sh.Fed = true
			sh.Results[state] = w.result(p, f)
			if !s.Unfollowed && !w.alone() {
				w.inTurn(l, p, s.backOhm(p, l), &sh.Results[state])
			}
			break
		}
	}
}

// backOhm is the resistance of the return that the network does not hold:
// nothing in the strong state, where bare metal touches next to the battery; in
// the weak one the frame, or without a frame a wire like the feed.
func (s *Study) backOhm(p point, l *loom) float64 {
	if !l.hot || p.back != nil {
		return 0
	}
	if s.framed {
		return s.frameOhm
	}
	return l.feedOhm[p.wire.From.Node.Index] + p.share*l.nets[0].ohm[p.wire.Branch.Index]
}

// feedOhms is the resistance of the wires on the main feed of every node.
func feedOhms(c *circuit.Circuit, ohm []float64) []float64 {
	out := make([]float64, len(c.Nodes))
	for _, n := range c.Downstream() {
		if from := n.FedBy(); len(from) > 0 && !c.IsPost(n) {
			out[n.Index] = out[from[0].A.Index]
			if from[0].Wire != nil {
				out[n.Index] += ohm[from[0].Index]
			}
		}
	}
	return out
}

// flow is the current of one short in one network.
type flow struct {
	net   *net
	point point
	amps  float64
	seen  Seen
}

// Seen is what a short sees: the open voltage at its point and the resistances between it and
// the source.
type Seen struct {
	OpenV   float64
	FeedOhm float64 // source and way there, as a source at the short sees them
	BackOhm float64 // of the return, where the network does not hold it
	Net     Net
	// Behind tells that batteries would feed it against diodes alone, which let nothing back.
	Behind bool
}

// Net tells which network a short was found in.
type Net struct {
	State int  // Strong or Weak
	Stiff bool // the charging system's voltage bounds it; else battery and charging current
	Rest  bool // with contacts at rest
	// Blocking are the diodes that let nothing through while this short lasts.
	Blocking []*circuit.Branch
}

// CurrentA is the prospective current.
func (s Seen) CurrentA() float64 { return s.OpenV / math.Max(s.FeedOhm+s.BackOhm, leastOhm) }

// current finds the short's current. Of the source's two bounds the one that
// gives less holds: its line of voltage over current is concave, so a resistance
// meets the lower of the two lines first.
func (l *loom) current(p point, backOhm float64) (flow, bool) {
	least := flow{amps: math.Inf(1), point: p}
	for _, n := range l.nets {
		n, seen, ok := l.blocking(n, p, backOhm)
		if !ok {
			return flow{seen: seen}, false
		}
		if amps := seen.CurrentA(); amps < least.amps {
			least.amps, least.net, least.seen = amps, n, seen
		}
	}
	if least.net == nil {
		return flow{}, false
	}
	if from := p.draws[0].Node; least.amps > 0 {
		least.amps = math.Min(least.amps, limitA(l.c, from, l.state))
	}
	least.net.response.Draw(p.draws...) // the walk reads it
	return least, true
}

// liveV is the voltage below which a point counts as not fed.
const liveV = 0.05

// leastOhm keeps a short at the battery's posts finite.
const leastOhm = circuit.LeastOhm

// short is the open voltage at the point and the
// resistance seen there and that of the return; false where it is not fed.
func (n *net) short(p point, backOhm float64) (s Seen, ok bool) {
	if !n.response.Draw(p.draws...) {
		return s, false
	}
	s.BackOhm, s.Net = backOhm, n.of
	for _, d := range p.draws {
		s.OpenV += d.Amps * n.Volts(d.Node)
		s.FeedOhm -= d.Amps * n.response.At(d.Node)
	}
	if p.wire != nil {
		s.FeedOhm += p.share * (1 - p.share) * n.ohm[p.wire.Branch.Index]
	}
	return s, s.OpenV >= liveV
}

// through is the current of a branch during the short, A to B; of the bared
// wire, that of its part before the short.
func (f *flow) through(b *circuit.Branch) float64 {
	ohm := f.net.ohm[b.Index]
	if math.IsInf(ohm, 1) || !(ohm > 0) {
		return 0
	}
	v := f.at(b.A) - f.at(b.B)
	if b.Diode != nil {
		v -= b.Diode.Type.KneeV
	}
	if p := f.point; p.wire != nil && b == p.wire.Branch {
		v += f.amps * (1 - p.share) * ohm
	}
	return v / ohm
}

// at is the voltage of a node during the short.
func (f *flow) at(n *circuit.Node) float64 {
	if n.Index == 0 {
		return 0
	}
	return f.net.Volts(n) + f.amps*f.net.response.At(n)
}
