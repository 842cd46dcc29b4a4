package conductor

import (
	"math"
	"strings"
	"testing"

	"fusewright/library"
)

func table(t testing.TB, name string) *library.CurrentTable {
	t.Helper()
	c := library.Default().CurrentTable(name)
	if c == nil {
		t.Fatalf("no current table %q", name)
	}
	return c
}

// everyTable visits all wires under all tables and none.
func everyTable(t *testing.T, visit func(AllowedInput)) {
	bundling := table(t, bundlingTable)
	for _, c := range append([]*library.CurrentTable{nil}, library.Default().CurrentTables...) {
		wires(t, func(w *library.WireType, s *library.WireSize, m *library.Insulation) {
			visit(AllowedInput{Type: w, Size: s, Material: m, AmbientC: 30, MarginC: 10,
				Table: c, Bundling: bundling})
		})
	}
}

// falls fails unless the allowed current never rises along a row of inputs.
func falls(t *testing.T, what string, rows int, input func(int) AllowedInput) {
	t.Helper()
	before := math.Inf(1)
	for i := 0; i < rows; i++ {
		a := AllowedCurrent(input(i))
		if !(a.AllowedA <= before*(1+1e-9)) {
			t.Errorf("%s: %g A after %g A at step %d", what, a.AllowedA, before, i)
			return
		}
		if a.AllowedA < 0 || math.IsNaN(a.AllowedA) || a.AllowedA > a.HeatA {
			t.Errorf("%s: %g A, by heat %g A", what, a.AllowedA, a.HeatA)
		}
		before = a.AllowedA
	}
}

func TestMoreAmbientNeverAllowsMore(t *testing.T) {
	everyTable(t, func(in AllowedInput) {
		falls(t, in.Type.Name+" "+in.Size.Label, 30, func(i int) AllowedInput {
			in.AmbientC = -40 + 10*float64(i)
			return in
		})
	})
}

func TestMoreWiresNeverAllowMore(t *testing.T) {
	everyTable(t, func(in AllowedInput) {
		falls(t, in.Type.Name+" "+in.Size.Label, 45, func(i int) AllowedInput {
			in.Loaded = i
			return in
		})
	})
}

func TestMoreLoadingAltitudeOrMarginNeverAllowsMore(t *testing.T) {
	everyTable(t, func(in AllowedInput) {
		in.Loaded = 9
		falls(t, "loading "+in.Size.Label, 20, func(i int) AllowedInput {
			in.Loading = 0.05 + 0.05*float64(i)
			return in
		})
		falls(t, "altitude "+in.Size.Label, 20, func(i int) AllowedInput {
			in.AltitudeM = 1200 * float64(i)
			return in
		})
		falls(t, "margin "+in.Size.Label, 12, func(i int) AllowedInput {
			in.MarginC = 10 * float64(i)
			return in
		})
	})
}

// More copper of the same type never allows less, by heat and by table.
func TestMoreCopperNeverAllowsLess(t *testing.T) {
	for _, c := range append([]*library.CurrentTable{nil}, library.Default().CurrentTables...) {
		for _, w := range library.Default().WireTypes {
			before := 0.0
			for _, s := range w.Sizes {
				a := AllowedCurrent(AllowedInput{Type: w, Size: s, AmbientC: 30, MarginC: 10,
					Material: library.Default().Insulation(w.Material), Table: c})
				if a.HeatA < before {
					t.Errorf("%s %s: %g A by heat after %g A", w.Name, s.Label, a.HeatA, before)
				}
				before = a.HeatA
			}
		}
	}
}

func TestAllowedAtOrOverClassIsZero(t *testing.T) {
	everyTable(t, func(in AllowedInput) {
		in.AmbientC = in.Type.ClassC
		if a := AllowedCurrent(in); a.AllowedA != 0 {
			t.Errorf("%s %s: %g A at its class", in.Type.Name, in.Size.Label, a.AllowedA)
		}
	})
}

func TestAllowedSaysWhatIsMissing(t *testing.T) {
	w := &library.WireType{Name: "odd", ClassC: 50, Material: "felt"}
	s := &library.WireSize{Label: "900 mm²", AreaMm2: 900, MaxOhmPerM: 2e-5, ConductorMm: 40, OuterMm: 44}
	for _, c := range []struct {
		name string
		in   AllowedInput
		want string
	}{
		{"no wire", AllowedInput{}, "not in the library"},
		{"no material", AllowedInput{Type: w, Size: s}, `"felt"`},
		{"class below the table", AllowedInput{Type: w, Size: s, Table: table(t, "ISO 10133")}, "no column"},
		{"size over the table", AllowedInput{Type: &library.WireType{ClassC: 105}, Size: s,
			Table: table(t, "33 CFR 183.425")}, "lists 18 AWG to 4/0 AWG"},
		{"no bundle factors", AllowedInput{Type: w, Size: s, Loaded: 4}, "no bundle factors"},
		{"no altitude factor", AllowedInput{Type: w, Size: s, AltitudeM: 900}, "no altitude factor"},
		{"no diameters", AllowedInput{Type: w, Size: &library.WireSize{Label: "1 mm²", AreaMm2: 1,
			MaxOhmPerM: 0.018}}, "no diameters"},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := AllowedCurrent(c.in)
			if all := strings.Join(a.Missing, "; "); !strings.Contains(all, c.want) {
				t.Errorf("missing %q, want it to hold %q", all, c.want)
			}
		})
	}
}

func TestRaterRemembersAndSaysUnknownTable(t *testing.T) {
	lib := library.Default()
	w := lib.WireTypes[0]
	r := NewRater(lib, &library.Practice{Ampacity: "a table nobody wrote", HotSpotMarginC: 10})
	c := Conditions{Type: w, Size: w.Sizes[0], AmbientC: 30, Loaded: 3}
	a, b := r.Allowed(c), r.Allowed(c)
	if a.AllowedA != b.AllowedA || len(a.Missing) != len(b.Missing) || len(r.known) != 1 {
		t.Error("the second answer differs from the first")
	}
	if !strings.Contains(strings.Join(a.Missing, ";"), "a table nobody wrote") {
		t.Errorf("missing: %v", a.Missing)
	}
	if got := r.ConductorC(c, a.HeatA); math.Abs(got-a.LimitC) > 1e-3 {
		t.Errorf("the allowed current brings the wire to %g °C, want %g", got, a.LimitC)
	}
}

func BenchmarkAllowed(b *testing.B) {
	lib := library.Default()
	w := lib.WireTypes[0]
	in := AllowedInput{Type: w, Size: w.Sizes[2], Material: lib.Insulation(w.Material), AmbientC: 40,
		Loaded: 6, MarginC: 10, Table: table(b, "AC 43.13-1B")}
	for b.Loop() {
		AllowedCurrent(in)
	}
}

func BenchmarkRater(b *testing.B) {
	lib := library.Default()
	r := NewRater(lib, lib.Practices[0])
	w := lib.WireTypes[0]
	c := Conditions{Type: w, Size: w.Sizes[2], AmbientC: 40, Loaded: 6}
	for b.Loop() {
		r.Allowed(c)
	}
}

// TestAllowedAtWorst takes the margin once: class 100 °C, margin 10 K. Up to 80 °C
// it is the ordinary figure; from there to 90 °C what warms the wire by 10 K stays
// allowed, and nothing that takes it past 100 °C.
func TestAllowedAtWorst(t *testing.T) {
	lib := library.Default()
	kind := lib.WireType("ISO 6722 thin wall class B")
	r := NewRater(lib, lib.Practice("motorcycle"))
	at := func(ambientC float64) Conditions {
		return Conditions{Type: kind, Size: kind.Size("1 mm2"), AmbientC: ambientC, Loaded: 3}
	}
	tenK := r.Allowed(at(80)).HeatA
	before := math.Inf(1)
	for ambientC := 60.0; ambientC <= 105; ambientC += 0.25 {
		a := r.AllowedAtWorst(at(ambientC))
		end := r.ConductorC(at(ambientC), a.HeatA)
		switch {
		case !(a.AllowedA <= before):
			t.Errorf("%g °C: %g A after %g A", ambientC, a.AllowedA, before)
		case ambientC <= 80 && a.AllowedA != r.Allowed(at(ambientC)).AllowedA:
			t.Errorf("%g °C: %g A, ordinary %g A", ambientC, a.AllowedA, r.Allowed(at(ambientC)).AllowedA)
		case ambientC > 80 && ambientC <= 88 && a.HeatA != tenK:
			t.Errorf("%g °C: %g A, want %g A", ambientC, a.HeatA, tenK)
		case ambientC < 100 && end > 100+1e-6, ambientC >= 92 && ambientC < 100 && end < 100-1e-6:
			t.Errorf("%g °C: %g A make %g °C", ambientC, a.HeatA, end)
		case ambientC >= 100 && !a.Nothing():
			t.Errorf("%g °C: %g A past the class", ambientC, a.AllowedA)
		}
		before = a.AllowedA
	}
}

// TestNotKnownIsNotNothing keeps a wire without data apart from one that may carry
// nothing.
func TestNotKnownIsNotNothing(t *testing.T) {
	lib := library.Default()
	kind := lib.WireType("ISO 6722 thin wall class A")
	size := kind.Size("1 mm2")
	bare := *size
	bare.OuterMm = 0
	for _, c := range []struct {
		name           string
		in             AllowedInput
		known, nothing bool
	}{
		{"no type", AllowedInput{Size: size}, false, false},
		{"no size", AllowedInput{Type: kind}, false, false},
		{"no diameters", AllowedInput{Type: kind, Size: &bare, AmbientC: 90, MarginC: 10}, false, false},
		{"below", AllowedInput{Type: kind, Size: size, AmbientC: 74.9, MarginC: 10}, true, false},
		{"at", AllowedInput{Type: kind, Size: size, AmbientC: 75, MarginC: 10}, true, true},
		{"above", AllowedInput{Type: kind, Size: size, AmbientC: 75.1, MarginC: 10}, true, true},
	} {
		if a := AllowedCurrent(c.in); a.Known != c.known || a.Nothing() != c.nothing {
			t.Errorf("%s: known %v, nothing %v, %g A", c.name, a.Known, a.Nothing(), a.AllowedA)
		}
	}
}

// TestThinnerNeverCarriesMore goes down the sizes of every wire type, the ends of
// the practices' tables included.
func TestThinnerNeverCarriesMore(t *testing.T) {
	lib := library.Default()
	for _, practice := range lib.Practices {
		r := NewRater(lib, practice)
		for _, kind := range lib.WireTypes {
			for _, ambientC := range []float64{20, 50, 70} {
				for _, thick := range kind.Sizes {
					for _, thin := range kind.Sizes {
						a := r.Allowed(Conditions{Type: kind, Size: thin, AmbientC: ambientC})
						b := r.Allowed(Conditions{Type: kind, Size: thick, AmbientC: ambientC})
						if thin.AreaMm2 < thick.AreaMm2*0.99 && a.AllowedA > b.AllowedA*(1+1e-9) {
							t.Errorf("%s, %s at %g °C: %s carries %.4g A (%s), %s %.4g A (%s)", practice.Name, kind.Name, ambientC,
								thin.Label, a.AllowedA, a.Governs, thick.Label, b.AllowedA, b.Governs)
						}
					}
				}
			}
		}
	}
}

// A heat balance proves too little only beyond its accuracy, or where a table says so too.
func TestProvenA(t *testing.T) {
	for _, c := range []struct {
		name           string
		allowed, table float64
		governs        string
		want           float64
	}{
		{"heat without a table", 100, math.NaN(), GovernsHeat, 107},
		{"heat, table far above", 100, 140, GovernsHeat, 107},
		{"heat, table within the accuracy", 100, 104, GovernsHeat, 104},
		{"table", 100, 100, GovernsTable, 100},
	} {
		a := Allowed{AllowedA: c.allowed, HeatA: c.allowed, TableA: c.table, Governs: c.governs}
		near(t, c.name, a.ProvenA(), c.want, 1e-9)
	}
}
