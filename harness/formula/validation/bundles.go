package validation

import (
	"fmt"
	"math"

	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// bundles compares what the heat balance of a bundle leaves each wire of its current
// alone with published factors.
func bundles() []Comparison {
	out := []Comparison{
		aircraftCurves(ReadBack, "all wires loaded", func(loading float64) bool { return loading == 1 }),
		aircraftCurves(Prediction, "a fifth to four fifths loaded", func(loading float64) bool { return loading < 1 }),
		vdeAmps(),
	}
	for _, rule := range []string{vde, "NEC 310.15(C)(1) conductor count", "ABYC E-11 / 33 CFR guideline",
		"MIL-W-5088B small bundle", "electronic-cable chart"} {
		out = append(out, grouping(rule))
	}
	return out
}

const (
	vde      = "VDE 0298-4 Table 26 loaded cores"
	bandText = "20 % model band; the practice's factor governs where it is lower"
)

// insulated is a wire of the library.
func insulated(kind, size string) conductor.Insulated {
	t := library.Default().WireType(kind)
	return conductor.InsulatedWire(t.Size(size), library.Default().Insulation(t.Material))
}

// installation is 1.5 mm² of H07V-K: 13.3 mΩ/m (IEC 60228, two sources), 1.6 and 3.0 mm
// (from memory), PVC of 0.20 W/(m·K).
var installation = conductor.Insulated{AreaMm2: conductor.CopperOhmMm2PerM / 13.3e-3, OhmPerM20: 13.3e-3,
	ConductorMm: 1.6, OuterMm: 3, ResistivityKmPerW: 5, Emissivity: 0.9, InsulationJPerMm3K: 2e-3}

// alike is the current of each of some equal wires, all loaded, that brings the first to its limit, and
// the share of a lone one's; NaN where there is none.
func alike(w conductor.Insulated, n int, limitC, ambientC float64) (amps, share float64) {
	wires := make([]bundle.Wire, n)
	for i := range wires {
		wires[i] = bundle.Wire{Insulated: w, CurrentA: 1, LimitC: limitC}
	}
	b, err := bundle.New(wires, bundle.Place{AmbientC: ambientC})
	if err != nil || n == 0 {
		return math.NaN(), math.NaN()
	}
	amps = b.CommonFactor()
	return amps, amps / b.AloneA(0)
}

// aircraftCurves has the wires that are loaded, straight between whole ones; idle ones
// count for nothing. The curve of all loaded is no prediction: the conductivity across
// the bundle is fitted to it.
func aircraftCurves(kind Kind, what string, of func(loading float64) bool) Comparison {
	s, w := read("aircraft_bundle_curves"), insulated("M22759/16", "20 AWG")
	var p []pair
	for _, r := range s.rows {
		wires, loading := r.number("wires"), r.number("loading")
		loaded := wires * loading
		if !of(loading) || loaded < 0.99 {
			continue
		}
		few, rest := math.Modf(loaded + 1e-9)
		_, share := alike(w, int(few), 150, 70)
		if rest > 1e-6 {
			_, more := alike(w, int(few)+1, 150, 70)
			share += rest * (more - share)
		}
		p = append(p, factorPair(fmt.Sprintf("%g wires at %g %%", wires, 100*loading), share, r))
	}
	c := s.predicted("share of a lone wire's current by the heat of the bundle, "+what, bandText, OverBad)
	if c.Kind = kind; kind == ReadBack {
		c.Note += "; one number of the model, the conductivity across the bundle, is fitted to this curve"
	}
	return compare(c, p)
}

func factorPair(at string, share float64, r record) pair {
	return pair{at, share, r.number("factor"), modelBand * r.number("factor")}
}

// grouping has all wires of a step loaded. What the sources are stands with vdeAmps.
func grouping(rule string) Comparison {
	s, w, limitC := read("grouping_factors"), insulated("ISO 6722 thin wall class B", "2.5 mm²"), 100.0
	if rule[:3] == "VDE" || rule[:3] == "NEC" {
		w, limitC = installation, 70
	}
	var p []pair
	for _, r := range s.rows {
		if r["rule"] == rule {
			_, share := alike(w, int(r.number("wires")), limitC, 30)
			p = append(p, factorPair(r["wires"]+" wires", share, r))
			s.head.Certainty, s.head.Note = r["certainty"], ""
		}
	}
	return compare(s.predicted("share of a lone wire's current by the heat of the bundle, "+rule, bandText, OverBad), p)
}

// vdeAmps is the same in amperes: factor and 24 A of VDE 0298-4 Table 11 column 2.
func vdeAmps() Comparison {
	s := read("grouping_factors")
	var p []pair
	for _, r := range s.rows {
		if r["rule"] == vde {
			amps, _ := alike(installation, int(r.number("wires")), 70, 30)
			want := 24 * r.number("factor")
			p = append(p, pair{r["wires"] + " wires", amps, want, 0.1 * want})
			s.head.Certainty = r["certainty"]
		}
	}
	return compare(s.predicted("amperes of 1.5 mm² at 70 °C in 30 °C by the heat of the bundle, "+vde, "10 % (two rounded tables multiplied)", OverBad), p)
}
