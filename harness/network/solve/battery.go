package solve

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
)

// unknownAh is the capacity of a battery that the design gives none for: only
// what it takes in charge depends on it. Common practice, no source.
const unknownAh = 10

// unlimitedA is more than any battery takes.
const unlimitedA = 1e6

// batteryLaw is the stored source at a state of charge and temperature, by package
// battery: discharging it is its resting voltage behind its resistance, charging
// it is what it accepts.
func batteryLaw(b *circuit.Branch, d *design.Design, charges map[*design.Bank]float64, opt *Options) Law {
	celsius := battery.RatedC + opt.BatteryK
	if bank, ok := bankOf(b); ok {
		return bankLaw(b, bank, d.NominalV(), charges, opt)
	}
	bat := storeOf(d)
	charge := min(max(1-opt.Discharged, 0), 1)
	full := or(b.Ohm, bat.Ohm(1, battery.RatedC))
	law := Law{Kind: Store, Ohm: or(opt.BatteryOhm, full*bat.Ohm(charge, celsius)/bat.Ohm(1, battery.RatedC)),
		EMFV: or(opt.BatteryV, bat.OpenCircuitV(charge, celsius)), LimitA: bat.MostChargeA(celsius)}
	law.charge(bat.ChargeOhmFrom(math.Abs(law.EMFV), charge, celsius))
	if opt.DiodesConduct && d != nil && d.HasBanks() { // a stronger one must not seem to charge it in a short
		law.Kind, law.LimitA = folded, 0
	}
	return law
}

// bankOf is the further battery that a branch stands for.
func bankOf(b *circuit.Branch) (*design.Bank, bool) {
	if b.Part == nil {
		return nil, false
	}
	x, ok := b.Part.Source.(*design.Bank)
	return x, ok
}

// bankLaw is a further battery at its own state of charge, that of the situation, or which the
// options give for all of them. Where diodes conduct it gives and takes along one line, as a short sees it.
func bankLaw(b *circuit.Branch, x *design.Bank, systemV float64, charges map[*design.Bank]float64, opt *Options) Law {
	celsius := battery.RatedC + opt.BatteryK
	bat := battery.New(&x.Store, systemV)
	if bat == nil {
		return Law{Kind: LawKinds}
	}
	charge := min(max(1-opt.BanksDischarged, 0), 1)
	if at, said := charges[x]; said && !opt.DiodesConduct {
		charge = at
	}
	law := Law{Kind: Store, Ohm: or(b.Ohm, bat.Ohm(1, battery.RatedC)) * bat.Ohm(charge, celsius) / bat.Ohm(1, battery.RatedC),
		EMFV: or(opt.BankV, bat.OpenCircuitV(charge, celsius)), LimitA: bat.MostChargeA(celsius)}
	law.charge(bat.ChargeOhmFrom(law.EMFV, charge, celsius))
	if opt.Rush {
		law.ChargeOhm, law.LimitA = law.Ohm, unlimitedA
	}
	if opt.DiodesConduct {
		law.Kind, law.LimitA = folded, 0
	}
	return law
}

// charge sets what a store has against being charged. One that refuses charge keeps a trace of slope, without which
// posts that nothing else holds have no voltage.
func (l *Law) charge(ohm float64) {
	l.ChargeOhm = max(ohm, l.Ohm)
	if l.LimitA == 0 {
		l.ChargeOhm, l.LimitA = outputLeakOhm, unlimitedA
	}
}

// storeOf is the battery of a design, with a capacity in any case.
func storeOf(d *design.Design) *battery.Battery {
	if bat := battery.Of(d); bat != nil {
		return bat
	}
	var bare design.Battery
	if d != nil {
		bare = d.Battery
	}
	bare.CapacityAh = design.Quantity{Value: unknownAh}
	return battery.New(&bare, d.NominalV())
}

// charges is how full further batteries are, as the options or else the situation say.
func (n *Network) charges() map[*design.Bank]float64 {
	if n.opt.BankCharge != nil {
		return n.opt.BankCharge
	}
	return n.situation.Charge
}
