package solve

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// leastOhm stands in for a resistance of nothing, so that every branch has a
// conductance. 50 A through it drop 50 µV.
const leastOhm = 1e-6

// assemble sets the law of every branch and whether it is there at all in the
// situation (contacts are decided later).
func (n *Network) assemble() {
	n.limitA = 0
	if d := n.plan.circuit.Design; d != nil {
		n.limitA = n.engineA(&d.Charging)
	}
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
func branchOhm(b *circuit.Branch, opt *Options) float64 { return ResistanceOf(b, opt).Ohm() }

// loadLaw is the law of a load. Accessories draw all they can: wires must carry
// that. The machine's own loads draw their duty's average, because they only set
// the level of the posts.
func (n *Network) loadLaw(b *circuit.Branch) Law {
	law := behaviourLaw(b.Load, PowerOf(b, &n.opt).W())
	switch {
	case law.Kind != Fan:
	case n.opt.Fans == Steady:
		return Law{Kind: Torque, CurrentA: law.CurrentA, EdgeV: law.Ohm * law.CurrentA}
	case n.opt.Fans == Stand:
		return Law{Kind: Ohmic, Ohm: law.Ohm}
	}
	return law
}

// PowerAt is what a load's power at its rated voltage is made of.
type PowerAt struct {
	RatedW  float64
	Average float64 // share of the time, of the machine's own loads
	Factor  float64 // of the options
}

// W is the power at the rated voltage.
func (d PowerAt) W() float64 { return d.RatedW * d.Average * d.Factor }

// PowerOf is that of a load's branch under the options.
func PowerOf(b *circuit.Branch, opt *Options) PowerAt {
	d := PowerAt{b.Load.PowerW, 1, 1}
	if b.Load.Vehicle != nil {
		d.Average = b.Load.Average()
	}
	if opt.LoadFactor != nil {
		d.Factor = opt.LoadFactor(b)
	}
	return d
}

// Laws are the laws of a circuit's branches in a situation under options, by branch
// index, before any fault; of what is not there, and of open contacts, too.
func (p *Plan) Laws(s *design.Situation, opt Options) []Law {
	n := &Network{plan: p, situation: s, opt: opt, laws: make([]Law, len(p.from)), present: make([]bool, len(p.from))}
	n.assemble()
	return n.laws
}

// AverageDraw is a LoadFactor that makes accessories too draw their average over a
// situation that lasts so many seconds: that of their duty, and what the situation lists
// as on at least once for as long as it is on at once. A situation made by the reader
// lists everything, and says of nothing that it is used; nor does 0 s. A string of loads in
// series conducts only while all do: as much as the least of them, as if all drew at once. That
// is the most it can be; how they fall together no design says.
func AverageDraw(s *design.Situation, lastsS float64) func(*circuit.Branch) float64 {
	return func(b *circuit.Branch) float64 {
		if b.Load == nil || b.Load.Vehicle != nil {
			return 1
		}
		share, l := b.Load.Average(), b.Load.Load
		if l == nil || b.Load.Standby {
			return share
		}
		least := usedFor(l, share, s, lastsS)
		for _, x := range l.InSeries() {
			if x != l {
				least = math.Min(least, usedFor(x, x.Duty.Or(1), s, lastsS))
			}
		}
		return least
	}
}

// usedFor is the share of a situation for which a load draws by itself.
func usedFor(l *design.Load, share float64, s *design.Situation, lastsS float64) float64 {
	if !l.OnForS.Given() || !(lastsS > 0) || s.Derived || !slices.Contains(s.On, l) {
		return share
	}
	return math.Max(share, math.Min(1, l.OnForS.Value/lastsS))
}
