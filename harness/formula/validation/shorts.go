package validation

import (
	"fmt"

	"fusewright/harness/formula/conductor"
)

// shortCircuits compares the adiabatic law.
func shortCircuits() []Comparison { return []Comparison{kValues(), icea(), onderdonk()} }

func kValues() Comparison {
	s := read("k_values")
	var p []pair
	for _, r := range s.rows {
		p = append(p, pair{r["case"], conductor.KFactor(r.number("start_C"), r.number("end_C")), r.number("k"), lastDigit(r["k"])})
	}
	return compare(s.against("adiabatic constant k", halfADigit, OverBad), p)
}

// cases of two published formulas for the same thing.
var temperatures = [][2]float64{{75, 150}, {90, 250}, {105, 160}, {125, 250}}

func icea() Comparison {
	var p []pair
	for _, t := range temperatures {
		p = append(p, pair{fmt.Sprintf("%g to %g °C", t[0], t[1]), conductor.WithstandI2t(10, t[0], t[1]),
			conductor.ICEAI2t(10, t[0], t[1]), 0.02 * conductor.ICEAI2t(10, t[0], t[1])})
	}
	return compare(Comparison{Source: "ICEA P-32-382, short-circuit formula for copper", Certainty: "one source",
		What: "k²S² against the other published formula", UnsafeSide: OverBad,
		Tolerance: "2 %: the two standards round their copper constants differently"}, p)
}

func onderdonk() Comparison {
	var p []pair
	for _, ambient := range []float64{20, 25, 60, 90} {
		want := conductor.OnderdonkA(1.309, 5, ambient)
		got := conductor.KFactor(ambient, conductor.CopperMeltsC) * 1.309 / 2.2360679775
		p = append(p, pair{fmt.Sprintf("16 AWG, 5 s from %g °C", ambient), got, want, 0.01 * want})
	}
	return compare(Comparison{
		Source: "Onderdonk's equation (Stauffacher, General Electric Review 1928)", Certainty: "one source",
		What: "adiabatic current to melting against the other published formula", UnsafeSide: OverBad,
		Tolerance: "1 %: constants 33 and 234 are rounded"}, p)
}
