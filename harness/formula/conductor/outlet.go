package conductor

import "math"

// Outlet is what the surroundings leave of the heat that a lone wire gives off in
// still air at a conductor temperature T:
//
//	the greater of  Share²·W(T)  and  OpenShare²·W(T − BesideK)
//
// Up to its limit a wire is taken with the wires beside it as loaded as itself. Above
// it that would have them carry more as well, without end where they leave little:
// then they add what they really add.
type Outlet struct {
	Share     float64 // of the lone wire's current, by bundle, cover and altitude, 0..1
	OpenShare float64 // of that by cover and altitude alone; 0 = not known apart
	BesideK   float64 // by which the wires beside it warm it; +Inf = not known
}

// Outlet is that of a wire in a place. Where the place or the wires beside it leave it
// nothing, its limit does not tell what they add.
func (a Allowed) Outlet(ambientC float64) Outlet {
	o := Outlet{a.Share(), a.CoverShare * a.AltShare, a.besideK(ambientC)}
	if a.LimitC <= ambientC || a.BundleShare < leavesNothing {
		o.BesideK = math.Inf(1)
	}
	return o
}

// leavesNothing is a share of the lone wire's current that is none.
const leavesNothing = 0.01

// LossWPerM is the heat a metre gives off with the conductor at a temperature in °C.
func (o Outlet) LossWPerM(b *Balance, conductorC float64) float64 {
	return math.Max(o.Share*o.Share*b.LossWPerM(conductorC), o.besideLossW(b, conductorC))
}

func (o Outlet) besideLossW(b *Balance, conductorC float64) float64 {
	return o.OpenShare * o.OpenShare * b.LossWPerM(conductorC-o.BesideK)
}

// SteadyC is the conductor temperature in °C at which a current in amperes stays for
// good; +Inf when none lies below the melting point of copper. It holds from the limit
// on: below it wires that are more loaded make this one warmer.
func (o Outlet) SteadyC(b *Balance, amps float64) float64 {
	alike := b.ConductorC(amps / o.Share)
	if !(o.OpenShare > 0) || math.IsInf(o.BesideK, 1) {
		return alike
	}
	return math.Min(alike, o.besideC(b, amps))
}

// besideC is the steady temperature by the second law, found by halving.
func (o Outlet) besideC(b *Balance, amps float64) float64 {
	gains := func(c float64) bool { return amps*amps*AtTemperature(b.wire.OhmPerM20, c) > o.besideLossW(b, c) }
	low, high := b.air.AmbientC+o.BesideK, CopperMeltsC
	if gains(high) {
		return math.Inf(1)
	}
	for range 50 {
		if mid := (low + high) / 2; gains(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}
