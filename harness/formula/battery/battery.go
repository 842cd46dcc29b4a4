// Package battery is what a battery gives and takes: resting voltage, inner
// resistance, capacity by rate and temperature, charge acceptance, the reserve
// for starting, and how long a parked vehicle keeps it. The numbers come from
// the library's chemistries; the formulas are here and nowhere else. It knows
// no circuit.
//
// State of charge is the share, 0..1, of the rated capacity at 25 °C that is
// still inside. Cold does not take charge away: it makes less of it available,
// so that the battery is empty, and starting unsure, at a higher state of charge.
//
// What is not modelled: recovery after a heavy discharge, surface charge after
// charging, and age.
package battery

import (
	"math"

	"fusewright/harness/design"
	"fusewright/library"
)

// Reference temperature of rated figures and full charge voltage of the 12 V class.
const (
	RatedC        = 25.0 // EN 50342-7, 7.2: 25 ± 2 °C
	fullChargeV12 = 14.4 // at which acceptance is stated; see the library's rows
)

// unknownChemistry stands in for a chemistry, or for figures of it, that are not
// known: the least favourable of the usual ones.
const unknownChemistry = "flooded"

// Battery is one battery, ready for reckoning. Make it with Of.
type Battery struct {
	chem       library.Chemistry // a copy with what is missing filled in
	capacityAh float64
	rateH      float64
	fullOhm    float64 // full, at RatedC
	class      float64 // 12 V class batteries in series
}

// Of is the battery of a design; nil when it gives no capacity.
func Of(d *design.Design) *Battery {
	if d == nil {
		return nil
	}
	return New(&d.Battery, d.NominalV())
}

// New is a battery of a system voltage (6, 12, 24, 48 V); nil without a capacity.
func New(d *design.Battery, systemV float64) *Battery {
	if !(d.CapacityAh.Value > 0) {
		return nil
	}
	b := &Battery{capacityAh: d.CapacityAh.Value, class: systemV / 12, rateH: d.RateH.Value,
		fullOhm: d.GivenOhm(), chem: chemistryOf(d)}
	fill(&b.rateH, b.chem.RatedH)
	fill(&b.fullOhm, b.Sound().fullOhm)
	return b
}

// Sound is the battery with the resistance that one of its chemistry and capacity has when new.
func (b *Battery) Sound() *Battery {
	sound := *b
	sound.fullOhm = b.chem.Ohm(b.capacityAh) * b.class
	return &sound
}

// chemistryOf is a battery's chemistry with what it leaves out filled in.
func chemistryOf(d *design.Battery) library.Chemistry {
	usual := library.Default().Chemistry(unknownChemistry)
	if d.Chemistry == nil {
		return *usual
	}
	c := *d.Chemistry
	fill(&c.Peukert, usual.Peukert)
	fill(&c.RatedH, usual.RatedH)
	fill(&c.StartReserve, usual.StartReserve)
	fill(&c.OhmAh, usual.OhmAh)
	fill(&c.ChargeShare, usual.ChargeShare)
	fill(&c.ChargeEfficiency, usual.ChargeEfficiency)
	fill(&c.KgPerAh, usual.KgPerAh)
	fill(&c.EmptyOhmRatio, 1)
	fill(&c.ColdOhmRatio, 1)
	if len(c.OpenCircuit) == 0 {
		c.OpenCircuit = usual.OpenCircuit
	}
	if len(c.Acceptance) == 0 {
		c.Acceptance = usual.Acceptance
	}
	return c
}

// fill sets what is zero.
func fill(v *float64, usual float64) {
	if *v == 0 {
		*v = usual
	}
}

// CapacityAh is the rated capacity.
func (b *Battery) CapacityAh() float64 { return b.capacityAh }

// OpenCircuitV is the resting voltage at a state of charge and a temperature.
func (b *Battery) OpenCircuitV(charge, celsius float64) float64 {
	return b.class * (b.chem.OpenCircuitV(charge) + (celsius-RatedC)*b.chem.OpenCircuitVPerC)
}

// Ohm is the inner resistance against discharge. It grows in a straight line
// from full to empty, and with cold at a constant share per kelvin,
//
//	R = R_full · (1 + (e−1)·(1−charge)) · c^((25−T)/43)
//
// e and c being the library's ratios, c that between −18 and 25 °C. Above 25 °C
// the resistance stays as rated. At no state is it above ten times the rated.
func (b *Battery) Ohm(charge, celsius float64) float64 {
	byCharge := 1 + (b.chem.EmptyOhmRatio-1)*(1-clamp01(charge))
	return b.fullOhm * math.Min(byCharge*b.cold(celsius), 10)
}

// CrankingA is the cold-cranking current of a battery whose chemistry is sold by
// it: what takes 12.6 V to 7.2 V at −18 °C (SAE J537, from memory); 0 of others.
func (b *Battery) CrankingA() float64 {
	if !b.chem.CrankingRated {
		return 0
	}
	const takenV = 12.6 - 7.2
	return b.class * takenV / b.Ohm(1, -18)
}

// cold is the resistance at a temperature over that at 25 °C, 1 or more.
func (b *Battery) cold(celsius float64) float64 {
	const span = RatedC + 18 // the SAE cold-cranking temperature is −18 °C
	return math.Pow(b.chem.ColdOhmRatio, math.Max(RatedC-celsius, 0)/span)
}

func clamp01(x float64) float64 { return math.Min(math.Max(x, 0), 1) }
