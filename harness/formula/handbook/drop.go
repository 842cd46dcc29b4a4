package handbook

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
)

// DropInput asks for the voltage lost in a circuit.
type DropInput struct {
	Conductor  Conductor
	CurrentA   float64
	Path       Path
	SystemV    float64
	ConductorC float64 // temperature of the copper
}

// Drop answers how much voltage a circuit loses, in volts and as a share of the
// system voltage.
func Drop(in DropInput) (*Answer, error) {
	var k check
	in.Conductor.check(&k)
	k.positive("the current", in.CurrentA, mostA, "A")
	k.positive("the length", in.Path.LengthM, mostM, "m")
	k.positive("the system voltage", in.SystemV, mostV, "V")
	k.between("the conductor temperature", in.ConductorC, coldestC, hottestC, "°C")
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("drop", "Voltage drop of a circuit, feed and return together")
	a.inText("wire", in.Conductor.name())
	a.in("current", in.CurrentA, quantity.Current)
	a.in(in.Path.name(), in.Path.LengthM, quantity.Length)
	a.in("system", in.SystemV, quantity.Voltage)
	a.in("conductor", in.ConductorC, quantity.Temperature)

	r20, source := in.Conductor.ohmPerM20()
	r := conductor.AtTemperature(r20, in.ConductorC)
	loop := in.Path.loopM()
	drop := conductor.DropV(in.CurrentA, r, loop)
	a.step("R' = R'20 · (1 + 0.00393 · (T − 20 °C))", "R' = %.4g mΩ/m · (1 + 0.00393 · (%g − 20)) = %.4g mΩ/m",
		1000*r20, in.ConductorC, 1000*r)
	a.step("U = I · R' · L", "U = %g A · %.4g mΩ/m · %.4g m = %.4g V", in.CurrentA, 1000*r, loop, drop)
	a.step("share = U / system", "share = %.4g V / %g V = %.3g %%", drop, in.SystemV, 100*drop/in.SystemV)
	a.out("drop", drop, quantity.Voltage)
	a.out("share", drop/in.SystemV, quantity.Share)
	a.out("left at the load", in.SystemV-drop, quantity.Voltage)
	a.out("heat in the wire", conductor.LossW(in.CurrentA, r, loop), quantity.Power)
	a.source(source, "temperature: IEC 60028; limits of 3 % critical and 10 % other: ABYC E-11")
	if drop >= in.SystemV {
		a.warn("the drop is the whole voltage: the circuit cannot carry this current")
	}
	a.warn("contacts, fuses and switches add to this")
	return a, nil
}
