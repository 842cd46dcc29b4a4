package handbook

import (
	"fusewright/harness/design/quantity"
)

// PowerInput turns watts into amperes or back: give one of the two.
type PowerInput struct {
	PowerW   float64
	CurrentA float64
	Volts    float64
}

// Power answers P = U · I. At a nominal 12 V a running engine gives 13.5 to
// 14.4 V: a heater then takes more, a constant-power load less current.
func Power(in PowerInput) (*Answer, error) {
	var k check
	k.positive("the voltage", in.Volts, mostV, "V")
	if unset(in.PowerW) == unset(in.CurrentA) {
		k.say("give either a power or a current")
	} else if unset(in.CurrentA) {
		k.positive("the power", in.PowerW, mostW, "W")
	} else {
		k.positive("the current", in.CurrentA, mostA, "A")
	}
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("power", "Watts and amperes")
	a.in("voltage", in.Volts, quantity.Voltage)
	watts, amps := in.PowerW, in.CurrentA
	if unset(in.CurrentA) {
		amps = watts / in.Volts
		a.in("power", watts, quantity.Power)
		a.step("I = P / U", "I = %g W / %g V = %.4g A", watts, in.Volts, amps)
		a.out("current", amps, quantity.Current)
	} else {
		watts = amps * in.Volts
		a.in("current", amps, quantity.Current)
		a.step("P = U · I", "P = %g V · %g A = %.4g W", in.Volts, amps, watts)
		a.out("power", watts, quantity.Power)
	}
	a.out("resistance at that point", in.Volts/amps, quantity.Resistance)
	a.source("Joule's law")
	return a, nil
}
