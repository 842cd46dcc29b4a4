package conductor

import (
	"math"
	"sync"

	"fusewright/library"
)

// Constants of the heat balance.
const (
	StefanBoltzmann = 5.670374419e-8 // W/(m²·K⁴), CODATA
	Gravity         = 9.80665        // m/s², CGPM 1901
	zeroC           = 273.15
)

// Convection chooses the correlation for natural convection.
type Convection int

// The correlations; the first is the default and the safer one.
const (
	ByChurchillChu Convection = iota
	ByMorgan
)

// Insulated is one round insulated wire as the heat balance sees it.
type Insulated struct {
	AreaMm2            float64
	OhmPerM20          float64 // conductor at 20 °C
	ConductorMm        float64 // diameter over the strands
	OuterMm            float64 // diameter over the insulation
	ResistivityKmPerW  float64 // thermal, of the insulation
	Emissivity         float64
	InsulationJPerMm3K float64 // heat capacity by volume
}

// Fallbacks for a material that the library does not hold: the worst of the
// usual plastics. AllowedCurrent says when they are used.
const (
	fallbackResistivity = 6.0
	fallbackEmissivity  = 0.9
	// plasticHeat is the heat capacity of insulation by volume: 1.7e-3 to
	// 2.5e-3 J/(mm³·K) for the usual plastics, the low end being the safe one.
	// Source: plastics handbooks, from memory.
	plasticHeat = 1.7e-3
)

// InsulatedWire takes a size of a wire type and its insulation material; a nil
// material takes safe fallbacks.
func InsulatedWire(s *library.WireSize, material *library.Insulation) Insulated {
	w := Insulated{AreaMm2: s.AreaMm2, OhmPerM20: s.MaxOhmPerM, ConductorMm: s.ConductorMm,
		OuterMm: s.OuterMm, ResistivityKmPerW: fallbackResistivity, Emissivity: fallbackEmissivity,
		InsulationJPerMm3K: plasticHeat}
	if material != nil {
		w.ResistivityKmPerW, w.Emissivity = material.ResistivityKmPerW, material.Emissivity
	}
	return w
}

// valid tells whether the wire has the dimensions that the balance needs.
func (w Insulated) valid() bool {
	return w.AreaMm2 > 0 && w.OhmPerM20 > 0 && w.ConductorMm > 0 && w.OuterMm >= w.ConductorMm
}

// StillAir is what surrounds the wire: still air, no sun, nothing touching.
type StillAir struct {
	AmbientC   float64
	AltitudeM  float64
	Convection Convection
}

// Balance is the heat balance of one wire in still air, in the steady state:
//
//	I² · R(Tc) = (Tc − Ts) / T1 = π·D·[h·(Ts − Ta) + ε·σ·(Ts⁴ − Ta⁴)]
//	T1 = ρ · ln(D/d) / 2π
//
// with h = Nu·k/D at the film temperature, Tc conductor and Ts surface; in the
// radiation term kelvin. Everything follows from Ts without search: the loss,
// then Tc, then the current, each rising with Ts. Both questions are therefore
// one search on Ts. Range: wire of 0.1 to 30 mm, conductor to 1083 °C.
// Source: textbook heat transfer; the scheme of IEC 60287-1-1 for direct
// current without sheath, with the correlations named at Convection.
type Balance struct {
	wire    Insulated
	air     StillAir
	t1      float64 // K·m/W through the insulation
	density float64 // of the air against sea level
	ok      bool
	melting func() state // worked out once
}

// NewBalance prepares the balance of a wire. One of a wire without dimensions,
// or of an ambient that is no number, allows no current.
func NewBalance(w Insulated, air StillAir) *Balance {
	b := &Balance{wire: w, air: air, density: AirDensityRatio(air.AltitudeM)}
	b.ok = w.valid() && air.AmbientC > -zeroC && air.AmbientC < CopperMeltsC
	if b.ok {
		b.t1 = w.ResistivityKmPerW * math.Log(w.OuterMm/w.ConductorMm) / (2 * math.Pi)
	}
	b.melting = sync.OnceValue(func() state { return b.conductorAt(CopperMeltsC) })
	return b
}

// Loss is the heat that a metre gives off at a surface temperature, with what it is
// reckoned from.
type Loss struct {
	SurfaceC, AmbientC float64
	OuterM             float64 // diameter
	FilmK              float64 // mean of surface and ambient
	Air                Air     // at the film
	Rayleigh, Nusselt  float64
	ConvectedWPerM2    float64
	RadiatedWPerM2     float64
	WPerM              float64
}

func (b *Balance) loss(surfaceC float64) Loss {
	l := Loss{SurfaceC: surfaceC, AmbientC: b.air.AmbientC, OuterM: b.wire.OuterMm / 1000}
	rise := surfaceC - b.air.AmbientC
	if !(rise > 0) {
		return l
	}
	ts, ta := surfaceC+zeroC, b.air.AmbientC+zeroC
	d := l.OuterM
	l.FilmK = (ts + ta) / 2
	l.Air = airAt(l.FilmK)
	l.Rayleigh = Gravity / l.FilmK * rise * d * d * d / (l.Air.Kinematic * l.Air.Diffusivity) * b.density * b.density
	if b.air.Convection == ByMorgan {
		l.Nusselt = Morgan(l.Rayleigh)
	} else {
		l.Nusselt = ChurchillChu(l.Rayleigh, l.Air.Prandtl)
	}
	l.ConvectedWPerM2 = l.Nusselt * l.Air.Conductivity / d * rise
	l.RadiatedWPerM2 = b.wire.Emissivity * StefanBoltzmann * (ts*ts*ts*ts - ta*ta*ta*ta)
	l.WPerM = math.Pi * d * (l.ConvectedWPerM2 + l.RadiatedWPerM2)
	return l
}

// SurfaceLossWPerM is the heat a metre gives off at a surface temperature.
func (b *Balance) SurfaceLossWPerM(surfaceC float64) float64 { return b.loss(surfaceC).WPerM }

// Held is the steady state of the conductor at a temperature, with what it is reckoned from.
type Held struct {
	Loss
	ThermalKmPerW float64 // through the insulation
	Insulated     Insulated
	ConductorC    float64
	OhmPerM       float64 // of the conductor at that
	CurrentA      float64
}

// Hold is the steady state with the conductor at a temperature in °C; zero where it is not
// above the ambient.
func (b *Balance) Hold(conductorC float64) Held {
	s := b.conductorAt(conductorC)
	return Held{Loss: b.loss(s.surfaceC), ThermalKmPerW: b.t1, Insulated: b.wire, ConductorC: s.conductorC,
		OhmPerM: AtTemperature(b.wire.OhmPerM20, s.conductorC), CurrentA: s.currentA}
}

// state is the operating point that belongs to a surface temperature.
type state struct{ surfaceC, lossW, conductorC, currentA float64 }

func (b *Balance) at(surfaceC float64) state {
	w := b.SurfaceLossWPerM(surfaceC)
	tc := surfaceC + w*b.t1
	return state{surfaceC, w, tc, math.Sqrt(w / AtTemperature(b.wire.OhmPerM20, tc))}
}

// CurrentA is the steady current that brings the conductor to a temperature;
// zero when that is not above the ambient.
func (b *Balance) CurrentA(conductorC float64) float64 {
	return b.conductorAt(conductorC).currentA
}

// Steady is the steady state that belongs to a surface temperature: the conductor
// in °C and the current in amperes. It is the one answer that needs no search.
func (b *Balance) Steady(surfaceC float64) (conductorC, currentA float64) {
	if !b.ok || !(surfaceC > b.air.AmbientC) {
		return b.air.AmbientC, 0
	}
	s := b.at(surfaceC)
	return s.conductorC, s.currentA
}

// LossWPerM is the heat a metre gives off with the conductor at a temperature.
func (b *Balance) LossWPerM(conductorC float64) float64 { return b.conductorAt(conductorC).lossW }

func (b *Balance) conductorAt(conductorC float64) state {
	if !b.ok || !(conductorC > b.air.AmbientC) {
		return state{surfaceC: b.air.AmbientC, conductorC: b.air.AmbientC}
	}
	goal := math.Min(conductorC, CopperMeltsC)
	surface := search(b.air.AmbientC, goal, func(ts float64) float64 { return b.at(ts).conductorC - goal })
	return b.at(surface)
}

// ConductorC is the steady temperature of the conductor at a current. It is
// +Inf when no steady state lies below the melting point of copper, or the
// wire has no dimensions.
func (b *Balance) ConductorC(currentA float64) float64 {
	current := math.Abs(currentA)
	if !(current > 0) {
		return b.air.AmbientC
	}
	if !b.ok {
		return math.Inf(1)
	}
	top := b.melting()
	if !(current < top.currentA) {
		return math.Inf(1)
	}
	surface := search(b.air.AmbientC, top.surfaceC,
		func(ts float64) float64 { return b.at(ts).currentA - current })
	return b.at(surface).conductorC
}

// search finds where a rising function passes zero between lo and hi, by false
// position with the Illinois step and bisection when that is slow. It ends
// within a hundred steps for every function.
func search(lo, hi float64, f func(float64) float64) float64 {
	flo, fhi := f(lo), f(hi)
	if flo >= 0 {
		return lo
	}
	if fhi <= 0 {
		return hi
	}
	const closeK = 1e-7
	side := 0
	for i := 0; i < 100 && hi-lo > closeK; i++ {
		x := (lo*fhi - hi*flo) / (fhi - flo)
		if i%4 == 3 || !(x > lo && x < hi) {
			x = (lo + hi) / 2
		}
		y := f(x)
		if y < 0 {
			lo, flo = x, y
			if side == -1 {
				fhi /= 2
			}
			side = -1
		} else {
			hi, fhi = x, y
			if side == 1 {
				flo /= 2
			}
			side = 1
		}
		if math.Abs(y) < closeK {
			return x
		}
	}
	return (lo + hi) / 2
}
