package rules

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/fault"
)

// Electronics bear a volt the wrong way round, LEDs five, a resistor any; an LED that gets
// its voltage the wrong way round stays dark.
func TestVoltageTheWrongWayRound(t *testing.T) {
	of := func(sign design.Sign, behaves design.Behaviour) *circuit.Branch {
		return &circuit.Branch{Load: &circuit.LoadSpec{Behaves: behaves, Load: &design.Load{Sign: sign}}}
	}
	led, radio, lamp := of(design.SignLED, design.ConstantPower), of("", design.ConstantPower), of(design.SignLamp, design.Resistor)
	for name, c := range map[string]struct {
		of           *circuit.Branch
		volts        float64
		harmed, dark bool
	}{
		"LED at its limit":    {led, -5, false, true},
		"LED past it":         {led, -5.01, true, true},
		"LED the right way":   {led, 5.01, false, false},
		"radio at its limit":  {radio, -1, false, false},
		"radio past it":       {radio, -1.01, true, false},
		"filament lamp":       {lamp, -12, false, false},
		"LED without voltage": {led, 0, false, false},
	} {
		a := &fault.Affected{Branch: c.of, AfterV: c.volts}
		if harmed(a) != c.harmed || dark(a) != c.dark {
			t.Errorf("%s: harmed %v, dark %v", name, harmed(a), dark(a))
		}
	}
}
