package handbook

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// WireInput asks for the smallest wire of a circuit.
type WireInput struct {
	CurrentA   float64
	Path       Path
	SystemV    float64
	DropShare  float64 // allowed share of the system voltage
	DropAimed  bool    // it is the practice's aim, and nobody asked for it
	ConductorC float64 // temperature of the copper for the drop
	AmbientC   float64 // for the allowed current
	// Types are the wire types to choose from; each gives one result.
	Types    []*library.WireType
	AllSizes bool // also those that no shop has by the metre
	Library  *library.Library
	// Practice gives margin and table of the allowed current; nil = neither.
	Practice *library.Practice
}

// Wire answers which area a drop needs, and the smallest size of each wire type
// that keeps the drop and carries the current alone in still air.
func Wire(in WireInput) (*Answer, error) {
	var k check
	k.positive("the current", in.CurrentA, mostA, "A")
	k.positive("the length", in.Path.LengthM, mostM, "m")
	k.positive("the system voltage", in.SystemV, mostV, "V")
	k.between("the allowed drop", 100*in.DropShare, 0.01, 99, "%")
	k.between("the conductor temperature", in.ConductorC, coldestC, hottestC, "°C")
	k.between("the ambient", in.AmbientC, coldestC, hottestC, "°C")
	if in.Library == nil || len(in.Types) == 0 {
		k.say("no wire types to choose from")
	}
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("wire", "Smallest wire for a current, length and drop")
	a.in("current", in.CurrentA, quantity.Current)
	a.in(in.Path.name(), in.Path.LengthM, quantity.Length)
	a.in("system", in.SystemV, quantity.Voltage)
	a.in("allowed drop", in.DropShare, quantity.Share)
	if in.DropAimed && in.Practice != nil {
		a.warn("the allowed drop is what the practice aims at for loads on for long periods; critical loads may lose %g %%, "+
			"others a maximum of %g %%", 100*in.Practice.DropCritical, 100*in.Practice.DropOther)
	}
	a.inText("sizes", sizesText(in.AllSizes))
	a.in("conductor", in.ConductorC, quantity.Temperature)
	a.in("ambient", in.AmbientC, quantity.Temperature)

	loop := conductor.Loop{LengthM: in.Path.loopM(), ConductorC: in.ConductorC}
	dropV := in.DropShare * in.SystemV
	area := conductor.AreaForDrop(in.CurrentA, loop, dropV)
	rho := conductor.AtTemperature(conductor.CopperOhmMm2PerM, in.ConductorC)
	a.step("U = share · system", "U = %.4g %% · %g V = %.4g V", 100*in.DropShare, in.SystemV, dropV)
	a.step("A = ρ(T) · I · L / U, ρ(T) = 0.017241 · (1 + 0.00393 · (T − 20 °C))",
		"A = %.5g Ω·mm²/m · %g A · %.5g m / %.4g V = %.4g mm²", rho, in.CurrentA, loop.LengthM, dropV, area)
	a.out("area for the drop", area, quantity.Area)
	a.outText("as a gauge", say("AWG %.1f (%.0f circular mils)",
		conductor.AWGOfArea(area), area/conductor.Mm2PerCmil))
	rater := conductor.NewRater(in.Library, in.Practice)
	for _, t := range in.Types {
		a.smallest(in, rater, t, loop, dropV)
	}
	a.source("copper: IEC 60028; gauge: ASTM B258; sizes: published maximum resistance of each type")
	a.warn("allowed currents are for one wire alone in still air: bundles and covers lower them")
	return a, nil
}

func sizesText(all bool) string {
	if all {
		return "all of each wire type"
	}
	return "those that a shop has by the metre"
}

// smallest adds the smallest size of one type that keeps drop and current.
func (a *Answer) smallest(in WireInput, rater *conductor.Rater, t *library.WireType,
	loop conductor.Loop, dropV float64) {
	sizes := t.Sizes
	if !in.AllSizes {
		sizes = t.ShopSizes()
	}
	first := conductor.SizeForDrop(sizes, in.CurrentA, loop, dropV)
	for _, s := range sizes {
		if first == nil || s.AreaMm2 < first.AreaMm2 {
			continue
		}
		allowed := rater.Allowed(conductor.Conditions{Type: t, Size: s, AmbientC: in.AmbientC})
		if allowed.AllowedA < in.CurrentA {
			continue
		}
		drop := conductor.DropV(in.CurrentA, conductor.AtTemperature(s.MaxOhmPerM, in.ConductorC), loop.LengthM)
		why := "the drop"
		if s != first {
			why = "the current"
		}
		a.outText(t.Name, say("%s: drop %s = %.3g %%, allowed %s; decided by %s",
			sizeText(s),
			quantity.Format(drop, quantity.Voltage), 100*drop/in.SystemV,
			quantity.Format(allowed.AllowedA, quantity.Current), why))
		return
	}
	a.outText(t.Name, "no size is large enough")
}
