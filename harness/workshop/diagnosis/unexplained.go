package diagnosis

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
)

// unexplained is what stands first where it is likelier that nothing is wrong which the network tells of than
// the likeliest fault, with all that cannot be told from it.
const unexplained = "Nothing in the network explains these readings together. First check the meter, its scale and its leads, and the design's figure " +
	"for each load that reads wrong against its label; then take the failed readings again."

// notFed says of readings of which none failed but at the posts what to do first: those are what comes in, and
// the harness has no part in them. Empty where another reading failed too.
func notFed(placed []*readings.Placed, judged []*Judged) (text string) {
	for i, p := range placed {
		switch {
		case judged[i].Verdict != Fail:
		case p.Check == nil || !p.Check.Posts() || noSupply(p): // which is said for certain
			return ""
		case text == "":
			text = fmt.Sprintf("At the posts reading %s shows %s, where %s must stand; nothing else that was read is out of its bounds. That comes from the supply, "+
				"the charging system or the battery, not from the harness: put it right, with the same on, and read again. Where it falls by itself, "+
				"the battery is weak, or something draws that is not on the list.", judged[i].Check, judged[i].Reads, judged[i].Allowed)
		}
	}
	return text
}

// likelier tells that a sound circuit is likelier than a candidate with what is alike.
func likelier(sound float64, c *candidate) bool {
	for _, o := range append([]*candidate{c}, c.alike...) {
		sound -= o.share
	}
	return sound > 0
}

// inCircuit tells of each branch whether a reading that failed hangs on it: of volts the ways to the loads that
// are read, of a current those of all that draws through it.
func (m *model) inCircuit(sound *fit) []bool {
	in := make([]bool, len(m.c.Branches))
	add := func(of []bool) {
		for i, on := range of {
			in[i] = in[i] || on
		}
	}
	for _, s := range m.sensors {
		if s.passed {
			continue
		}
		if w := s.probe.Wire; w != nil {
			in[w.Branch.Index] = true
		}
		for _, b := range s.probe.Return {
			in[b.Index] = true
		}
		for _, span := range s.probe.Volts {
			draws := slices.DeleteFunc(slices.Clone(span.Plus.Branches), func(b *circuit.Branch) bool { return b.Load == nil })
			if add(m.c.Feeding(span.Plus)); len(draws) > 0 {
				add(m.c.Needed(draws...))
			}
		}
		if b := s.probe.Amps; b != nil && s.state >= 0 {
			add(m.c.Feeding(b.B))
			for _, l := range m.c.Below(b.B).Loads {
				if sound.sols[s.state].Amps(l) != 0 {
					in[l.Index] = true
					add(m.c.Needed(l))
				}
			}
		}
	}
	return in
}

// throughFrame tells that current goes on from a ground point through the frame and the battery's earth strap
// to the battery, and that no reading which passes clears those: one that hangs on another stud would.
func (m *model) throughFrame(stud *circuit.Branch) bool {
	if !frameStud(stud) {
		return false
	}
	return !slices.ContainsFunc(m.c.Branches, func(o *circuit.Branch) bool {
		return o != stud && frameStud(o) && slices.ContainsFunc(m.sensors, func(s *sensor) bool {
			return s.passed && s.state >= 0 && slices.ContainsFunc(s.probe.Volts, func(span bench.Span) bool {
				return slices.ContainsFunc(span.Plus.Branches, func(l *circuit.Branch) bool { return l.Load != nil && m.c.Needed(l)[o.Index] })
			})
		})
	})
}

func frameStud(b *circuit.Branch) bool {
	if b.Part == nil {
		return false
	}
	g, ok := b.Part.Source.(*design.Ground)
	return ok && g.Kind == design.FrameStud
}

// frameReading is the reading that tells a stud from the frame and the earth strap behind it; "" = nothing to tell.
func (m *model) frameReading(top *candidate) string {
	if len(top.faults) != 1 || top.faults[0].kind != groundPoint || !m.throughFrame(top.faults[0].branch) || top.point == nil {
		return ""
	}
	stud, in, most := top.faults[0].branch, "", 0.0
	for k, sol := range top.sols {
		if a := math.Abs(sol.Amps(stud)); in == "" || a > most {
			in, most = m.states[k].label, a
		}
	}
	lies := "The volts lie"
	if v := most * top.faults[0].size; v > 0 && !top.faults[0].open {
		lies = "About " + meterText(v, quantity.Voltage) + " lie"
	}
	return fmt.Sprintf("These readings cannot tell %s from the battery's earth strap or the frame between. With all on as in %s read volts from the bolt of the stud itself "+
		"to bare frame a hand's breadth beside it, then from there to %s. %s across the one that is bad. ", m.partName(stud.Part), in, m.minus(), lies)
}
