package fault

import (
	"math"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Thresholds of effects; our choices.
const (
	reversedV  = 1.0  // from where a part counts as reversed
	wokenShare = 0.10 // of a load's rated voltage, from where an idle one counts as woken
	idleV      = 0.3  // below which it was idle
	weakShare  = 0.05 // of its voltage lost, from where a load counts as weakened
	deadShare  = 0.30 // of its rated voltage left, below which it counts as dead
	sourceV    = 0.05 // above the highest ordinary voltage of the source

	ratedMostShare = 1.5 // of its rated voltage that a load in series bears without another figure

	chargerBears = 4.0 / 3 // of its nominal volts a charger bears at its input: 16 V of 12 V (makers' data sheets, from memory)
)

// state is an operating point: of a whole network or of the part of one.
type state interface {
	Volts(*circuit.Branch) float64
	Amps(*circuit.Branch) float64
	Closed(*circuit.Branch) bool
}

// whole is the operating point of a whole network.
type whole struct{ *solve.Solution }

func (w whole) Closed(b *circuit.Branch) bool { return w.Solution.Closed[b.Index] }

// drawsVoltage tells whether a branch is an accessory or a coil.
func drawsVoltage(b *circuit.Branch) bool {
	if b.Load != nil {
		return b.Load.Load != nil && !b.Load.Standby
	}
	return b.IsCoil()
}

// ordinaryV is the highest voltage in a solution, or what the charging system or a charger
// holds where that is higher: every part is made for it, and the source comes up to it when
// a lost return sheds load.
func ordinaryV(s *solve.Solution) float64 {
	v := 0.0
	if d := s.Circuit.Design; d != nil {
		v = d.HeldV()
	}
	for _, x := range s.NodeV {
		if x > v {
			v = x
		}
	}
	return v
}

// known is a voltage, zero where it floats.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// effect names what happens to a part; "" = nothing worth saying.
func effect(c *circuit.Circuit, b *circuit.Branch, before, after state, limitV float64) Effect {
	was, now := known(before.Volts(b)), known(after.Volts(b))
	if b.Load != nil && b.Load.Reverses { // it is made for either
		was, now = math.Abs(was), math.Abs(now)
	}
	rated := ratedV(c, b)
	limitV = bearsV(c, b, limitV)
	switch {
	case b.Load == nil && pulls(c, b, after) && !pulls(c, b, before):
		return Pulled
	case now > limitV && now > was+sourceV:
		return Excessive
	case math.Abs(was) < idleV && math.Abs(now) > wokenShare*rated:
		return Woken
	case now < -reversedV && now < was-reversedV:
		return Backward
	case math.Abs(was) < idleV || now > was*(1-weakShare):
		return ""
	case now < deadShare*rated:
		return Dead
	}
	return Weakened
}

// ratedV is the voltage that a load or coil is made for.
func ratedV(c *circuit.Circuit, b *circuit.Branch) float64 {
	switch {
	case b.Load != nil:
		return b.Load.RatedV
	case c.Design != nil:
		return c.NominalAt(b.A)
	}
	return 12
}

// bearsV is the voltage that a load bears by its design; of others the limit.
func bearsV(c *circuit.Circuit, b *circuit.Branch, limitV float64) float64 {
	if b.Load == nil {
		return limitV
	}
	if p := c.ConverterOf(b.A); p != nil { // what its converter holds is ordinary there
		limitV = math.Max(p.Output().OfCharger().HeldV(), b.Load.RatedV)
	}
	if x := b.OfCharger(); x != nil {
		limitV = math.Max(limitV, chargerBears*x.Type.SystemV())
	}
	if len(b.String) > 0 { // made for its share alone
		limitV = math.Min(limitV, ratedMostShare*b.Load.RatedV)
	}
	return accessory(b).MaxV.Or(limitV)
}

// pulls tells whether some make contact of a coil is closed.
func pulls(c *circuit.Circuit, coil *circuit.Branch, s state) bool {
	for _, contact := range c.ContactsOf(coil) {
		if contact.Closer.Coil == coil && s.Closed(contact) {
			return true
		}
	}
	return false
}

// leastChangeV is the least change of a branch's voltage that can have an
// effect while every relay stands; see effect.
func leastChangeV(c *circuit.Circuit, b *circuit.Branch, before state, limitV float64) float64 {
	was := known(before.Volts(b))
	if b.Load != nil && b.Load.Reverses {
		was = math.Abs(was)
	}
	least := math.Min(reversedV, math.Max(bearsV(c, b, limitV)-was, sourceV))
	switch {
	case was < 0:
		return 0
	case was < idleV:
		return math.Min(least, wokenShare*ratedV(c, b)-was)
	}
	return math.Min(least, weakShare*was)
}
