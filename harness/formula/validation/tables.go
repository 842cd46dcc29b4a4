package validation

import (
	"math"

	"fusewright/harness/formula/conductor"
	"fusewright/library"
)

// tables compares the current that the program allows under a practice's table
// with the table, and the ambient law with published factors.
func tables() []Comparison {
	lib := library.Default()
	return []Comparison{
		allowedAgainst("cfr_183_425", "33 CFR 183.425", lib.WireType("tinned marine 105 °C AWG")),
		allowedAgainst("iso_10133", "ISO 10133", lib.WireType("tinned marine 105 °C metric")),
		acExample(), ambientLaw(), engineSpace(),
	}
}

func allowedAgainst(name, table string, t *library.WireType) Comparison {
	s, lib := read(name), library.Default()
	var p []pair
	for _, r := range s.rows {
		size, _ := sizeOf(t, r)
		got := math.NaN()
		if size != nil {
			got = conductor.AllowedCurrent(conductor.AllowedInput{Type: ofClass(t, r.number("class_C")), Size: size,
				Material: lib.Insulation(t.Material), AmbientC: 30, Table: lib.CurrentTable(table)}).AllowedA
		}
		p = append(p, pair{rowName(r), got, r.number("amps"), 0.001 * r.number("amps")})
	}
	c := s.against("allowed current under "+table+", alone at 30 °C",
		"never above the table; below it where the heat balance is lower", OverBad)
	return compare(c, p)
}

func acExample() Comparison {
	s, lib := read("ac_43_13_example"), library.Default()
	t := aircraft()
	in := conductor.AllowedInput{Type: ofClass(t, 200), Size: t.Size("14 AWG"), AmbientC: 50,
		Table: lib.CurrentTable("AC 43.13-1B"), Material: lib.Insulation(t.Material)}
	var got []float64
	for step := range 3 {
		if step > 0 {
			in.AltitudeM = 20000 * metrePerFoot
		}
		if step > 1 {
			in.Loaded, in.Loading = 8, 0.6
		}
		got = append(got, conductor.AllowedCurrent(in).TableA)
	}
	var p []pair
	for i, r := range s.rows {
		p = append(p, pair{r["what"], got[i], r.number("published"), 0.1 * r.number("published")})
	}
	return compare(s.against("free air, altitude and bundle in turn", "10 % (read off charts)", OverBad), p)
}

// classTable is a table of one size with one column, for asking the ambient law.
func classTable(classC float64) (*library.CurrentTable, *library.WireType, *library.WireSize) {
	t := &library.CurrentTable{Name: "unit", Kind: library.ByClass, AmbientC: 30, Columns: []float64{classC},
		Rows: []library.CurrentRow{{Label: "1 mm²", AreaMm2: 1, Amps: []float64{1}}}}
	w := &library.WireType{Name: "unit", ClassC: classC}
	return t, w, &library.WireSize{Label: "1 mm²", AreaMm2: 1, MaxOhmPerM: 0.018, ConductorMm: 1.3, OuterMm: 2}
}

func ambientFactor(classC, ambientC float64) float64 {
	t, w, s := classTable(classC)
	return conductor.AllowedCurrent(conductor.AllowedInput{Type: w, Size: s, AmbientC: ambientC, Table: t}).AmbientShare
}

func ambientLaw() Comparison {
	s := read("nec_ambient")
	var p []pair
	for _, r := range s.rows {
		p = append(p, pair{r["class_C"] + " °C class at " + r["ambient_C"] + " °C",
			ambientFactor(r.number("class_C"), r.number("ambient_C")),
			r.number("factor"), lastDigit(r["factor"]) + 0.0005})
	}
	return compare(s.against("ambient factor √((class − T)/(class − 30))", halfADigit+" and a tenth of it", OverBad), p)
}

func engineSpace() Comparison {
	s := read("cfr_183_425_note_1")
	t := library.Default().CurrentTable("33 CFR 183.425")
	size := library.Default().WireType("tinned marine 105 °C AWG").Sizes[0]
	var p []pair
	for _, r := range s.rows {
		got := conductor.AllowedCurrent(conductor.AllowedInput{Type: &library.WireType{ClassC: r.number("class_C")},
			Size: size, AmbientC: 50, Table: t}).AmbientShare
		p = append(p, pair{r["class_C"] + " °C class at 50 °C", got, r.number("factor"), 0.005})
	}
	return compare(s.against("ambient factor of 33 CFR 183.425 at 50 °C", halfADigit+"; lower is safe", OverBad), p)
}
