package handbook

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
)

// ShortInput asks of a short circuit: give two of current, time and area, or
// the area alone for its I²t.
type ShortInput struct {
	CurrentA float64
	Seconds  float64
	AreaMm2  float64
	StartC   float64 // conductor before the fault
	EndC     float64 // short-circuit limit of the insulation
}

// Short answers by the adiabatic law I²·t = k²·S², which holds up to 5 s.
func Short(in ShortInput) (*Answer, error) {
	var k check
	k.between("the current", in.CurrentA, 0, 1e6, "A")
	k.between("the time", in.Seconds, 0, 60, "s")
	k.between("the area", in.AreaMm2, 0, mostMm2, "mm²")
	k.between("the start temperature", in.StartC, coldestC, hottestC, "°C")
	k.between("the end temperature", in.EndC, in.StartC+1, conductor.CopperMeltsC, "°C")
	if in.AreaMm2 == 0 && (in.CurrentA == 0 || in.Seconds == 0) {
		k.say("give an area, or a current and a time")
	}
	if err := k.err(); err != nil {
		return nil, err
	}
	a := newAnswer("short", "Short circuit in a wire, all heat staying in the copper")
	a.in("start", in.StartC, quantity.Temperature)
	a.in("limit", in.EndC, quantity.Temperature)
	kf := conductor.KFactor(in.StartC, in.EndC)
	a.step("k = 226 · √ln((234.5 + θf)/(234.5 + θi))", "k = 226 · √ln(%g/%g) = %.4g A·√s/mm²",
		234.5+in.EndC, 234.5+in.StartC, kf)
	a.outNumber("k", kf, "A·√s/mm²")
	if in.CurrentA > 0 {
		a.in("current", in.CurrentA, quantity.Current)
	}
	if in.Seconds > 0 {
		a.in("time", in.Seconds, quantity.Duration)
	}
	if in.CurrentA > 0 && in.Seconds > 0 {
		s := conductor.AreaForI2t(in.CurrentA, in.Seconds, in.StartC, in.EndC)
		a.step("S = I · √t / k", "S = %g A · √%g s / %.4g = %.4g mm²", in.CurrentA, in.Seconds, kf, s)
		a.out("smallest area", s, quantity.Area)
	}
	if in.AreaMm2 > 0 {
		a.shortOfArea(in, kf)
	}
	if in.Seconds > 5 {
		a.warn("the law holds up to 5 s; after that the wire sheds heat and withstands more")
	}
	a.source("IEC 60364-4-43 and IEC 60364-5-54 annex A; IEC 60949")
	return a, nil
}

func (a *Answer) shortOfArea(in ShortInput, kf float64) {
	a.in("area", in.AreaMm2, quantity.Area)
	i2t := conductor.WithstandI2t(in.AreaMm2, in.StartC, in.EndC)
	a.step("k²S² = (k · S)²", "k²S² = (%.4g · %g)² = %.4g A²s", kf, in.AreaMm2, i2t)
	a.out("withstands", i2t, quantity.CurrentSquareTime)
	if in.CurrentA > 0 {
		t := conductor.AdiabaticS(in.CurrentA, in.AreaMm2, in.StartC, in.EndC)
		a.step("t = k²S² / I²", "t = %.4g A²s / (%g A)² = %.4g s", i2t, in.CurrentA, t)
		a.out("time to the limit", t, quantity.Duration)
		if t > 5 {
			a.warn("the law holds up to 5 s; after that the wire sheds heat and withstands more")
		}
	}
	if in.CurrentA > 0 && in.Seconds > 0 {
		a.out("temperature after the time", conductor.AdiabaticEndC(in.CurrentA*in.CurrentA*in.Seconds,
			in.AreaMm2, in.StartC), quantity.Temperature)
	}
}
