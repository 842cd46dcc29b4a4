package quantity

import "math"

// tellsA is what a meter in series tells from nothing, and chargeA the least that goes into a battery and is called
// charge: less is what regulator and contacts leak (common practice, no source).
const tellsA, chargeA = 20e-6, 0.5e-3

// Flow is Format of a current that a meter would read: "2.10 A", "21 µA", "0 A" of less.
func Flow(amps float64) string {
	if math.Abs(amps) < tellsA {
		amps = 0
	}
	return Format(amps, Current)
}

// BatteryFlow is a current out of a battery in words: "gives 2.10 A", "takes 30 mA" of what goes in.
func BatteryFlow(amps float64) string {
	if amps <= -chargeA {
		return "takes " + Flow(-amps)
	}
	return "gives " + Flow(math.Max(amps, 0))
}
