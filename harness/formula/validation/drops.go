package validation

import (
	"fmt"
	"math"

	"fusewright/harness/formula/conductor"
)

const metrePerFoot = 0.3048

// drops compares voltage drop and the size that a drop asks for.
func drops() []Comparison { return []Comparison{acDrop(), abycSizes(), worked()} }

func acDrop() Comparison {
	s := read("ac_43_13_drop")
	var p []pair
	for _, r := range s.rows {
		v := conductor.DropV(r.number("amps"), r.number("ohm_per_ft")/metrePerFoot, r.number("run_ft")*metrePerFoot)
		p = append(p, pair{r["run_ft"] + " ft", v, r.number("drop_V"), r.number("least_digit") / 2})
	}
	return compare(s.against("voltage drop", halfADigit, UnderBad), p)
}

// abycSizes compares the smallest size for a drop, in circular mils of the size
// taken, so that a whole size off shows as its step of area.
func abycSizes() Comparison {
	s, sizes := read("abyc_drop_12v"), read("sae_least_cmil")
	cmil := map[int]float64{}
	for _, r := range sizes.rows {
		cmil[r.gauge()] = r.number("sae_cmil")
	}
	var p []pair
	for _, r := range s.rows {
		need := conductor.CmilForDrop(conductor.ABYCK, r.number("amps"), r.number("loop_ft"), 12*r.number("drop_pct")/100)
		got := math.NaN()
		for _, size := range sizes.rows {
			if c := size.number("sae_cmil"); c >= need && !(got < c) {
				got = c
			}
		}
		at := fmt.Sprintf("%s %%, %s ft, %s A", r["drop_pct"], r["loop_ft"], r["amps"])
		want, ok := cmil[r.gauge()]
		if !ok {
			got = math.NaN()
			want = 1
		}
		p = append(p, pair{at, got, want, 0.001 * want})
	}
	c := s.against("smallest size for a drop, by CM = 10.75·I·L/E and SAE areas", "the same size", UnderBad)
	c.Note += "; at two places the program takes the next larger size, where the table's falls 3 to 9 % short"
	return compare(c, p)
}

func worked() Comparison {
	s := read("worked_examples")
	got := []float64{
		conductor.CmilForDrop(conductor.ABYCK, 10, 21, 0.36),
		conductor.AreaForI2t(2500, 0.1, 70, 160),
		12 / 0.020,
		12 / 0.010,
		conductor.OhmPerM(conductor.AWGAreaMm2(20), 25) * 2000 * metrePerFoot,
		conductor.PreeceA(0.0524 * 25.4),
	}
	var p []pair
	for i, r := range s.rows {
		p = append(p, pair{r["what"], got[i], r.number("published"), r.number("least_digit") / 2})
	}
	return compare(s.against("worked examples: area, drop, fault, melting", halfADigit, Either), p)
}
