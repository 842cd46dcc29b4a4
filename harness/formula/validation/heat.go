package validation

import (
	"fmt"
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// heat compares the convection formulas and the heat balance.
func heat() []Comparison {
	free := read("ac_43_13_free_air")
	return []Comparison{
		nusselt(),
		freeAir(free, Prediction, "heat balance (Churchill-Chu)", func(w *library.WireSize, _, rise float64) float64 {
			return balance(aircraft(), w, 40, conductor.ByChurchillChu).CurrentA(40 + rise)
		}),
		freeAir(free, Prediction, "heat balance with Morgan's convection", func(w *library.WireSize, _, rise float64) float64 {
			return balance(aircraft(), w, 40, conductor.ByMorgan).CurrentA(40 + rise)
		}),
		freeAir(free, ReadBack, "current table AC 43.13-1B of the library", func(w *library.WireSize, area, rise float64) float64 {
			t := *aircraft()
			t.ClassC = 40 + rise
			return conductor.AllowedCurrent(conductor.AllowedInput{Type: &t, Size: w, AmbientC: 40,
				Table: library.Default().CurrentTable("AC 43.13-1B")}).TableA
		}),
		balanceAgainst("ac_43_13_table_11_9", aircraft(), 70, acReduction),
		balanceAgainst("cfr_183_425", library.Default().WireType("tinned marine 105 °C AWG"), 30, nil),
		balanceAgainst("iso_10133", library.Default().WireType("tinned marine 105 °C metric"), 30, nil),
	}
}

func aircraft() *library.WireType { return library.Default().WireType("M22759/16") }

func balance(t *library.WireType, s *library.WireSize, ambientC float64, by conductor.Convection) *conductor.Balance {
	w := conductor.InsulatedWire(s, library.Default().Insulation(t.Material))
	return conductor.NewBalance(w, conductor.StillAir{AmbientC: ambientC, Convection: by})
}

func nusselt() Comparison {
	s := read("nusselt")
	var p []pair
	for _, r := range s.rows {
		pr, ra := r.number("prandtl"), r.number("prandtl")*r.number("grashof")
		nu := conductor.Morgan(ra)
		if r["formula"] == "Churchill-Chu" {
			nu = conductor.ChurchillChu(ra, pr)
		}
		at := fmt.Sprintf("%s, Ra %.3g", r["formula"], ra)
		p = append(p, pair{at, nu, r.number("nusselt"), 0.001 * r.number("nusselt")})
	}
	return compare(s.against("Nusselt numbers", "0.1 % (formula)", Either), p)
}

func freeAir(s sheet, kind Kind, what string, amps func(w *library.WireSize, area, rise float64) float64) Comparison {
	var p []pair
	for _, r := range s.rows {
		size := aircraft().Size(gaugeLabel(r.gauge()))
		got := math.NaN()
		if size != nil {
			got = amps(size, size.AreaMm2, r.number("rise_K"))
		}
		at := fmt.Sprintf("gauge %d at %s K", r.gauge(), r["rise_K"])
		p = append(p, pair{at, got, r.number("amps"), 0.1 * r.number("amps")})
	}
	c := s.against("free-air current: "+what, "10 % (read off a chart)", OverBad)
	c.Kind = kind
	return compare(c, p)
}

// gaugeLabel is the library's label of a gauge.
func gaugeLabel(n int) string {
	if n <= 0 {
		return fmt.Sprintf("%d/0 AWG", 1-n)
	}
	return fmt.Sprintf("%d AWG", n)
}

// acReduction is what Table 11-9 has in it: bundle and 60 000 ft.
func acReduction(gauge int) (loaded int, loading, altitudeM float64) {
	if gauge <= 8 {
		return 9, 0.2, 60000 * metrePerFoot
	}
	return 33, 0.2, 60000 * metrePerFoot
}

// balanceAgainst compares the heat balance alone, with the conductor at the
// class, with a table of allowed currents. Tables have their own history and
// margins: the practice's table governs wherever it is lower.
func balanceAgainst(name string, t *library.WireType, ambientC float64,
	reduced func(gauge int) (loaded int, loading, altitudeM float64)) Comparison {
	s := read(name)
	var p []pair
	for _, r := range s.rows {
		size, gauge := sizeOf(t, r)
		got := math.NaN()
		if size != nil && r.number("class_C") > ambientC {
			in := conductor.AllowedInput{Type: ofClass(t, r.number("class_C")), Size: size, AmbientC: ambientC,
				Material: library.Default().Insulation(t.Material)}
			if reduced != nil {
				in.Loaded, in.Loading, in.AltitudeM = reduced(gauge)
				in.Bundling = library.Default().CurrentTable("AC 43.13-1B")
			}
			got = conductor.AllowedCurrent(in).HeatA
		}
		p = append(p, pair{rowName(r), got, r.number("amps"), modelBand * r.number("amps")})
	}
	c := s.predicted("heat balance at the class, "+t.Name+" dimensions",
		"20 % model band; the table governs where it is lower", OverBad)
	c.Governed = true
	return compare(c, p)
}

// modelBand is how far the heat balance and a table may disagree before the
// disagreement is counted: published free-air tables scatter by −11 to +16 %
// about one model.
const modelBand = 0.20

func sizeOf(t *library.WireType, r record) (*library.WireSize, int) {
	if mm2, metric := r["mm2"]; metric {
		return t.Size(mm2 + " mm²"), 0
	}
	return t.Size(gaugeLabel(r.gauge())), r.gauge()
}

func ofClass(t *library.WireType, classC float64) *library.WireType {
	c := *t
	c.ClassC = classC
	return &c
}

func rowName(r record) string {
	if mm2, metric := r["mm2"]; metric {
		return fmt.Sprintf("%s mm², %s °C", mm2, r["class_C"])
	}
	return fmt.Sprintf("%s, %s °C", gaugeLabel(r.gauge()), r["class_C"])
}
