package validation

import (
	"fmt"

	"fusewright/harness/formula/conductor"
)

const (
	feetPerKm  = 3280.84
	halfADigit = "half the last printed digit"
)

// copper compares resistance by gauge, by strand and by temperature.
func copper() []Comparison {
	return []Comparison{awgResistance(), necTable8(), kt()}
}

func awgResistance() Comparison {
	s := read("awg_resistance")
	var p []pair
	for _, r := range s.rows {
		ohm := conductor.OhmPerM(conductor.AWGAreaMm2(r.gauge()), 20) * 1e6 / feetPerKm
		p = append(p, pair{r["gauge"] + " AWG", ohm, r.number("ohm_per_kft"), 0.001 * r.number("ohm_per_kft")})
	}
	return compare(s.against("resistance of a gauge at 20 °C from the diameter formula", "0.1 % (formula)", UnderBad), p)
}

// strandLay is the extra length of strands that NEC Table 8 reckons with.
const strandLay = 1.02

func necTable8() Comparison {
	s := read("nec_table_8")
	var p []pair
	for _, r := range s.rows {
		area := r.number("cmil") * conductor.Mm2PerCmil
		ohm := strandLay * conductor.OhmPerM(area, 75) * 1e6 / feetPerKm
		p = append(p, pair{fmt.Sprintf("gauge %d", r.gauge()), ohm, r.number("ohm_per_kft_75C"),
			0.005 * r.number("ohm_per_kft_75C")})
	}
	return compare(s.against("resistance of an area at 75 °C, with 2 % for the lay of strands",
		"0.5 %: three printed digits of areas and of resistances", UnderBad), p)
}

func kt() Comparison {
	s := read("iec_60228_kt")
	var p []pair
	for _, r := range s.rows {
		k := 1 / conductor.AtTemperature(1, r.number("conductor_C"))
		p = append(p, pair{r["conductor_C"] + " °C", k, r.number("kt"), 0.005 * r.number("kt")})
	}
	return compare(s.against("resistance against temperature, as the factor to 20 °C",
		"0.5 %: the table uses 0.004 per kelvin, copper has 0.00393", Either), p)
}
