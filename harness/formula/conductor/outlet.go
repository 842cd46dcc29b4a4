package conductor

import "math"

// Outlet is what the surroundings leave of the heat that a lone wire gives off in
// still air at a conductor temperature T:
//
//	Share²·W(T − BesideK) + Spread²·W(SpreadC − BesideK)
//
// and no more than Cold²·W(T), what they leave when they are cold: what they add of their
// own heat takes from it at every temperature.
//
// Wires beside it that are cooler take more of its heat than the air would. Of what it
// makes in a fault beyond that of its service they are taken to spread none.
type Outlet struct {
	Share   float64 // of the lone wire's current, over 0 to 1, by cover, altitude and what warms it with its own current
	BesideK float64 // by which the wires that do not carry its current warm it
	Spread  float64 // as a share of the lone wire's current
	SpreadC float64 // the conductor in service
	Cold    float64 // as Share, where the others carry nothing; 0 = not known
}

// Outlet is that of a wire in a place.
func (a Allowed) Outlet(ambientC float64) Outlet {
	open := a.CoverShare * a.AltShare * a.Beside.held()
	o := Outlet{Share: math.Min(1, a.Beside.Own) * open, BesideK: a.Beside.RiseK, Cold: a.Beside.Cold * open}
	if a.Beside.Own > 1 {
		o.Spread, o.SpreadC = open*math.Sqrt(a.Beside.Own*a.Beside.Own-1), a.ServiceC(ambientC)
	}
	return o
}

// LossWPerM is the heat a metre gives off with the conductor at a temperature in °C.
func (o Outlet) LossWPerM(b *Balance, conductorC float64) float64 {
	loss := o.Share * o.Share * b.LossWPerM(conductorC-o.BesideK)
	if o.Spread > 0 && loss > 0 {
		loss += o.Spread * o.Spread * b.LossWPerM(math.Min(conductorC, o.SpreadC)-o.BesideK)
	}
	if o.Cold > 0 && o.BesideK > 0 {
		loss = math.Min(loss, o.Cold*o.Cold*b.LossWPerM(conductorC))
	}
	return loss
}

// CurrentA is the current in amperes that keeps the conductor at a temperature in °C;
// 0 where it is as hot without one.
func (o Outlet) CurrentA(b *Balance, conductorC float64) float64 {
	return math.Sqrt(o.LossWPerM(b, conductorC) / AtTemperature(b.wire.OhmPerM20, conductorC))
}

// SteadyC is the conductor temperature in °C at which a current in amperes stays for
// good; +Inf when none lies below the melting point of copper.
func (o Outlet) SteadyC(b *Balance, amps float64) float64 {
	if o.Spread == 0 && (o.Cold == 0 || o.BesideK == 0) {
		return Beside{Own: o.Share, RiseK: o.BesideK}.ConductorC(b.air.AmbientC, amps, b.ConductorC)
	}
	low, high := b.air.AmbientC+o.BesideK, CopperMeltsC
	if o.CurrentA(b, high) < amps {
		return math.Inf(1)
	}
	return search(low, high, func(c float64) float64 { return o.CurrentA(b, c) - amps })
}
