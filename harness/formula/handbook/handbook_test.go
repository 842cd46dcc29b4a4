package handbook

import (
	"encoding/json"
	"fusewright/harness/formula/battery"
	"math"
	"strings"
	"testing"

	"fusewright/library"
)

// need is a result of an answer that must be there.
func need(t *testing.T, a *Answer, name string) Value {
	t.Helper()
	v, ok := a.Result(name)
	if !ok {
		t.Fatalf("%s: no result %q in %+v", a.Question, name, a.Results)
	}
	return v
}

func near(t *testing.T, a *Answer, name string, want, share float64) {
	t.Helper()
	if got := need(t, a, name).Number; math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s, %s = %g, want %g within %g %%", a.Question, name, got, want, 100*share)
	}
}

func must(t *testing.T) func(*Answer, error) *Answer {
	return func(a *Answer, err error) *Answer {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
}

func wireType(t *testing.T, name string) *library.WireType {
	t.Helper()
	w := library.Default().WireType(name)
	if w == nil {
		t.Fatalf("no wire type %q", name)
	}
	return w
}

// Rules of the trade: common practice, no source.
func TestTradeRules(t *testing.T) {
	ok := must(t)
	near(t, ok(Power(PowerInput{CurrentA: 23, Volts: 12})), "power", 276, 1e-12)
	near(t, ok(Power(PowerInput{CurrentA: 29, Volts: 12})), "power", 348, 1e-12)
	near(t, ok(Power(PowerInput{PowerW: 276, Volts: 12})), "current", 23, 1e-12)
	near(t, ok(Battery(BatteryInput{CapacityAh: 12, RateH: 10, Peukert: 1.2, CurrentA: 1.2})), "time to empty", 36000, 1e-12)
	near(t, ok(Battery(BatteryInput{CapacityAh: 12, RateH: 10, Peukert: 1, CurrentA: 12})), "time to empty", 3600, 1e-12)
}

// Peukert with the 20 h rate: 100 Ah, n = 1.2, 10 A gives 8.71 h (from memory);
// 100 Ah at a reference of 1 A and n = 1.2: 5 A for 14.5 h (a note on Peukert's
// law); two rates of a battery monitor manual give n = 1.337.
func TestPeukertExamples(t *testing.T) {
	for _, c := range []struct{ ah, h, n, amps, want, within float64 }{
		{100, 20, 1.2, 10, 8.7055, 1e-4}, {100, 100, 1.2, 5, 14.5, 1e-3},
	} {
		if got := battery.PeukertHours(c.ah, c.h, c.n, c.amps); math.Abs(got/c.want-1) > c.within {
			t.Errorf("%+v: %g h", c, got)
		}
	}
	if n := battery.PeukertExponent(20, 5, 2, 28); math.Abs(n-1.337) > 5e-4 {
		t.Errorf("exponent %g, manual 1.337", n)
	}
}

func TestPeukertIsMonotone(t *testing.T) {
	before := math.Inf(1)
	for i := 0.01; i < 1000; i *= 1.1 {
		got := battery.PeukertHours(14, 10, 1.25, i)
		if !(got < before) {
			t.Fatalf("%g h at %g A after %g h", got, i, before)
		}
		before = got
	}
}

// AC 43.13-1B Table 11-7: 20 A over 88 ft of No. 12, 0.00202 Ω/ft, drops 3.555 V
// (printed rounded up, 3.60).
func TestDropAgainstTable(t *testing.T) {
	s := &library.WireSize{Label: "12 AWG", AreaMm2: 3.31, MaxOhmPerM: 0.00202 / 0.3048,
		Source: library.Source{Text: "AC 43.13-1B Table 11-9"}}
	a := must(t)(Drop(DropInput{Conductor: Conductor{Size: s}, CurrentA: 20,
		Path: Path{LengthM: 88 * 0.3048}, SystemV: 115, ConductorC: 20}))
	near(t, a, "drop", 3.5552, 1e-9)
	b := must(t)(Drop(DropInput{Conductor: Conductor{Size: s}, CurrentA: 20,
		Path: Path{LengthM: 44 * 0.3048, OneWay: true}, SystemV: 115, ConductorC: 20}))
	near(t, b, "drop", 3.5552, 1e-9)
}

// A marine note on three percent drop: bilge pump, 10 A, 21 ft of loop, 12 V:
// SAE 12 does not pass and SAE 10 is needed. (The note lets 12 AWG pass on the
// resistance of plain copper; tinned boat wire at its published maximum, which
// the program takes, needs 10 AWG, as a printed drop table says too.)
func TestWireBilgePump(t *testing.T) {
	lib := library.Default()
	types := []*library.WireType{wireType(t, "tinned marine 105 °C AWG"), wireType(t, "SAE J1128 GXL")}
	a := must(t)(Wire(WireInput{CurrentA: 10, Path: Path{LengthM: 21 * 0.3048}, SystemV: 12, DropShare: 0.03,
		ConductorC: 29, AmbientC: 30, Types: types, Library: lib, Practice: lib.Practice("marine")}))
	for name, size := range map[string]string{"SAE J1128 GXL": "10 AWG", "tinned marine 105 °C AWG": "10 AWG"} {
		if v := need(t, a, name); !strings.HasPrefix(v.Text, size) {
			t.Errorf("%s: %s, want %s", name, v.Text, size)
		}
	}
	near(t, a, "area for the drop", 6270.8*math.Pi/4*0.0254*0.0254, 2e-3)
}

func TestHeat(t *testing.T) {
	w := wireType(t, "M22759/16")
	a := must(t)(Heat(HeatInput{Type: w, Size: w.Size("14 AWG"), AmbientC: 50, Loaded: 8, Loading: 0.6,
		CurrentA: 20, AltitudeM: 1000, Library: library.Default()}))
	near(t, a, "allowed alone in still air", 35.9, 0.05)
	alone := need(t, a, "conductor at that current, alone in still air").Number
	among := need(t, a, "conductor at that current, among the loaded wires").Number
	// AC 43.13-1B para 11-68 example No. 2 allows 47 A alone for a 150 K rise, with
	// 0.985 for 1 000 m and 0.6 for the bundle 27.8 A; the rise goes about with the
	// square of the current: 150 K · (20/27.8)² = 78 K. 10 % of a chart's current
	// are 20 % of the rise.
	if rise := among - 50; !(alone < among) || math.Abs(rise/78-1) > 0.2 {
		t.Errorf("conductor at 20 A: %g °C alone, %g °C among others", alone, among)
	}
}

// TestHeatGoverns: the figure that holds stands first. 2.5 mm² of thin wall at
// 50 °C and 90 °C: 28.8 A by the heat balance; 33 CFR 183.425 gives 33.62 A x 0.816
// = 27.4 A, AC 43.13-1B 32.6 A (as the working shows).
func TestHeatGoverns(t *testing.T) {
	w, lib := wireType(t, "ISO 6722 thin wall class B"), library.Default()
	for practice, want := range map[string]struct {
		amps float64
		by   string
	}{"": {28.84, "the heat balance"}, "motorcycle": {28.84, "the heat balance: AC 43.13-1B"}, "marine": {27.45, "33 CFR 183.425"}} {
		a := must(t)(Heat(HeatInput{Type: w, Size: w.Size("2.5 mm²"), AmbientC: 50, MarginC: 10, Library: lib, Practice: lib.Practice(practice)}))
		near(t, a, "may carry", want.amps, 1e-3)
		if by := need(t, a, "which is by").Text; a.Results[0].Name != "may carry" || !strings.HasPrefix(by, want.by) {
			t.Errorf("%s: first %s, by %q, want %q", practice, a.Results[0].Name, by, want.by)
		}
	}
}

// TestWireSizes: what a shop has, or all: 10 A over a loop of 6 m at 3.5 % of 12 V
// need 0.017241 x 10 x 6 / 0.42 = 2.46 mm²: 2.5 mm² either way by its area, but 3 mm² at
// the published maximum resistance where all sizes are asked for, and 4 mm² of a shop.
func TestWireSizes(t *testing.T) {
	for all, want := range map[bool]string{true: "3 mm²", false: "4 mm²"} {
		a := must(t)(Wire(WireInput{CurrentA: 10, Path: Path{LengthM: 6}, SystemV: 12, DropShare: 0.035, ConductorC: 20,
			AmbientC: 30, AllSizes: all, Types: []*library.WireType{wireType(t, "ISO 6722 thin wall class B")}, Library: library.Default()}))
		if got := need(t, a, "ISO 6722 thin wall class B").Text; !strings.HasPrefix(got, want) {
			t.Errorf("all sizes %v: %s, want %s", all, got, want)
		}
	}
}

func TestFuse(t *testing.T) {
	ft := library.Default().FuseType("blade F")
	a := must(t)(Fuse(FuseInput{Type: ft, RatingA: 10, CurrentA: 60, AmbientC: 23}))
	near(t, a, "soonest opening", 0.03, 1e-9)
	near(t, a, "latest opening", 0.1, 1e-9)
	b := must(t)(Fuse(FuseInput{Type: ft, RatingA: 11, CurrentA: 2000, AmbientC: 23}))
	all := strings.Join(b.Warnings, "; ")
	for _, want := range []string{"not made in 11 A", "breaking capacity of 1000 A", "constant I²t"} {
		if !strings.Contains(all, want) {
			t.Errorf("warnings %q lack %q", all, want)
		}
	}
}

// Cable short-circuit sizing page: 2 500 A for 0.1 s with k = 115 needs 6.9 mm².
func TestShort(t *testing.T) {
	a := must(t)(Short(ShortInput{CurrentA: 2500, Seconds: 0.1, AreaMm2: 6.87, StartC: 70, EndC: 160}))
	near(t, a, "k", 115, 0.5/115)
	near(t, a, "smallest area", 6.9, 0.05/6.9)
	near(t, a, "temperature after the time", 160, 0.01)
	near(t, a, "time to the limit", 0.1, 0.01)
}

// Low-voltage fault-current article: 12 V over 20 mΩ is 600 A, over 10 mΩ
// 1 200 A; and the branch worked in a table of derived examples: 12.6 V, 15 mΩ,
// 5 m of 18.5 mΩ/m, 7.42 mΩ of fuse give 109.6 A.
func TestFault(t *testing.T) {
	ok := must(t)
	near(t, ok(Fault(FaultInput{SourceV: 12, SourceOhm: 0.02})), "prospective current", 600, 1e-12)
	near(t, ok(Fault(FaultInput{SourceV: 12, SourceOhm: 0.01})), "prospective current", 1200, 1e-12)
	s := &library.WireSize{Label: "1 mm²", AreaMm2: 1, MaxOhmPerM: 0.0185}
	a := ok(Fault(FaultInput{SourceV: 12.6, SourceOhm: 0.015, OtherOhm: 0.00742,
		Legs: []FaultLeg{{Conductor{Size: s}, 2.5, 20}, {Conductor{Size: s}, 2.5, 20}},
		Type: library.Default().FuseType("blade F"), RatingA: 10, AmbientC: 23}))
	near(t, a, "prospective current", 109.6, 5e-4)
	near(t, a, "latest opening", 0.1*36/(10.96*10.96), 2e-3)
}

func TestBadInputsAreSaidTogether(t *testing.T) {
	_, err := Drop(DropInput{CurrentA: -1, SystemV: math.NaN(), ConductorC: 1e4})
	if err == nil {
		t.Fatal("no error")
	}
	for _, want := range []string{"area", "current", "length", "system voltage", "conductor temperature"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q lacks %q", err, want)
		}
	}
	for name, e := range map[string]func() (*Answer, error){
		"power both": func() (*Answer, error) { return Power(PowerInput{PowerW: 1, CurrentA: 1, Volts: 12}) },
		"battery":    func() (*Answer, error) { return Battery(BatteryInput{CurrentA: 1}) },
		"heat":       func() (*Answer, error) { return Heat(HeatInput{}) },
		"fuse":       func() (*Answer, error) { return Fuse(FuseInput{}) },
		"short":      func() (*Answer, error) { return Short(ShortInput{StartC: 70, EndC: 160}) },
		"fault":      func() (*Answer, error) { return Fault(FaultInput{SourceV: 12}) },
		"wire":       func() (*Answer, error) { return Wire(WireInput{}) },
	} {
		if a, err := e(); err == nil || a != nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// Every answer has what the promise says: working, sources, caution; and its
// JSON holds no number that JSON cannot.
func TestAnswersAreComplete(t *testing.T) {
	ok := must(t)
	ft := library.Default().FuseType("blade C")
	for _, a := range []*Answer{
		ok(Fuse(FuseInput{Type: ft, RatingA: 10, CurrentA: 8, AmbientC: 23})),
		ok(Short(ShortInput{AreaMm2: 1, StartC: 70, EndC: 160})),
		ok(Power(PowerInput{PowerW: 10, Volts: 12})),
		ok(Battery(BatteryInput{CapacityAh: 12, RateH: 10, Peukert: 1.2, CurrentA: 3, KeepShare: 0.5})),
	} {
		if len(a.Steps) == 0 || len(a.Sources) == 0 || a.Caution == "" || len(a.Inputs) == 0 {
			t.Errorf("%s is not complete: %+v", a.Question, a)
		}
		if _, err := json.Marshal(a); err != nil {
			t.Errorf("%s: %v", a.Question, err)
		}
		if text := a.Text(); !strings.Contains(text, "Working") || !strings.HasSuffix(text, Caution+"\n") {
			t.Errorf("%s prints %q", a.Question, text)
		}
	}
}
