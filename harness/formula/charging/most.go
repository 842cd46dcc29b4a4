package charging

import "fusewright/harness/design"

// MostA is the greatest current of a charging system in amperes: cold, until it is hot, and
// hot, for good. Both are 0 where nothing charges.
func MostA(c *design.Charging) (cold, hot float64) {
	for _, p := range c.Output {
		cold = max(cold, p.CurrentA.Value)
	}
	return cold, cold * (1 - c.HotLost())
}

// ShuntW is the heat in watts that a shunt regulator makes of a current to spare, in amperes,
// which it shorts; 0 for other kinds.
func ShuntW(c *design.Charging, spareA float64) float64 {
	if !c.Kind.Shunts() {
		return 0
	}
	return max(spareA, 0) * c.Kind.ShuntV
}
