package conductor

import (
	"math"

	"fusewright/library"
)

// Loop is a conductor from source to load and back: what a drop is reckoned on.
type Loop struct {
	LengthM    float64 // of copper, feed and return together
	ConductorC float64
}

// DropV is the voltage a current loses in a length: U = I · R' · L, with the
// resistance by metre already at the conductor's temperature. Source: Ohm.
func DropV(currentA, ohmPerM, lengthM float64) float64 { return currentA * ohmPerM * lengthM }

// LossW is the heat a current makes in a length: P = I² · R' · L.
func LossW(currentA, ohmPerM, lengthM float64) float64 {
	return currentA * currentA * ohmPerM * lengthM
}

// AreaForDrop is the copper area in mm² with which a current drops no more than
// dropV over a loop: A = ρ(T) · I · L / U. It is zero for no current or length
// and +Inf when no drop is allowed. Source: Ohm, IEC 60028.
func AreaForDrop(currentA float64, loop Loop, dropV float64) float64 {
	need := AtTemperature(CopperOhmMm2PerM, loop.ConductorC) * math.Abs(currentA) * loop.LengthM
	switch {
	case !(need > 0):
		return 0
	case !(dropV > 0):
		return math.Inf(1)
	}
	return need / dropV
}

// CmilForDrop is the trade's form of AreaForDrop in circular mils:
// CM = K · I · L / E, L in feet of loop; K = 10.75 for a conductor at about
// 29 °C. Source: ABYC E-11, as printed in marine voltage-drop notes.
func CmilForDrop(k, currentA, loopFt, dropV float64) float64 {
	if !(dropV > 0) {
		return math.Inf(1)
	}
	return k * currentA * loopFt / dropV
}

// ABYCK is the constant of CmilForDrop as ABYC E-11 has it.
const ABYCK = 10.75

// SizeForDrop is the smallest of sizes in ascending order whose published maximum
// resistance keeps the drop of a current over a loop within dropV; nil when
// even the largest does not.
func SizeForDrop(sizes []*library.WireSize, currentA float64, loop Loop, dropV float64) *library.WireSize {
	for _, s := range sizes {
		r := AtTemperature(s.MaxOhmPerM, loop.ConductorC)
		if DropV(math.Abs(currentA), r, loop.LengthM) <= dropV {
			return s
		}
	}
	return nil
}
