package derivation

import (
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/warm"
)

// laid is a wire where it lies in the view's state: hotter where nothing says how hot.
func (v *view) laid(w *circuit.Wire) *warm.Laid { return &v.set.In(v.state).Wires[w.Index] }

// conductorC is the temperature that a wire's resistance rests on.
func (v *view) conductorC(w *circuit.Wire) *value {
	used := v.res.UsedC(w)
	ambient := v.ambientC(w)
	rise := used - ambient.v
	if rise < 1e-9 {
		ambient.label = "conductor, as warm as its place"
		return ambient
	}
	return of("conductor", celsius, used, "{} + {}", ambient, solved("own heat and that of the wires beside it", kelvin, rise,
		"solved together with its current, to 0.1 K"))
}

// ambientC is the hottest that a wire meets.
func (v *view) ambientC(w *circuit.Wire) *value {
	at := v.ambientSaid(w)
	above := v.set.In(v.state).AboveK
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
