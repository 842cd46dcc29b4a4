package report

import "testing"

// A share just above or below a limit of 10 % is printed with the digits that
// tell the two apart, whichever of the figures it is.
func TestNearTheLimit(t *testing.T) {
	at := func(x float64) CornerFigure { return CornerFigure{Nominal: &x, Corner: &x, Situation: "night"} }
	limit := 0.10
	for _, k := range []struct {
		wires, whole, worst float64
		want                [4]string // wires, in all, worst, limit
	}{
		{0.05, 0.06, 0.07, [4]string{"5.0 %", "6.0 %", "7.0 %", "10 %"}},
		{0.098, 0.103, 0.12, [4]string{"9.8 %", "10.3 %", "12 %", "10.0 %"}},
		{0.103, 0.12, 0.14, [4]string{"10.3 %", "12 %", "14 %", "10.0 %"}},
		{0.08, 0.09, 0.1004, [4]string{"8.0 %", "9.0 %", "10.04 %", "10.00 %"}},
	} {
		rep := &CornerReport{Loads: []CornerLoad{{Ref: "E1", LimitS: &limit,
			in: []loadIn{{at(k.wires), at(k.whole), at(12)}}}}}
		rep.Loads[0].in[0].drop.Corner = &k.worst
		row := rep.Tables()[0].Rows[0]
		if got := [4]string(row[2:6]); got != k.want {
			t.Errorf("%g, %g, %g: %q, want %q", k.wires, k.whole, k.worst, got, k.want)
		}
	}
}
