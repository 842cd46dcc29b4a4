package conductor

import (
	"math"
	"testing"

	"fusewright/library"
)

// Each constant of the formulas, by a case worked by hand from the published
// formula or read from its table.
func TestFormulasByHand(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		// 3.45e-3 · 254.5 / 17.241e-6 = 50 926; · ln(394.5/304.5) = 13 187.
		{"k of copper, 70 to 160 °C (IEC 60364-4-43 prints 115)", KFactor(70, 160), 114.836},
		// log10(1043/274 + 1) = 0.68184; 1 973.53 cmil · √(0.68184/165).
		{"Onderdonk, 1 mm² for 5 s from 40 °C", OnderdonkA(1, 5, 40), 126.865},
		// 1 973.53² · 0.0297 · log10(484/324).
		{"ICEA, 1 mm² from 90 to 250 °C", ICEAI2t(1, 90, 250), 20162.3},
		{"Preece, 1 mm (a table of fusing currents prints 80 A)", PreeceA(1), 80.0238},
		{"Preece, 1 in", PreeceA(25.4), 10244},
		// Standard atmosphere, over 1.225 kg/m³: 0.36391 and 0.73612 kg/m³.
		{"air at 5 000 m", AirDensityRatio(5000), 0.60091},
		{"air at 11 000 m", AirDensityRatio(11000), 0.29707},
		{"air at 15 000 m, 0.29707 · exp(−4000/6342)", AirDensityRatio(15000), 0.158106},
		// [1 + (0.559/0.7)^(9/16)]^(8/27) = 1.2056.
		{"Churchill and Chu, Ra 1000", ChurchillChu(1e3, 0.7), 2.60773},
		{"Churchill and Chu without buoyancy, 0.60²", ChurchillChu(0, 0.7), 0.36},
		{"Morgan, 0.675 · 0.001^0.058", Morgan(1e-3), 0.452172},
		{"Morgan, at its second piece", Morgan(1), 1.02},
		{"Morgan, 0.850 · 1000^0.188", Morgan(1e3), 3.11472},
		{"Morgan, 0.480 · 100000^0.250", Morgan(1e5), 8.53574},
		{"Morgan, 0.125 · 1e8^0.333", Morgan(1e8), 57.6647},
	} {
		near(t, c.name, c.got, c.want, 2e-5)
	}
}

// A black-sleeved wire of 2 mm at 90 °C in still air of 30 °C, by hand: film
// 333.15 K, k = 0.028753 W/(m·K), ν = 19.225e-6 and a = 27.406e-6 m²/s,
// Ra = 26.817, Nu = 1.33488, h = 19.191 W/(m²·K): 7.2348 W/m by convection and
// 2.8686 W/m by radiation.
func TestHeatGivenOffByHand(t *testing.T) {
	b := NewBalance(Insulated{AreaMm2: 1, OhmPerM20: 0.0185, ConductorMm: 1.3, OuterMm: 2, ResistivityKmPerW: 6,
		Emissivity: 0.9}, StillAir{AmbientC: 30})
	near(t, "W/m", b.SurfaceLossWPerM(90), 10.1034, 1e-5)
	// 6/(2π) · ln(2/1.3) = 0.41137 K·m/W lifts the copper by 4.156 K over the surface;
	// √(10.1034 / (0.0185 · (1 + 0.00393 · 74.156))) = 20.5642 A.
	conductorC, amps := b.Steady(90)
	near(t, "conductor", conductorC, 94.1564, 1e-5)
	near(t, "current", amps, 20.5642, 2e-5)
}

func TestMeltingCopperIsNoSteadyState(t *testing.T) {
	b := NewBalance(Insulated{AreaMm2: 1, OhmPerM20: 0.0185, ConductorMm: 1.3, OuterMm: 2, ResistivityKmPerW: 6,
		Emissivity: 0.9}, StillAir{AmbientC: 30})
	most := b.CurrentA(1083)
	if !math.IsInf(b.ConductorC(most*1.001), 1) || math.IsInf(b.ConductorC(most*0.999), 1) {
		t.Errorf("%g A is not the limit: %g and %g °C around it", most, b.ConductorC(most*0.999), b.ConductorC(most*1.001))
	}
	near(t, "conductor beyond melting", b.CurrentA(1300), most, 1e-9)
}

func TestFallbacksOfInsulation(t *testing.T) {
	w := InsulatedWire(&library.WireSize{AreaMm2: 1, MaxOhmPerM: 0.0185, ConductorMm: 1.3, OuterMm: 1.3}, nil)
	if w.ResistivityKmPerW != 6 || w.Emissivity != 0.9 || w.InsulationJPerMm3K != 1.7e-3 {
		t.Errorf("%+v", w)
	}
	if NewBalance(w, StillAir{AmbientC: 30}).CurrentA(90) <= 0 {
		t.Error("a bare wire, as thick as its conductor, carries nothing")
	}
	w.OuterMm = 1.29
	if NewBalance(w, StillAir{AmbientC: 30}).CurrentA(90) != 0 {
		t.Error("a wire thinner than its conductor carries something")
	}
}

// Up to 1 s the copper alone heats, from 10 s on the whole wire; between them
// the time lies between the two.
func TestWhoTakesPartInHeating(t *testing.T) {
	w := library.Default().WireType("ISO 6722 thin wall class B")
	s := w.Sizes[len(w.Sizes)/2]
	h := newHeating(NewBalance(InsulatedWire(s, nil), StillAir{AmbientC: 25}), 25, 150, Outlet{Share: 1})
	for _, c := range []struct {
		name  string
		copS  float64
		check func(got, whole float64) bool
	}{
		{"just under 1 s", 0.999, func(got, _ float64) bool { return math.Abs(got-0.999) < 1e-9 }},
		{"just over 1 s", 1.05, func(got, whole float64) bool { return got > 1.05*1.001 && got < whole }},
		{"just under 10 s", 9.5, func(got, whole float64) bool { return got > 9.5 && got < whole*(1-1e-6) }},
		{"just over 10 s", 10.3, func(got, whole float64) bool { return got == whole }},
	} {
		amps := math.Sqrt(h.adiabatic / c.copS)
		if got, whole := h.seconds(amps), h.wholeWire(amps); !c.check(got, whole) {
			t.Errorf("%s by copper alone: %g s, the whole wire %g s", c.name, got, whole)
		}
	}
}

// 1 mm² of copper in a jacket of 1.3 to 2.0 mm: 1000 · (3.45e-3 · 1 + 1.7e-3 ·
// π/4 · (4 − 1.69)) = 6.5343 J/(m·K); 225.67² · ln(384.5/259.5) A²s of copper at
// 17.241 mΩ/m, which at 18.5 mΩ/m is 0.93195 of that.
func TestHeatCapacityByHand(t *testing.T) {
	size := &library.WireSize{AreaMm2: 1, MaxOhmPerM: 0.0185, ConductorMm: 1.3, OuterMm: 2}
	h := newHeating(NewBalance(InsulatedWire(size, nil), StillAir{AmbientC: 25}), 25, 150, Outlet{Share: 1})
	near(t, "whole wire", h.whole, 6.53425, 1e-5)
	near(t, "copper alone", h.adiabatic, 50926.0*math.Log(384.5/259.5)*0.931946, 1e-4)
}

// The overload limit may be passed for 5 s, the class for 6 h.
func TestHowLongLimitsMayBePassed(t *testing.T) {
	w := library.Default().WireType("ISO 6722 thin wall class B")
	size := w.Sizes[len(w.Sizes)/2]
	d := NewDamage(DamageInput{Type: &library.WireType{ClassC: 100, OverloadC: 125, ShortC: 250}, Size: size,
		AmbientC: 30, StartC: 90, Outlet: Outlet{Share: 1}})
	var five, sixHours bool
	for amps := 1.0; amps < 1e4; amps *= 1.01 {
		if d.ToOverloadS(amps) < 4.5 && d.ToShortS(amps) > 5.6 {
			five = true
			if got := d.FaultTimeS(amps); got != 5 {
				t.Errorf("%g A may flow for %g s over the overload limit, want 5 s", amps, got)
			}
		}
		if d.ToClassS(amps) < 20000 && d.FaultTimeS(amps) > 24000 {
			sixHours = true
			if got := d.TimeS(amps); got != 21600 {
				t.Errorf("%g A may flow for %g s over the class, want 21 600 s", amps, got)
			}
		}
	}
	if !five || !sixHours {
		t.Errorf("no current tells: %t, %t", five, sixHours)
	}
}

func TestDamageStartsAndLimits(t *testing.T) {
	size := &library.WireSize{AreaMm2: 1, MaxOhmPerM: 0.0185, ConductorMm: 1.3, OuterMm: 2}
	kind := &library.WireType{ClassC: 100, OverloadC: 125, ShortC: 160}
	of := func(k *library.WireType, startC, share float64) *Damage {
		return NewDamage(DamageInput{Type: k, Size: size, AmbientC: 60, StartC: startC, Outlet: Outlet{Share: share}})
	}
	if a, b := of(kind, 20, 1).ToShortS(100), of(kind, 60, 1).ToShortS(100); a != b {
		t.Errorf("a start below the ambient: %g s, at the ambient %g s", a, b)
	}
	if a, b := of(kind, 90, 1).ToShortS(100), of(kind, 60, 1).ToShortS(100); !(a < b) {
		t.Errorf("a start above the ambient: %g s, at the ambient %g s", a, b)
	}
	// A share of 0.5 of the current leaves a quarter of the loss.
	near(t, "loss kept", of(kind, 60, 0.5).curves[0].knots[16].loss, of(kind, 60, 1).curves[0].knots[16].loss/4, 1e-12)
	low := of(&library.WireType{ClassC: 105, OverloadC: 90, ShortC: 160}, 60, 1)
	if low.OverloadC != 105 {
		t.Errorf("an overload limit below the class: %g °C, want 105", low.OverloadC)
	}
}

// The largest drop allowed is allowed: 1 A over 1 m of 10 mΩ/m drops 10 mV.
func TestSizeForDropAtTheLimit(t *testing.T) {
	thin, thick := &library.WireSize{Label: "thin", MaxOhmPerM: 0.010}, &library.WireSize{Label: "thick", MaxOhmPerM: 0.005}
	sizes := []*library.WireSize{thin, thick}
	for _, c := range []struct {
		name  string
		dropV float64
		want  *library.WireSize
	}{
		{"above the thin one's drop", 0.0101, thin}, {"at it", 0.010, thin}, {"below it", 0.0099, thick},
		{"below the thick one's", 0.0049, nil},
	} {
		if got := SizeForDrop(sizes, 1, Loop{LengthM: 1, ConductorC: 20}, c.dropV); got != c.want {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// flatTable allows 10 A at 2 mm² and 20 A at 4 mm², for classes of 60 and 90 °C.
func flatTable() *library.CurrentTable {
	return &library.CurrentTable{Name: "flat", Kind: library.ByClass, AmbientC: 30, Columns: []float64{60, 90},
		Rows: []library.CurrentRow{{Label: "2 mm²", AreaMm2: 2, Amps: []float64{10, 15}},
			{Label: "4 mm²", AreaMm2: 4, Amps: []float64{20, 30}}},
		Bundle: []library.BundleShare{{From: 4, Shares: []float64{0.7}}, {From: 7, Shares: []float64{0.6}}}}
}

// Areas within 2 % are the same size; others lie between rows, or outside.
func TestTableRows(t *testing.T) {
	for _, c := range []struct {
		name    string
		areaMm2 float64
		col     int
		want    float64
	}{
		{"the row", 2, 0, 10}, {"1.9 % above", 2.038, 0, 10}, {"1.9 % below", 1.962, 0, 10},
		{"2.1 % above: 10 · 1.021", 2.042, 0, 10.21}, {"2.1 % below the first", 1.958, 0, 0},
		{"between", 3, 1, 22.5}, {"1.9 % above the last", 4.076, 1, 30}, {"2.1 % above the last", 4.084, 1, 0},
	} {
		got, _, ok := rowAmps(flatTable(), c.areaMm2, c.col)
		near(t, c.name, got.Value(), c.want, 1e-9)
		if ok != (c.want > 0) {
			t.Errorf("%s: found %t", c.name, ok)
		}
	}
}

func TestTableColumnsAndFactors(t *testing.T) {
	for _, c := range []struct {
		name             string
		classC, ambientC float64
		want, share      float64
	}{
		{"class of the second column", 90, 30, 15, 1}, {"just below it", 89.9, 30, 10, 1},
		{"class of the first", 60, 30, 10, 1}, {"a cool place gives no bonus", 60, 10, 10, 1},
		{"ambient at the class", 60, 60, 10, 0}, {"ambient above the class", 60, 61, 10, 0},
		{"half way to 60 °C, √(1/2)", 60, 45, 10, math.Sqrt(0.5)},
	} {
		got := fromTable(flatTable(), 2, c.classC, c.ambientC)
		if got.read.Value() != c.want || math.Abs(got.factor-c.share) > 1e-12 {
			t.Errorf("%s: %g A times %g, want %g times %g", c.name, got.read.Value(), got.factor, c.want, c.share)
		}
	}
	for loaded, want := range map[int]float64{0: 1, 3: 1, 4: 0.7, 6: 0.7, 7: 0.6, 40: 0.6} {
		if got := BundleFactor(flatTable(), loaded, 1); got != want {
			t.Errorf("%d loaded: %g, want %g", loaded, got, want)
		}
	}
	hot := flatTable()
	hot.HotC, hot.HotShares = 50, []float64{0.5, 0.85}
	// √((90−50)/(90−30)) = 0.816 is less than 0.85; √((60−50)/(60−30)) = 0.577 more than 0.5.
	for col, want := range []float64{0.5, math.Sqrt(40.0 / 60)} {
		near(t, "hot place", ambientFactor(hot, col, 50), want, 1e-12)
	}
}

// The smaller of heat and table governs; margin and cover count once.
func TestWhatGoverns(t *testing.T) {
	size := &library.WireSize{Label: "2 mm²", AreaMm2: 2, MaxOhmPerM: 0.00942, ConductorMm: 1.9, OuterMm: 2.7}
	in := AllowedInput{Type: &library.WireType{Name: "w", ClassC: 90}, Size: size, AmbientC: 30}
	heat := AllowedCurrent(in)
	if heat.Governs != GovernsHeat || len(heat.Missing) != 1 { // the material
		t.Errorf("%+v", heat)
	}
	in.Table = flatTable()
	if a := AllowedCurrent(in); a.Governs != GovernsTable || a.AllowedA != 15 || a.HeatA != heat.HeatA {
		t.Errorf("15 A by the table, %g A by heat: %s, %g A", heat.HeatA, a.Governs, a.AllowedA)
	}
	in.Table.Rows[0].Amps[1] = 500
	if a := AllowedCurrent(in); a.Governs != GovernsHeat || a.AllowedA != heat.HeatA {
		t.Errorf("500 A by the table: %s, %g A", a.Governs, a.AllowedA)
	}
	in.MarginC = 10
	if a := AllowedCurrent(in); a.LimitC != 80 {
		t.Errorf("class 90 °C less 10 K: %g °C", a.LimitC)
	}
	in.Table, in.Loaded, in.CoverFactor = nil, 1, 1.5
	if a := AllowedCurrent(in); a.CoverShare != 1 || len(a.Missing) != 1 {
		t.Errorf("one wire in a cover that gives a bonus: share %g, missing %q", a.CoverShare, a.Missing)
	}
	in.Loaded, in.CoverFactor = 2, 0.9
	if a := AllowedCurrent(in); a.CoverShare != 0.9 || len(a.Missing) != 2 {
		t.Errorf("two wires without factors: share %g, missing %q", a.CoverShare, a.Missing)
	}
}

// A wire alone of 40 °C + 1 K/A² per resistance. Beside wires loaded as itself that leave
// it half, its current counts twofold. Beside others that make its place 30 K hotter, its
// resistance at 40 + 30 + x is that of 40 + x by (1 + 0.00393·(50 + x))/(1 + 0.00393·(20 + x)):
// 5 A make x = 27.36 K, at an own share of 0.5 2.5 A as much; without current it is at 70 °C.
func TestBesideOthersByHand(t *testing.T) {
	alone := func(amps float64) float64 { return 40 + amps*amps }
	for _, c := range []struct {
		b     Beside
		amps  float64
		wantC float64
	}{{Alike(1), 5, 65}, {Alike(0.5), 2, 56}, {Alike(0.5), -5, 140}, {Beside{RiseK: 30, Own: 1}, 0, 70},
		{Beside{RiseK: 30, Own: 1}, 5, 97.485}, {Beside{RiseK: 30, Own: 4}, 10, 140}, {Beside{Share: 0.3, RiseK: 30, Own: 0.5}, -2.5, 97.485}} {
		if got := c.b.ConductorC(40, c.amps, alone); math.Abs(got-c.wantC) > 2e-3 {
			t.Errorf("%+v: %g °C", c, got)
		}
	}
}
