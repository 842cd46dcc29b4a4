// Package fault studies what happens when one thing goes wrong: a bolted short
// at every place where a wire could be bared and inside every load and coil; a
// return lost; one of several wires side by side lost; a fuse of a ring out; a relay contact welded; the regulator failed high; the battery
// connected the wrong way round. It computes and judges nothing: package rules
// makes findings of it, and every result is in the study, harmless ones too.
//
// Shorts are studied twice: in the state that drives most current (full battery
// with the charging system at its limit, wires at 20 °C, new contacts, the
// return bare metal at the battery) and in the one that drives least (battery
// nearly empty, wires at their insulation class, aged contacts, the longest
// return). IEC 60909-0 takes conductors at 20 °C for the greatest and hot for
// the least current (from memory); the other choices are ours and are printed
// with the study.
//
// The network is factorised once a state. A short costs one substitution along
// its own way to the source (package solve, Response), never a new build. A lost
// return is solved in the part of the network that it can change (package solve,
// Local), and in the whole where it reaches further.
//
// A diode carries a short's current with its feed and blocks against it; one found the wrong
// way round is taken to point with its feed, and none to have failed before the short.
//
// Not modelled: inductance (a direct current in a loom of a few metres settles
// in well under a millisecond), the arc of a short that is not bolted, the
// resistance that a heating wire adds during the fault, and what the machine's
// own loads take of the fault. All but the arc err towards more current.
package fault

import (
	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"math"
)

// Study is every single fault of a circuit. Lists are in the order of the
// circuit's wires and parts.
type Study struct {
	Circuit *circuit.Circuit
	Wires   *Wires // what each wire bears
	Shorts  []*Short
	Lost    []*Lost    // returns whose loss leaves parts joined to each other
	Abreast []*Abreast // of wires side by side, one lost
	Legs    []*Leg     // of rings, one fuse out
	Strung  []*Strung  // of loads in series
	Welded  []*Welded
	// Exposed is every accessory and relay under a regulator failed high and a
	// battery connected the wrong way round.
	Exposed []*Exposure
	High    Condition // of the overvoltage
	Reverse Condition // of the reversed battery
	States  [2]string // what Strong and Weak rest on, in words

	byWire [][]*Short // by wire index
	// Unfollowed tells of so many fuses in rings that shorts there are solved with all of them in, and none is taken out.
	Unfollowed bool

	plan     *solve.Plan
	devices  *devices
	stems    *stems
	rings    *circuit.Rings
	looped   bool    // current may come round: by a further battery, or by a ring
	framed   bool    // some ground is a stud on the frame
	frameOhm float64 // the greatest path back through it
	jobs     []job
}

// OfWire lists the shorts along a wire, from its near end to its far end; of
// returns, those inside the parts whose current they bring back.
func (s *Study) OfWire(w *circuit.Wire) []*Short { return s.byWire[w.Index] }

// LeastA is the least current that a bolted short along a wire, or in what it is the return
// of, drives while nothing has opened; +Inf where there is none.
func (s *Study) LeastA(w *circuit.Wire) float64 {
	least := math.Inf(1)
	for _, sh := range s.OfWire(w) {
		if sh.Fed {
			least = math.Min(least, sh.Results[Weak].CurrentA)
		}
	}
	return least
}

// FarEnd is the short at a feed wire's far end; nil for returns.
func (s *Study) FarEnd(w *circuit.Wire) *Short {
	list := s.byWire[w.Index]
	if n := len(list); n > 0 && list[n-1].Where == FarEnd {
		return list[n-1]
	}
	return nil
}

// Compute studies a circuit.
func Compute(c *circuit.Circuit) *Study {
	return ComputeBy(c, conductor.NewRater(c.Design.Library, c.Design.Practice))
}

// ComputeBy is Compute with a rater that remembers; see ShortsBy.
func ComputeBy(c *circuit.Circuit, rater *conductor.Rater) *Study {
	s := ShortsBy(c, rater)
	s.High, s.Reverse = HighFor(c.Design.NominalV()), ReverseFor(c.Design.NominalV())
	s.lostReturns(true)
	s.abreast()
	s.legs()
	s.strings()
	s.weldedContacts()
	s.exposures()
	return s
}

// ShortsBy studies the shorts of a circuit alone, with a rater of the design's
// library and practice that remembers from circuit to circuit.
func ShortsBy(c *circuit.Circuit, rater *conductor.Rater) *Study {
	s := &Study{Circuit: c, Wires: newWires(c, rater), byWire: make([][]*Short, len(c.Wires)),
		plan: solve.Prepare(c), devices: newDevices(c, rater)}
	s.stems = newStems(c, s.Wires)
	s.rings = c.Rings()
	s.looped = c.BothWays() || s.rings != nil
	s.Unfollowed = len(s.rings.Fuses(c)) > mostRingFuses || s.rings.Largest(c) > mostInRing
	s.frameOhm, s.framed = frameOhm(c)
	s.shorts()
	return s
}

// loads lists the accessories' branches in order, standby draws left out.
func loads(c *circuit.Circuit) []*circuit.Branch {
	var out []*circuit.Branch
	for _, b := range c.Branches {
		if isAccessory(b) {
			out = append(out, b)
		}
	}
	return out
}

// isAccessory tells whether a branch is an accessory's and not its standby draw.
func isAccessory(b *circuit.Branch) bool {
	return b.Load != nil && b.Load.Load != nil && !b.Load.Standby
}

// coils lists the relay coils that move contacts, in order.
func coils(c *circuit.Circuit) []*circuit.Branch {
	var out []*circuit.Branch
	for _, p := range c.Parts {
		if p.Kind == circuit.Relay {
			if b := p.Coil(); b != nil {
				out = append(out, b)
			}
		}
	}
	return out
}

// accessory is the design's load of a branch.
func accessory(b *circuit.Branch) *design.Load { return b.Load.Load }
