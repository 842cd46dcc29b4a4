package solve

import (
	"math"

	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/library"
)

// acceptance is what a battery takes at charging voltage (14.4 V of a 12 V
// class battery), as a share of its capacity per hour, against its state of
// charge. Between rows the logarithm goes in a straight line; beyond them the
// end row holds, and never more than the chemistry's ChargeShare.
type acceptance []struct{ charge, share float64 }

var (
	// Lead acid: from half full, charging at 0.4 and 0.2 of capacity per hour
	// reached 14.4 V after 13.5 and 26.7 Ah of 100 Ah (published charge test of
	// an AGM battery); full when the tail current is 0.5 % of the capacity at
	// 14.3–14.4 V (published charge test of the same kind).
	leadAcid = acceptance{{0.635, 0.4}, {0.767, 0.2}, {1, 0.005}}
	// Lithium iron phosphate takes its full current nearly to the end; tail
	// 5 % of capacity. Common practice, no source.
	lithium = acceptance{{0.95, 1}, {1, 0.05}}
)

// chargingClassV is the voltage at which acceptance is stated, 12 V class.
const chargingClassV = 14.4

// at is the accepted share of capacity per hour.
func (a acceptance) at(charge float64) float64 {
	last := len(a) - 1
	switch {
	case charge <= a[0].charge:
		return a[0].share
	case charge >= a[last].charge:
		return a[last].share
	}
	for i := 1; ; i++ {
		if charge <= a[i].charge {
			t := (charge - a[i-1].charge) / (a[i].charge - a[i-1].charge)
			return a[i-1].share * math.Pow(a[i].share/a[i-1].share, t)
		}
	}
}

// batteryLaw is the stored source at a state of charge. Discharging it is an
// EMF behind its resistance. Charging it is not: a plain EMF behind milliohms
// would swallow hundreds of amperes at the regulated voltage, where a full
// battery in truth takes almost nothing. So above its EMF it has the charging
// resistance (14.4 V − EMF) / accepted current, and never takes more than the
// chemistry's highest charging current.
func batteryLaw(b *circuit.Branch, d *design.Design, opt *Options) Law {
	var bat design.Battery
	if d != nil {
		bat = d.Battery
	}
	class := systemV(d) / 12
	charge := min(max(1-opt.Discharged, 0), 1)
	law := Law{Kind: Store, Ohm: or(opt.BatteryOhm, b.Ohm), EMFV: opt.BatteryV}
	if law.EMFV == 0 {
		law.EMFV = emfV(bat.Chemistry, charge) * class
	}
	capacity := max(bat.CapacityAh.Or(10), 0.1)
	table, most := leadAcid, 0.2
	if c := bat.Chemistry; c != nil {
		most = or(c.ChargeShare, most)
		if c.Name == "LiFePO4" {
			table = lithium
		}
	}
	accepted := capacity * min(most, table.at(charge))
	law.LimitA = capacity * most
	rise := max(chargingClassV*class-math.Abs(law.EMFV), 0.1*class)
	law.ChargeOhm = max(rise/accepted, law.Ohm)
	return law
}

// emfV is the resting voltage of a 12 V class battery; 12.7 V for a full one
// of unknown chemistry (common practice, no source).
func emfV(c *library.Chemistry, charge float64) float64 {
	if c == nil || len(c.OpenCircuit) == 0 {
		return 12.7
	}
	return c.OpenCircuitV(charge)
}

// systemV is the nominal voltage of a design; 12 V when it says none.
func systemV(d *design.Design) float64 {
	if d == nil {
		return 12
	}
	return or(d.SystemV.Or(12), 12)
}
