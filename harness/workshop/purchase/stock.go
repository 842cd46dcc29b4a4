package purchase

import "math"

// WireToBuyM is what is bought of one insulation, size and colour when so many
// metres are cut: with WireWaste on top, up to a whole WireStepM.
func WireToBuyM(cutM float64) float64 { return wholeSteps(cutM * (1 + WireWaste)) }

// wholeSteps rounds a length up to whole steps of the reel.
func wholeSteps(lengthM float64) float64 {
	// A hair is taken off first so that 3.000 m does not become 4 m.
	return math.Ceil(lengthM/WireStepM-1e-9) * WireStepM
}
