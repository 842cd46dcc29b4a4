package library

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// TestEveryRowHasASource walks the whole library: every Source in it says a
// document and one of the certainties.
func TestEveryRowHasASource(t *testing.T) {
	count := 0
	walk(reflect.ValueOf(Default()).Elem(), "library", func(path string, s Source) {
		count++
		if s.Text == "" || !slices.Contains(Certainties, s.Certainty) {
			t.Errorf("%s: %+v", path, s)
		}
		if s.Certainty == UserData {
			t.Errorf("%s is marked as user data", path)
		}
	})
	if count < 500 {
		t.Errorf("only %d sources met", count)
	}
}

// walk calls visit for every Source within a value.
func walk(v reflect.Value, path string, visit func(string, Source)) {
	if s, ok := v.Interface().(Source); ok {
		visit(path, s)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		walk(v.Elem(), path, visit)
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i), visit)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			walk(v.MapIndex(k), fmt.Sprintf("%s[%v]", path, k), visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && f.Type != reflect.TypeFor[[]CurrentTable]() {
				walk(v.Field(i), path+"."+f.Name, visit)
			}
		}
	}
}

// TestNoListIsEmpty refuses a list of the library without rows.
func TestNoListIsEmpty(t *testing.T) {
	v := reflect.ValueOf(Default()).Elem()
	for i := range v.NumField() {
		if f := v.Field(i); f.Kind() == reflect.Slice && f.Len() == 0 {
			t.Errorf("%s is empty", v.Type().Field(i).Name)
		}
	}
}

// TestWireTypes checks what holds for any wire: classes in order, resistance
// falling with area and close to that of copper.
func TestWireTypes(t *testing.T) {
	for _, w := range Default().WireTypes {
		if w.OverloadC != 0 && w.OverloadC <= w.ClassC || w.ShortC != 0 && w.ShortC <= w.ClassC {
			t.Errorf("%s: class %g, overload %g, short circuit %g °C", w.Name, w.ClassC, w.OverloadC, w.ShortC)
		}
		for i, s := range w.Sizes {
			// The area is nominal in mm² sizes (the copper may be 15 % less), and
			// tin, lay and the limit's allowance add to the resistance; a slip of a
			// column or a power of ten shows as far more.
			if x := s.MaxOhmPerM * s.AreaMm2 / iacsOhmMm2PerM; x < 0.999 || x > 1.25 {
				t.Errorf("%s %s: resistance %.3f of IACS copper of its area", w.Name, s.Label, x)
			}
			if solid := math.Sqrt(4 / math.Pi * s.AreaMm2); s.ConductorMm < 0.95*solid || s.OuterMm <= s.ConductorMm {
				t.Errorf("%s %s: conductor %g mm, outer %g mm", w.Name, s.Label, s.ConductorMm, s.OuterMm)
			}
			if i > 0 && (s.MaxOhmPerM >= w.Sizes[i-1].MaxOhmPerM || s.OuterMm < w.Sizes[i-1].OuterMm) {
				t.Errorf("%s %s: does not follow from the size below", w.Name, s.Label)
			}
		}
	}
}

// TestFuseTypes checks what holds for any overcurrent device: resistance falls
// with the rating, opening times fall with the current, and it knows how it is
// mounted.
func TestFuseTypes(t *testing.T) {
	for _, f := range Default().FuseTypes {
		if (f.Kind == "fuse") != (f.Reset == "") {
			t.Errorf("%s is a %s with reset %q", f.Name, f.Kind, f.Reset)
		}
		for i, b := range f.Breaks {
			if b.UpToV >= f.MaxV || b.BreakingA <= f.BreakingA || i > 0 && b.BreakingA >= f.Breaks[i-1].BreakingA {
				t.Errorf("%s breaks %g A at %g V", f.Name, b.BreakingA, b.UpToV)
			}
		}
		for i, r := range f.Ratings {
			if r.ColdOhm <= 0 {
				t.Errorf("%s %g A has no resistance", f.Name, r.RatingA)
			}
			if i > 0 && f.Kind != "ptc" && r.ColdOhm >= f.Ratings[i-1].ColdOhm {
				t.Errorf("%s %g A: resistance does not fall", f.Name, r.RatingA)
			}
			if r.DropV > 0 && r.DropV < 0.95*r.RatingA*r.ColdOhm {
				t.Errorf("%s %g A: hot drop %g V is below the cold one", f.Name, r.RatingA, r.DropV)
			}
			checkBand(t, f, r)
		}
	}
}

func checkBand(t *testing.T, f *FuseType, r *FuseRating) {
	t.Helper()
	band := f.BandFor(r.RatingA)
	if len(band) < 2 && f.Kind != "ptc" || len(band) == 0 {
		t.Errorf("%s %g A has no band", f.Name, r.RatingA)
		return
	}
	lastMin, lastMax := math.Inf(1), math.Inf(1)
	for _, p := range band {
		if p.MinS > lastMin || p.MaxS > lastMax {
			t.Errorf("%s %g A: slower at %g times than below", f.Name, r.RatingA, p.Multiple)
		}
		if p.MinS == 0 && p.MaxS == 0 {
			t.Errorf("%s %g A: nothing said at %g times", f.Name, r.RatingA, p.Multiple)
		}
		if p.MinS > 0 {
			lastMin = p.MinS
		}
		if p.MaxS > 0 {
			lastMax = p.MaxS
		}
	}
}

// TestRelayForms checks coils and contacts against one another.
func TestRelayForms(t *testing.T) {
	lib := Default()
	for _, f := range lib.RelayForms {
		if f.PullInV >= f.CoilV && !f.Senses || f.LampA > f.MakeA || f.MotorA > f.MakeA || f.BreakA > f.MakeA {
			t.Errorf("%s: %+v", f.Name, f)
		}
		most := 3.0 // W, of a plug-in relay
		if f.ContactEnd != "" {
			most = 25 // a solenoid for short times has 22 W
		}
		if w := f.CoilV * f.CoilV / f.CoilOhm; !f.Senses && (w < 0.5 || w > most) {
			t.Errorf("%s: coil of %.1f W", f.Name, w)
		}
		want := []string{"30", "85", "86", "87"}
		if f.Changeover {
			want = append(want, "87a")
		}
		for _, n := range want {
			if kind := f.End(n); !slices.Contains(lib.TerminalKinds(), kind) {
				t.Errorf("%s terminal %s: no crimp part for %q", f.Name, n, kind)
			}
		}
		for i, p := range f.ShortTime {
			if p.CurrentA <= f.MakeA || i > 0 && p.CurrentA >= f.ShortTime[i-1].CurrentA {
				t.Errorf("%s carries %g A for %g s", f.Name, p.CurrentA, p.S)
			}
		}
		if f.ContactEnd == "" && len(f.TabMm) != len(want) {
			t.Errorf("%s has tabs %v", f.Name, f.TabMm)
		}
	}
}

// TestKindsOfTerminals: whatever a part says of its connection, the library has
// a crimp part for it.
func TestKindsOfTerminals(t *testing.T) {
	lib := Default()
	kinds := lib.TerminalKinds()
	check := func(part, kind string) {
		if kind != "" && !slices.Contains(kinds, kind) {
			t.Errorf("%s: no crimp part for %q", part, kind)
		}
	}
	for _, f := range lib.FuseTypes {
		for _, r := range f.Ratings {
			check(f.Name, f.End(r))
		}
	}
	for _, b := range lib.Blocks {
		check(b.Name, b.Mounting)
		check(b.Name, b.WayEnd)
		if b.WayA > b.TotalA {
			t.Errorf("%s: a way takes more than the block", b.Name)
		}
	}
	for _, s := range lib.Switches {
		check(s.Name, s.End)
		// FAA AC 43.13-1B Table 11-4, 12 V: lamp 5, motor 2.
		near(t, s.Name+" lamp", s.LampA, s.ResistiveA/5, 1e-9)
		near(t, s.Name+" motor", s.MotorA, s.ResistiveA/2, 1e-9)
	}
	for _, l := range lib.Loads {
		check(l.Name, l.End)
	}
	for _, c := range lib.Connectors {
		check(c.Name, c.PinKind)
	}
}

// TestTerminalFor: the wires of usual designs find a crimp part, and one whose
// rating is not below the fuse it sits in.
func TestTerminalFor(t *testing.T) {
	lib := Default()
	for _, c := range []struct {
		kind     string
		from, to float64 // mm²
	}{
		{"ring M4", 0.3, 6.6}, {"ring M5", 0.3, 26}, {"ring M6", 0.3, 120}, {"ring M8", 0.3, 120},
		{"ring M10", 0.3, 120}, {"ring M12", 1.7, 120}, {"fork M4", 0.3, 6.6}, {"fork M5", 0.3, 6.6}, {"tab 2.8", 0.3, 2.6},
		{"tab 4.8", 0.3, 2.6}, {"tab 6.3", 0.3, 6.6}, {"tab 9.5", 2.5, 10.5}, {"splice", 0.3, 120}, {"joint", 0.3, 26},
		{"ferrule", 0.3, 16.7}, {"bullet 4", 0.3, 6.6}, {"bullet 5", 0.3, 6.6}, {"pin 1.5", 0.3, 2.6},
		{"pin 2.8", 0.5, 6.6}, {"pin 6.3", 2.5, 16.7}, {"pin 10", 7, 53},
		{"fuse contact F", 0.35, 4.2}, {"fuse contact C", 0.35, 6.6}, {"fuse contact E", 2.5, 21},
	} {
		for _, w := range lib.WireTypes {
			for _, s := range w.Sizes {
				if s.AreaMm2 >= c.from && s.AreaMm2 <= c.to && lib.TerminalFor(c.kind, s.AreaMm2) == nil {
					t.Errorf("no %s for %s %s (%.3f mm²)", c.kind, w.Name, s.Label, s.AreaMm2)
				}
			}
		}
		if lib.TerminalFor(c.kind, 500) != nil {
			t.Errorf("%s takes 500 mm²", c.kind)
		}
	}
	if got := lib.TerminalFor("tab 6.3", 1.5); got == nil || got.Name != "receptacle 6.3 red" {
		t.Errorf("tab 6.3 for 1.5 mm²: %+v", got)
	}
}

// TestChemistries: resting volts rise with charge and lie in the 12 V class.
func TestChemistries(t *testing.T) {
	for _, c := range Default().Batteries {
		first, last := c.OpenCircuit[0], c.OpenCircuit[len(c.OpenCircuit)-1]
		if first.Charge != 0 || last.Charge != 1 || last.Volts < 12.5 || last.Volts > 13.7 {
			t.Errorf("%s: from %+v to %+v", c.Name, first, last)
		}
		for i := 1; i < len(c.OpenCircuit); i++ {
			if c.OpenCircuit[i].Volts <= c.OpenCircuit[i-1].Volts {
				t.Errorf("%s: volts do not rise at %g", c.Name, c.OpenCircuit[i].Charge)
			}
		}
	}
}

// TestPractices: every limit has a source of its own, and the governing table
// is in the library.
func TestPractices(t *testing.T) {
	for _, p := range Default().Practices {
		if len(p.Source) != 18 {
			t.Errorf("%s: %d limits with a source, want 18", p.Name, len(p.Source))
		}
		if Default().CurrentTable(p.Ampacity) == nil {
			t.Errorf("%s: no current table %q", p.Name, p.Ampacity)
		}
		if p.Afloat != (p.Name == "marine") || Default().WireType(p.UsualWire) == nil {
			t.Errorf("%s: afloat %v, usual wire %q", p.Name, p.Afloat, p.UsualWire)
		}
		if p.DropCritical > p.DropOther || p.FuseDistanceM > p.FuseDistanceSheathedM || p.FuseDistanceSheathedM > p.MostFuseDistanceSheathedM || p.FuseDistanceM > p.MostFuseDistanceM ||
			p.MostFuseDistanceM > p.GraveFuseDistanceM || p.MinMm2 > p.MinFlexMm2 {
			t.Errorf("%s: %+v", p.Name, p)
		}
	}
}

// TestWhatPartsAre pins which rows say what the program goes by.
func TestWhatPartsAre(t *testing.T) {
	for _, s := range Default().Switches {
		if s.Isolates != strings.HasPrefix(s.Name, "battery switch") {
			t.Errorf("%s: isolates %v", s.Name, s.Isolates)
		}
		if s.Float != strings.HasPrefix(s.Name, "float switch") {
			t.Errorf("%s: float %v", s.Name, s.Float)
		}
	}
	for _, l := range Default().Loads {
		if l.StopsWithEngine != (l.Name == "fuel pump") {
			t.Errorf("%s: stops with the engine %v", l.Name, l.StopsWithEngine)
		}
		if l.Bilge != strings.HasPrefix(l.Name, "bilge pump") {
			t.Errorf("%s: bilge pump %v", l.Name, l.Bilge)
		}
	}
	for _, c := range Default().Covers {
		if c.Stiff != (c.Name == "rigid conduit") {
			t.Errorf("%s: stiff %v", c.Name, c.Stiff)
		}
	}
}

// TestReadmeNamesEveryFile keeps the list of files in the README complete.
func TestReadmeNamesEveryFile(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	files, err := embedded.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if !strings.Contains(string(text), "| `"+f.Name()+"` |") {
			t.Errorf("README.md does not list %s", f.Name())
		}
	}
	own, err := os.ReadFile("testdata/own_parts.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, lamp, _ := strings.Cut(string(text), "loads:\n")
	lamp, _, _ = strings.Cut(lamp, "```")
	if lamp == "" || !strings.Contains(string(own), lamp) {
		t.Error("the example of README.md is not in testdata/own_parts.yaml")
	}
}
