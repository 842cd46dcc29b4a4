package circuit_test

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Wherever an ambient is left out, 30 °C counts: 33 CFR 183.425 Table 5.
func TestAmbientOfAPlace(t *testing.T) {
	given := func(c float64) design.Quantity { return design.Quantity{Value: c, Text: "given"} }
	cold, hot, silent := &design.Place{AmbientC: given(5)}, &design.Place{AmbientC: given(80)}, &design.Place{}
	part := func(p *design.Place) float64 { return (&circuit.Part{Place: p}).AmbientC() }
	run := func(from, to *design.Place, past design.Quantity) float64 {
		return circuit.RunAmbientC(&design.Run{From: from, To: to, AmbientC: past})
	}
	var gone *circuit.Part
	var none design.Quantity
	for _, test := range []struct {
		name      string
		got, want float64
	}{
		{"no part", gone.AmbientC(), 30},
		{"a part that stands nowhere", part(nil), 30},
		{"a part in a place that says nothing", part(silent), 30},
		{"a part in a place given colder", part(cold), 5},
		{"a part in a place given hotter", part(hot), 80},
		{"a run between places given colder", run(cold, cold, none), 5},
		{"a run with an end that says nothing", run(cold, silent, none), 30},
		{"a run past something hot", run(cold, hot, given(120)), 120},
		{"a run past something less hot than its end", run(cold, hot, given(60)), 80},
		{"a run whose ends are no places", run(nil, nil, none), 30},
	} {
		if test.got != test.want {
			t.Errorf("%s: %g °C, want %g °C", test.name, test.got, test.want)
		}
	}
}
