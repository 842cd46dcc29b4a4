package solve

import (
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

// chargingLimitA is the limit in a situation under the options.
func chargingLimitA(d *design.Design, s *design.Situation, opt *Options) float64 {
	if opt.NoCharging || s.Key == design.KeyOff {
		return 0
	}
	if opt.ColdCharging {
		return charging.ColdA(d, s.EngineRPM)
	}
	return charging.OutputA(d, s.EngineRPM)
}

func chargerLaw(b *circuit.Branch, d *design.Design, opt *Options, limitA float64) Law {
	regulated := opt.RegulatedV
	if regulated == 0 {
		regulated = regulatedClassV * d.NominalV() / 12
		if d != nil {
			regulated = d.Charging.RegulatedV.Or(regulated)
		}
	}
	return Law{Kind: Charger, Ohm: or(b.Ohm, regulatorOhm), EMFV: regulated, LimitA: limitA}
}
