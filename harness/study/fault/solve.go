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
				continue
			}
			sh.Fed = true
			sh.Results[state] = w.result(p, f)
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
}

// current finds the short's current. Of the source's two bounds the one that
// gives less holds: its line of voltage over current is concave, so a resistance
// meets the lower of the two lines first.
func (l *loom) current(p point, backOhm float64) (flow, bool) {
	least := flow{amps: math.Inf(1), point: p}
	for _, n := range l.nets {
		amps, ok := n.short(p, backOhm)
		if !ok {
			return flow{}, false
		}
		if amps < least.amps {
			least.amps, least.net = amps, n
		}
	}
	if least.net == nil {
		return flow{}, false
	}
	// The last response is the one that the walk reads.
	if least.net != l.nets[len(l.nets)-1] {
		least.net.response.Draw(p.draws...)
	}
	return least, true
}

// liveV is the voltage below which a point counts as not fed.
const liveV = 0.05

// leastOhm keeps a short at the battery's posts finite.
const leastOhm = circuit.LeastOhm

// short is the current of a short: the open voltage at the point over the
// resistance seen there and that of the return.
func (n *net) short(p point, backOhm float64) (amps float64, ok bool) {
	if !n.response.Draw(p.draws...) {
		return 0, false
	}
	open, seen := 0.0, 0.0
	for _, d := range p.draws {
		open += d.Amps * n.Volts(d.Node)
		seen -= d.Amps * n.response.At(d.Node)
	}
	if p.wire != nil {
		seen += p.share * (1 - p.share) * n.ohm[p.wire.Branch.Index]
	}
	if open < liveV {
		return 0, false
	}
	return open / math.Max(seen+backOhm, leastOhm), true
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
