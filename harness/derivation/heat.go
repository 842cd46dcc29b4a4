package derivation

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

// laid is a wire where it lies in the view's state: hotter where nothing says how hot.
func (v *view) laid(w *circuit.Wire) *warm.Laid { return &v.set().In(v.state).Wires[w.Index] }

// conductorC is the temperature that a wire's resistance rests on.
func (v *view) conductorC(w *circuit.Wire) *value {
	if v.shorted {
		return v.classC(w)
	}
	used := v.res.UsedC(w)
	ambient := v.ambientC(w)
	rise := used - ambient.v
	if math.Abs(rise) < 1e-9 {
		return ambient
	}
	return of("conductor", celsius, used, "{} + {}", ambient, solved("own heat and that of the wires beside it", kelvin, rise,
		"solved together with its current, to 0.1 K"))
}

// classC is as hot as copper may get in use, where a short finds it.
func (v *view) classC(w *circuit.Wire) *value {
	if t := v.opt.WireTempC(w); w.Spec.Type == nil || w.Spec.Type.ClassC != t {
		return solved("conductor, as hot as its place", celsius, t, "hotter than its class")
	}
	return row("conductor at its class", celsius, w.Spec.Type.ClassC, w.Spec.Type.Source)
}

// hotC is how hot a wire gets, from its place, its own heat and its neighbours.
func (v *view) hotC(w *circuit.Wire) *value {
	l := v.laid(w)
	at := v.set().Model.SituationOf(v.sol.Situation)
	h := l.HeatIn(at, v.sol.BranchA[w.Branch.Index])
	ambient := v.ambientC(w)
	x := of("conductor", celsius, v.res.WireC[w.Index], "{}", ambient)
	if own := h.AloneC - l.AmbientC; own > 0 {
		x.from, x.formula = append(x.from, v.ownRise(w, l, h)), x.formula+" + {}"
	}
	if h.RiseK != 0 {
		x.from = append(x.from, solved("from the wires beside it", kelvin, h.RiseK, "heat of the whole run, solved together"))
		x.formula += " + {}"
	}
	return x
}

// ownRise is by how much a wire's own current warms it: by the heat balance, of which a
// curve was drawn that is within 0.06 K of it.
func (v *view) ownRise(w *circuit.Wire, l *warm.Laid, h warm.Heat) *value {
	rise := solved("own heat", kelvin, h.AloneC-l.AmbientC, "solved: heat made is heat given off, to 0.06 K")
	b := l.Balance()
	if b == nil || math.IsInf(h.AloneC, 0) {
		return rise
	}
	held := b.Hold(h.AloneC)
	alone := v.aloneA(w, l, h)
	hot := v.hotMetre(w, held, of("conductor, by its own heat", celsius, h.AloneC, "{} + {}", v.ambientC(w), rise))
	made := of("check: heat made", wattsPerM, alone.v*alone.v*held.OhmPerM, "{}² × {}", alone, hot)
	off := v.lossOf(w, held, v.ambientC(w))
	off.label = "check: heat given off at that"
	return rise.checked(made, off)
}

// aloneA is the current that warms the wire as much by itself in free air.
func (v *view) aloneA(w *circuit.Wire, l *warm.Laid, h warm.Heat) *value {
	x := v.amps(w.Branch)
	from, formula := []*value{x}, "{}"
	if math.Abs(h.ForGoodA-x.v) > 1e-9*x.v {
		good := solved("the current for good that heats as much", amps, h.ForGoodA, "it is on for a time: settled cycles of on and off")
		if p := l.Pulse; p.Gain > 1 && p.SteadyA == 0 {
			good = of("the current for good that heats as much", amps, h.ForGoodA, "{} ÷ {}", x,
				v.gain(l))
		}
		from[0] = good
	}
	if h.Open != 1 {
		from, formula = append(from, solved("left by cover and thin air", plain, h.Open, "see allowed current")), formula+" ÷ {}"
	}
	before := h.ForGoodA / h.Open
	if math.Abs(h.AloneA-before) > 1e-9*before {
		from = append(from, solved("heat held in by the wires beside it", plain, before/h.AloneA, "heat of the whole run, solved together"))
		formula += " ÷ {}"
	}
	if len(from) == 1 {
		return from[0]
	}
	return of("current that heats as much alone in still air", amps, h.AloneA, formula, from...).by(from[0])
}

// hotMetre is the resistance of a metre of conductor at a temperature.
func (v *view) hotMetre(w *circuit.Wire, held conductor.Held, at *value) *value {
	cold := metreOhm(w)
	return of("resistance of a metre, hot", perM, held.OhmPerM, "{} × (1 + {} × ({} − 20))", cold,
		published("copper's rise by kelvin", perK, conductor.CopperAlphaPerK, "IEC 60028"), at).by(cold)
}

// material is the insulation of a wire; nil where the library has none.
func (b *book) material(w *circuit.Wire) *library.Insulation {
	return b.lib.Insulation(w.Spec.Type.Material)
}

// lossOf is the heat that a metre gives off in still air.
func (v *view) lossOf(w *circuit.Wire, h conductor.Held, ambient *value) *value {
	size := w.Spec.Size
	outer := row("diameter over the insulation", millimetres, h.OuterM, size.Source)
	rise := solved("surface over the air", kelvin, h.SurfaceC-h.AmbientC, "solved together")
	surface := of("surface of the insulation", celsius, h.SurfaceC, "{} + {}", ambient, rise)
	loss := of("heat given off by a metre", wattsPerM, h.WPerM, "π × {} × ({} + {})", outer,
		v.convected(h, outer, surface, rise, ambient), v.radiated(w, h, surface, rise, ambient)).sourced("textbook heat transfer; scheme of IEC 60287-1-1")
	through := of("thermal resistance of the insulation", kmPerW, h.ThermalKmPerW, "{} × ln({} ÷ {}) ÷ (2 × π)",
		v.insulation(w, "thermal resistivity of the insulation", kmPerW, h.Insulated.ResistivityKmPerW), outer,
		row("diameter over the strands", millimetres, h.Insulated.ConductorMm/1000, size.Source))
	rise.checked(of("check: conductor, from surface and heat", celsius, h.ConductorC, "{} + {} × {}", surface, loss, through))
	return loss
}

func (v *view) insulation(w *circuit.Wire, label string, dim *dimension, x float64) *value {
	if m := v.material(w); m != nil {
		return row(label+", "+m.Name, dim, x, m.Source)
	}
	return assumed(label+", not in the library", dim, x, "the worst of the usual plastics")
}

// radiated is ε·σ·(Ts⁴ − Ta⁴), the difference taken apart so that a few digits serve.
func (v *view) radiated(w *circuit.Wire, h conductor.Held, surface, rise, ambient *value) *value {
	return of("radiated", wattsPerM2, h.RadiatedWPerM2, "{} × {} × {} × ({} + {} + 546.3) × (({} + 273.15)² + ({} + 273.15)²)",
		v.insulation(w, "emissivity", plain, h.Insulated.Emissivity),
		published("Stefan-Boltzmann constant", radiates, conductor.StefanBoltzmann, "CODATA"), rise, surface, ambient, surface, ambient).
		sourced("ε σ (Ts⁴ − Ta⁴)")
}

func (v *view) convected(h conductor.Held, outer, surface, rise, ambient *value) *value {
	film := of("air between, kelvin", kelvin, h.FilmK, "({} + {}) ÷ 2 + 273.15", surface, ambient)
	air := func(label string, dim *dimension, of func(conductor.Air) float64) *value {
		return airValue(label, dim, h, film, of)
	}
	ra := of("Rayleigh number", plain, h.Rayleigh, "{} ÷ {} × {} × {}^3 ÷ ({} × {})",
		published("gravity", perS2, conductor.Gravity, "CGPM 1901"), film, rise, outer,
		air("viscosity of air", viscosity, func(a conductor.Air) float64 { return a.Kinematic }),
		air("thermal diffusivity of air", viscosity, func(a conductor.Air) float64 { return a.Diffusivity }))
	nu := of("Nusselt number", plain, h.Nusselt, "(0.60 + 0.387 × {}^(1 ÷ 6) ÷ (1 + (0.559 ÷ {})^(9 ÷ 16))^(8 ÷ 27))²", ra,
		air("Prandtl number of air", plain, func(a conductor.Air) float64 { return a.Prandtl })).
		sourced("Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049")
	return of("carried off by the air", wattsPerM2, h.ConvectedWPerM2, "{} × {} ÷ {} × {}", nu,
		air("conductivity of air", conducts, func(a conductor.Air) float64 { return a.Conductivity }), outer, rise)
}

// airValue is a property of air at the film, straight between two rows.
func airValue(label string, dim *dimension, h conductor.Held, film *value, property func(conductor.Air) float64) *value {
	a, b := conductor.AirRows(h.FilmK)
	known := func(of conductor.Air) *value {
		return row(label+" at "+text0(of.Kelvin)+" K", dim, property(of), library.Source{Text: conductor.AirSource, Certainty: library.FromMemory})
	}
	if a == b {
		return known(a)
	}
	low := known(a)
	return of(label, dim, property(h.Air), "{} + ({} − {}) × ({} − "+text0(a.Kelvin)+") ÷ "+text0(b.Kelvin-a.Kelvin),
		low, known(b), low, film)
}

// ambientC is the hottest that a wire meets.
func (v *view) ambientC(w *circuit.Wire) *value {
	at := v.ambientSaid(w)
	above := v.set().In(v.state).AboveK
	if w.AmbientKnown || above == 0 {
		return at
	}
	return of("its place, hotter than said", celsius, at.v+above, "{} + {}", at, v.tolerance("ambient", "hotter where the design says nothing", kelvin))
}

func (b *book) ambientSaid(w *circuit.Wire) *value {
	for _, p := range b.d.Places {
		if p.Name == w.AmbientAt && p.AmbientC.Given() {
			return given("hottest place that it meets, "+p.Name, celsius, p.AmbientC)
		}
	}
	for _, run := range b.d.Runs {
		if run.Name == w.AmbientAt && run.AmbientC.Given() {
			return given("hottest that it meets, "+run.Name, celsius, run.AmbientC)
		}
	}
	return row("its place, not said", celsius, w.AmbientC, circuit.DefaultAmbientSource)
}
