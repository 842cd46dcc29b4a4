package battery

import "math"

// How a battery follows the air around it, from memory: heat capacity and density of a whole
// lead or lithium iron phosphate battery, and what still air takes from its case, convection and
// radiation together.
const (
	heatJPerKgK  = 1000.0
	kgPerM3      = 2200.0
	lossWPerM2K  = 8.0
	sidesOfACube = 6
)

// LagS is the time constant in seconds with which the battery follows the air, of a cube in
// still air:
//
//	τ = m·c / (h·6·(m/ρ)^(2/3))
func (b *Battery) LagS() float64 {
	kg := b.capacityAh * b.class * b.chem.KgPerAh
	return kg * heatJPerKgK / (lossWPerM2K * sidesOfACube * math.Pow(kg/kgPerM3, 2.0/3))
}

// FollowedC is how warm the battery is after a time in seconds in air of a temperature; its own
// losses do not count.
func (b *Battery) FollowedC(fromC, airC, seconds float64) float64 {
	return airC + (fromC-airC)*math.Exp(-seconds/b.LagS())
}
