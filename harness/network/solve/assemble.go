package solve

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// leastOhm stands in for a resistance of nothing, so that every branch has a
// conductance. 50 A through it drop 50 µV.
const leastOhm = 1e-6

// assemble sets the law of every branch and whether it is there at all in the
// situation (contacts are decided later).
func (n *Network) assemble() {
	n.limitA = chargingLimitA(n.plan.circuit.Design, n.situation, &n.opt)
	drawing := circuit.Present(n.plan.circuit, n.situation)
	for i, b := range n.plan.circuit.Branches {
		n.laws[i], n.present[i] = Law{Kind: LawKinds}, true
		if law := branchLaws[b.Kind]; law != nil {
			n.laws[i] = law(n, b)
		}
		switch law := &n.laws[i]; {
		case b.Kind == circuit.ChargerBranch:
			n.present[i] = n.limitA > 0
		case b.Load != nil:
			n.present[i] = drawing[i] && (law.Kind != Ohmic || law.Ohm > 0)
		}
		n.laws[i].Ohm = max(n.laws[i].Ohm, leastOhm)
	}
}

// branchLaws has a row for each kind of branch.
var branchLaws = [circuit.BranchKinds]func(*Network, *circuit.Branch) Law{
	circuit.WireBranch:     (*Network).ohmic,
	circuit.ContactBranch:  (*Network).ohmic,
	circuit.FuseBranch:     (*Network).ohmic,
	circuit.ResistorBranch: (*Network).ohmic,
	circuit.LoadBranch:     (*Network).loadLaw,
	circuit.DiodeBranch:    func(n *Network, b *circuit.Branch) Law { return diodeLaw(b, n.opt.DiodesConduct) },
	circuit.BatteryBranch: func(n *Network, b *circuit.Branch) Law {
		return batteryLaw(b, n.plan.circuit.Design, n.charges(), &n.opt)
	},
	circuit.OutputBranch: func(n *Network, b *circuit.Branch) Law {
		return Law{Kind: Charger, Ohm: b.Ohm, EMFV: b.OfCharger().HeldV(), ChargeOhm: outputLeakOhm}
	},
	circuit.ChargerBranch: func(n *Network, b *circuit.Branch) Law {
		return chargerLaw(n, b)
	},
}

// diodeLaw is a straight line above the knee of the library's row, at 25 °C.
func diodeLaw(b *circuit.Branch, conducts bool) Law {
	t := b.Diode.Type
	law := Law{Kind: Valve, Ohm: b.Ohm, EMFV: t.KneeV, ChargeOhm: t.LeakOhm()}
	switch {
	case conducts:
		return Law{Kind: folded, Ohm: law.Ohm, EMFV: law.EMFV}
	case b.Diode.Reversed:
		law.EMFV = -law.EMFV
	}
	return law
}

func (n *Network) ohmic(b *circuit.Branch) Law { return Law{Kind: Ohmic, Ohm: branchOhm(b, &n.opt)} }

// branchOhm is the resistance of a wire, contact, fuse or resistor.
func branchOhm(b *circuit.Branch, opt *Options) float64 {
	ohm := b.Ohm
	if w := b.Wire; w != nil {
		if opt.WireTempC != nil {
			ohm += conductor.AtTemperature(w.ConductorOhm20, opt.WireTempC(w)) - w.ConductorOhm20
		}
		return ohm + endsOhm(w, opt) - w.EndsOhm
	}
	if b.Kind == circuit.ContactBranch || b.Kind == circuit.FuseBranch {
		ohm *= or(opt.ContactFactor, 1)
		if opt.BranchFactor != nil {
			ohm *= opt.BranchFactor(b)
		}
	}
	return ohm
}

// endsOhm is both terminations of a wire and the connectors on its way under the options.
func endsOhm(w *circuit.Wire, opt *Options) float64 {
	ohm := w.EndsOhm
	if opt.Aged {
		ohm += ageing(w.FromEnd) + ageing(w.ToEnd)
		for _, p := range w.Poles {
			ohm += ageing(p.Contact)
		}
	}
	return ohm * or(opt.ContactFactor, 1)
}

// ageing is by how much a contact's resistance rises in use.
func ageing(t *library.Terminal) float64 {
	if t == nil || t.AgedOhm <= 0 {
		return 0
	}
	return t.AgedOhm - t.ContactOhm
}

// loadLaw is the law of a load. Accessories draw all they can: wires must carry
// that. The machine's own loads draw their duty's average, because they only set
// the level of the posts.
func (n *Network) loadLaw(b *circuit.Branch) Law {
	power := b.Load.PowerW
	if b.Load.Vehicle != nil {
		power *= b.Load.Average()
	}
	if n.opt.LoadFactor != nil {
		power *= n.opt.LoadFactor(b)
	}
	return behaviourLaw(b.Load, power)
}

// AverageDraw is a LoadFactor that makes accessories too draw their average over a
// situation that lasts so many seconds: that of their duty, and what the situation lists
// as on at least once for as long as it is on at once. A situation made by the reader
// lists everything, and says of nothing that it is used; nor does 0 s.
func AverageDraw(s *design.Situation, lastsS float64) func(*circuit.Branch) float64 {
	return func(b *circuit.Branch) float64 {
		if b.Load == nil || b.Load.Vehicle != nil {
			return 1
		}
		share, l := b.Load.Average(), b.Load.Load
		if l == nil || b.Load.Standby || !l.OnForS.Given() || !(lastsS > 0) || s.Derived || !slices.Contains(s.On, l) {
			return share
		}
		return math.Max(share, math.Min(1, l.OnForS.Value/lastsS))
	}
}
