package solve

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
)

// regulatorOhm is the slope of a regulator when the circuit gives none: 30 A
// pull it down by 0.15 V. Common practice, no source.
const regulatorOhm = 0.005

// regulatedClassV is the regulated voltage of a 12 V system when the design
// gives none. Common practice, no source.
const regulatedClassV = 14.2

// engineA is the limit of a machine that the engine drives, in the situation under the options.
func (n *Network) engineA(c *design.Charging) float64 {
	switch s := n.situation; {
	case n.opt.NoCharging || s.Key == design.KeyOff:
		return 0
	case n.opt.ColdCharging:
		return charging.Cold(c).Amps(s.EngineRPM)
	default:
		return charging.Of(c).Amps(s.EngineRPM)
	}
}

// mostMadeUp is how far above its voltage a regulator goes at the machine for what its cable
// loses, as a share: it senses a battery, not a cable that is open. Our choice.
const mostMadeUp = 0.2

// sensesAfar is the charging system behind a cable whose regulator senses the posts; nil = none.
func sensesAfar(c *circuit.Circuit) *circuit.Branch {
	if d := c.Design; d == nil || !d.Charging.Apart() || d.Charging.SensesMachine() {
		return nil
	}
	return c.Branches[slices.IndexFunc(c.Branches, func(b *circuit.Branch) bool { return b.Kind == circuit.ChargerBranch })]
}

// sensed is what a regulator held at the machine last, and by how much less than it had to.
type sensed struct{ emfV, shortV float64 }

// moveSensing has a regulator make up at the machine for what its cable loses; it tells whether
// that moved anything. What is lost follows what is held, nearly one for one where the way is long: the
// line through the last two finds where they agree.
func (n *Network) moveSensing(turn int) bool {
	b, c := n.plan.sensing, n.plan.circuit
	if b == nil || n.limitA == 0 {
		return false
	}
	law, held := &n.laws[b.Index], n.heldV()
	lost := n.v[b.A.Index] - n.v[b.B.Index] - (n.v[c.Positive().Index] - n.v[c.Negative().Index])
	emf := held + min(max(lost, 0), mostMadeUp*held)
	if !uneven(emf, law.EMFV, turn) {
		return false
	}
	now := sensed{law.EMFV, emf - law.EMFV}
	if was := n.sensed; turn > 0 && now.shortV != was.shortV {
		if at := now.emfV - now.shortV*(now.emfV-was.emfV)/(now.shortV-was.shortV); at > held && at < (1+mostMadeUp)*held && turn < calmTurns {
			emf = at
		}
	}
	n.sensed, law.EMFV = now, emf
	return true
}

// heldV is the voltage that the charging system's regulator holds.
func (n *Network) heldV() float64 {
	if n.opt.RegulatedV != 0 {
		return n.opt.RegulatedV
	}
	usual, d := regulatedClassV, n.plan.circuit.Design
	if d == nil {
		return usual
	}
	return d.Charging.RegulatedV.Or(usual * d.NominalV() / 12)
}

func chargerLaw(n *Network, b *circuit.Branch) Law {
	law := Law{Kind: Charger, Ohm: or(b.Ohm, regulatorOhm), EMFV: n.heldV(), LimitA: n.limitA}
	if d := n.plan.circuit.Design; d != nil && d.Charging.Apart() {
		law.ChargeOhm = outputLeakOhm
	}
	return law
}
