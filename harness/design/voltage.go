package design

import "math"

// chargedShare is the voltage of a lead-acid battery on charge over its nominal:
// 14.4 V of 12 V (charging notes, two sources).
const chargedShare = 1.2

// NominalV is the nominal voltage of the system, which every design that reads
// gives: 6, 12, 24 or 48 V. A network put together without a design, or with an
// empty one, is one of 12 V.
func (d *Design) NominalV() float64 {
	if d == nil || d.SystemV.Value <= 0 {
		return 12
	}
	return d.SystemV.Value
}

// HighestV is the highest voltage of ordinary use: the regulated one, what a charger holds or
// the nominal one, whichever is highest; without charging at least 1.2 times the nominal.
func (d *Design) HighestV() float64 {
	if !d.Charging.Present() {
		return max(chargedShare*d.NominalV(), d.HeldV())
	}
	return max(d.NominalV(), d.HeldV())
}

// HeldV is the highest voltage that the charging system or a charger holds; 0 = there is none.
func (d *Design) HeldV() float64 {
	held := d.Charging.RegulatedV.Or(0)
	for _, x := range d.Chargers {
		if x.Type != nil && !x.Converts() { // what it feeds has its own; see circuit.HighestAt
			held = max(held, x.HeldV())
		}
	}
	return held
}

// classV is the nominal voltage, of 6, 12, 24 and 48 V, that a part with a rated voltage is
// made for: 12 V of one rated at 13.5 V. A part without one is of 12 V.
func classV(ratedV float64) float64 {
	class := 12.0
	for _, v := range systemVolts {
		if ratedV > 0 && math.Abs(math.Log(ratedV/v/regulatedOverNominal)) < math.Abs(math.Log(ratedV/class/regulatedOverNominal)) {
			class = v
		}
	}
	return class
}

// regulatedOverNominal is about half way, as a ratio, between a nominal voltage and the highest in use.
const regulatedOverNominal = 1.1
