package derivation

import (
	"math"
	"testing"

	"fusewright/harness/design/problem"
)

func TestFormulas(t *testing.T) {
	for _, c := range []struct {
		formula string
		values  []float64
		want    float64
	}{
		{"{}", []float64{7}, 7},
		{"{} + {} × {}", []float64{1, 2, 3}, 7},
		{"({} + {}) × {}", []float64{1, 2, 3}, 9},
		{"{} − {} − {}", []float64{10, 2, 3}, 5},
		{"{} ÷ {} ÷ {}", []float64{12, 2, 3}, 2},
		{"{}² ÷ {}", []float64{6, 4}, 9},
		{"{} × {}^{}", []float64{2, 3, 2}, 18},
		{"{} × ({} ÷ {})^0.55", []float64{2, 4, 1}, 2 * math.Pow(4, 0.55)},
		{"√({} ÷ {})", []float64{18, 2}, 3},
		{"−ln(1 − {}) ÷ 30 × 2^(({} − 20) ÷ 10)", []float64{0.05, 30}, -math.Log(0.95) / 15},
		{"2 × π × {}", []float64{0.5}, math.Pi},
		{"smaller of {} and {}", []float64{3, 2}, 2},
		{"smaller of {} and {} and {}", []float64{3, 2, 1}, 1},
		{"∛{} + e^{}", []float64{8, 0}, 3},
		{"{} + 2 × {}", []float64{0.78, 0.06}, 0.9},
		{"{} +", []float64{1}, math.NaN()},
		{"{}", []float64{1, 2}, math.NaN()},
		{"{} {}", []float64{1, 2}, math.NaN()},
		{"", nil, math.NaN()},
	} {
		got := compile(c.formula, len(c.values))(c.values)
		if !(math.Abs(got-c.want) < 1e-12) && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%q of %v: %g, want %g", c.formula, c.values, got, c.want)
		}
	}
}

// As many digits as the line above needs, and no more: 1/3 mΩ times 2/7 A is 95.238 µV.
func TestDigits(t *testing.T) {
	r, a := solved("r", ohms, 1e-3/3, ""), solved("a", amps, 2.0/7, "")
	x := of("lost", volts, 2e-3/21, "{} × {}", r, a)
	settle(x)
	if got := x.text() + " = " + x.printed(); got != "0.09524 mV = 0.33333 mΩ × 0.28571 A" {
		t.Errorf("%s", got)
	}
	s := sum("sum", volts, 1.2345+0.00012, solved("a", volts, 1.2345, ""), solved("b", volts, 0.00012, ""))
	settle(s)
	if got := s.text() + " = " + s.printed(); got != "1.235 V = 1.2345 V + 0.1 mV" {
		t.Errorf("%s", got)
	}
	wrong := of("wrong", volts, 5, "{} × {}", exactly("two", plain, 2), exactly("three", plain, 3))
	if settle(wrong); !wrong.off {
		t.Error("a formula that gives 6 passes for 5")
	}
	if wrong.orSolved("x").formula != "" {
		t.Error("a formula that does not hold is kept")
	}
}

// Of 4 V, 3 V by a resistance from memory and 1 V by one of the design: three quarters are
// unsure, however unsure the current is. A product of both is unsure by half.
func TestRests(t *testing.T) {
	memory := &value{label: "m", v: 3, dim: ohms, mark: Unsure, rests: shares{onMemory: 1}}
	own := yours("o", ohms, 1, problem.Pos{})
	guess := &value{label: "g", v: 1, dim: amps, mark: Unsure, rests: shares{onNothing: 1}}
	whole := sum("w", volts, 4, of("a", volts, 3, "{} × {}", memory, guess).by(memory), of("b", volts, 1, "{} × {}", own, guess).by(own))
	if got := whole.restsOn(); math.Abs(got.unsure()-0.75) > 1e-6 || math.Abs(got[onDesign]-0.25) > 1e-6 {
		t.Errorf("%v", got)
	}
	product := of("p", volts, 1, "{} × {}", own, guess)
	if got := product.restsOn(); math.Abs(got[onNothing]-0.5) > 1e-6 || math.Abs(got[onDesign]-0.5) > 1e-6 {
		t.Errorf("%v", got)
	}
	settle(whole)
	if got := whole.unsure(); len(got) != 2 || got[0] != "m: 3.000 Ω" || got[1] != "g: 1.000 A" {
		t.Errorf("%q", got)
	}
	if w := product.weakest(); w != guess {
		t.Errorf("weakest %v", w)
	}
}
