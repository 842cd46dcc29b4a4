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

// batteryLaw is the stored source at a state of charge, at 25 °C, by package
// battery: discharging it is its resting voltage behind its resistance, charging
// it is what it accepts.
func batteryLaw(b *circuit.Branch, d *design.Design, opt *Options) Law {
	const celsius = battery.RatedC
	bat := storeOf(d)
	charge := min(max(1-opt.Discharged, 0), 1)
	full := or(b.Ohm, bat.Ohm(1, celsius))
	law := Law{Kind: Store, Ohm: or(opt.BatteryOhm, full*bat.Ohm(charge, celsius)/bat.Ohm(1, celsius)),
		EMFV: or(opt.BatteryV, bat.OpenCircuitV(charge, celsius)), LimitA: bat.MostChargeA(celsius)}
	law.ChargeOhm = max(bat.ChargeOhmFrom(math.Abs(law.EMFV), charge, celsius), law.Ohm)
	return law
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
