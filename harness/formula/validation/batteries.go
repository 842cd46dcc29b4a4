package validation

import (
	"fmt"
	"math"

	"fusewright/harness/formula/battery"
)

// batteries compares Peukert's law.
func batteries() []Comparison { return []Comparison{capacity(), exponents()} }

func capacity() Comparison {
	s := read("peukert_capacity")
	var p []pair
	for _, r := range s.rows {
		amps := r.number("amps")
		got := amps * battery.PeukertHours(100, 20, r.number("exponent"), amps)
		p = append(p, pair{fmt.Sprintf("n = %s at %s A", r["exponent"], r["amps"]), got, r.number("capacity_pct"), 1})
	}
	return compare(s.against("charge given by a 100 Ah battery, by Peukert's law",
		"one point of percent: the manual cuts digits off", OverBad), p)
}

func exponents() Comparison {
	s := read("peukert_exponents")
	var p []pair
	for _, r := range s.rows {
		h := r.number("reserve_min") / 60
		got := battery.PeukertExponent(20, r.number("capacity_Ah")/20, h, 25)
		p = append(p, pair{fmt.Sprintf("%s Ah, %s min", r["capacity_Ah"], r["reserve_min"]), got,
			r.number("exponent"), math.Max(0.0125, lastDigit(r["exponent"]))})
	}
	return compare(s.against("exponent from two rates", "0.0125: whole minutes and two printed decimals", Either), p)
}
