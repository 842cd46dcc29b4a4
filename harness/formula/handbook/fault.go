package handbook

import (
	"math"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/library"
)

// FaultInput asks for the current of a bolted short and what opens.
type FaultInput struct {
	SourceV   float64
	SourceOhm float64
	Legs      []FaultLeg // wires in series, feed and return
	OtherOhm  float64    // contacts and fuses on the way
	// Type, RatingA and AmbientC are of the device that is to open; a nil type
	// leaves it out.
	Type     *library.FuseType
	RatingA  float64
	AmbientC float64
}

// FaultLeg is a stretch of wire on the way of a fault.
type FaultLeg struct {
	Conductor  Conductor
	LengthM    float64
	ConductorC float64
}

// Fault answers the prospective current I = U / ΣR, when the device opens and
// how hot the thinnest wire gets by then.
func Fault(in FaultInput) (*Answer, error) {
	var k check
	k.positive("the source voltage", in.SourceV, mostV, "V")
	k.between("the source resistance", in.SourceOhm, 0, 1e3, "Ω")
	k.between("the other resistance", in.OtherOhm, 0, 1e3, "Ω")
	for _, l := range in.Legs {
		l.Conductor.check(&k)
		k.positive("a length", l.LengthM, mostM, "m")
		k.between("a conductor temperature", l.ConductorC, coldestC, hottestC, "°C")
	}
	if in.Type != nil {
		k.positive("the rating", in.RatingA, mostA, "A")
	}
	if in.SourceOhm+in.OtherOhm == 0 && len(in.Legs) == 0 {
		k.say("a path without any resistance has no finite current")
	}
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("fault", "Current of a bolted short and what opens")
	a.in("source", in.SourceV, quantity.Voltage)
	a.in("source resistance", in.SourceOhm, quantity.Resistance)
	total, terms := in.SourceOhm+in.OtherOhm, []string{say("%.4g", 1000*in.SourceOhm)}
	for _, l := range in.Legs {
		r20, _ := l.Conductor.ohmPerM20()
		r := conductor.AtTemperature(r20, l.ConductorC) * l.LengthM
		total += r
		terms = append(terms, say("%.4g", 1000*r))
		a.inText("wire", say("%s, %g m at %g °C", l.Conductor.name(), l.LengthM, l.ConductorC))
	}
	if in.OtherOhm > 0 {
		terms = append(terms, say("%.4g", 1000*in.OtherOhm))
		a.in("contacts and fuses", in.OtherOhm, quantity.Resistance)
	}
	current := in.SourceV / total
	a.step("ΣR = source + wires + contacts", "ΣR = %s = %.4g mΩ", strings.Join(terms, " + "), 1000*total)
	a.step("I = U / ΣR", "I = %g V / %.4g mΩ = %.4g A", in.SourceV, 1000*total, current)
	a.out("path", total, quantity.Resistance)
	a.out("prospective current", current, quantity.Current)
	a.source("Ohm's law; copper: IEC 60028")
	if in.Type != nil {
		a.faultOpening(in, current)
	}
	return a, nil
}

func (a *Answer) faultOpening(in FaultInput, current float64) {
	d := fusing.Device{Type: in.Type, Rating: fusing.RatingOf(in.Type, in.RatingA), AmbientC: in.AmbientC}
	a.inText("device", say("%s %g A", in.Type.Name, in.RatingA))
	a.opening(d, FuseInput{Type: in.Type, RatingA: in.RatingA, CurrentA: current, AmbientC: in.AmbientC})
	if current > in.Type.BreakingA {
		a.warn("the current is above the breaking capacity of %g A: the device may not clear it", in.Type.BreakingA)
	}
	o := d.Open(current)
	if never(o.SlowS) {
		a.warn("the short is too weak to be sure to open the device")
		return
	}
	thin, start := math.Inf(1), 0.0
	for _, l := range in.Legs {
		if s := l.Conductor.area(); s < thin {
			thin, start = s, l.ConductorC
		}
	}
	if math.IsInf(thin, 1) {
		return
	}
	end := conductor.AdiabaticEndC(current*current*o.SlowS, thin, start)
	if end > conductor.CopperMeltsC {
		a.outText("thinnest wire at the latest opening", "over the melting point of copper")
	} else {
		a.out("thinnest wire at the latest opening", end, quantity.Temperature)
	}
	if o.SlowS > 5 {
		a.warn("the wire's end temperature counts no heat shed; over 5 s it is less")
	}
	a.source("adiabatic heating: IEC 60949")
}
