package bundle

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"fusewright/harness/formula/conductor"
	"fusewright/harness/proof/fuzztest"
	"fusewright/library"
)

// One wire alone is the one that package conductor rates: every size of the
// library, with and without what a cover leaves.
func TestLoneWireIsThatOfTheHeatBalance(t *testing.T) {
	lib := library.Default()
	for _, w := range lib.WireTypes {
		for _, s := range w.Sizes {
			for _, share := range []float64{1, 0.85} {
				m := lib.Insulation(w.Material)
				want := conductor.AllowedCurrent(conductor.AllowedInput{Type: w, Size: s, Material: m,
					AmbientC: 40, CoverFactor: share})
				wire := Wire{Insulated: conductor.InsulatedWire(s, m), LimitC: want.LimitC, CurrentA: want.HeatA}
				b, err := New([]Wire{wire}, Place{AmbientC: 40, Share: share})
				if err != nil {
					t.Fatalf("%s %s: %v", w.Name, s.Label, err)
				}
				if got := b.AllowedA(0); math.Abs(got-want.HeatA) > 1e-9*want.HeatA {
					t.Errorf("%s %s: %g A, heat balance %g A", w.Name, s.Label, got, want.HeatA)
				}
				if got := b.CommonFactor(); math.Abs(got-1) > 1e-9 {
					t.Errorf("%s %s: common factor %g at the allowed current", w.Name, s.Label, got)
				}
				balance := conductor.NewBalance(wire.Insulated, conductor.StillAir{AmbientC: 40})
				for _, part := range []float64{0.3, 1, 1.5, 2.5} {
					amps := part * want.HeatA
					c, want := b.with(0, amps).Steady().ConductorC[0], balance.ConductorC(amps/share)
					if c != want && !(math.Abs(c-want) < 1e-5) {
						t.Errorf("%s %s at %g A: %g °C, heat balance %g °C", w.Name, s.Label, amps, c, want)
					}
				}
			}
		}
	}
}

// mixed are wires of all sizes, with currents up to a share of what each may carry
// alone; a third carry nothing.
func mixed(rng *rand.Rand, n int, share float64) []Wire {
	all := make([]Wire, n)
	for i := range all {
		d := 0.5 * math.Pow(16, rng.Float64()) // 0.5 to 8 mm over the strands
		all[i] = Wire{Insulated: plastic(conductor.CopperOhmMm2PerM/(0.6*d*d), d, d*(1.1+0.4*rng.Float64()), 0.2),
			LimitC: []float64{85, 105, 125}[rng.Intn(3)], Pulsed: rng.Intn(2) == 0}
		if rng.Intn(3) > 0 {
			lone, _ := New(all[i:i+1], Place{AmbientC: 40})
			all[i].CurrentA = share * rng.Float64() * lone.AloneA(0)
		}
	}
	return all
}

// The core that is found is the hottest of all groups of wires there are.
func TestNoOtherGroupIsHotter(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 300 {
		b := ready(t, mixed(rng, 1+rng.Intn(7), 0.8), 40)
		found := b.Steady().MediumC
		for mask := 1; mask < 1<<len(b.strands); mask++ {
			var c core
			for k, s := range b.strands {
				if mask>>k&1 == 1 {
					c.add(s, 1)
				}
			}
			if b.settle(&c); c.mediumC > found+1e-6 {
				t.Fatalf("group %b of %d wires is at %g °C, found %g °C", mask, len(b.strands), c.mediumC, found)
			}
		}
	}
}

// More current in any wire never gives a cooler one, and never allows another
// more; a wire without current changes nothing.
func TestMoreCurrentIsNeverCooler(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for range 400 {
		wires := mixed(rng, 2+rng.Intn(11), 0.5)
		b := ready(t, wires, 40)
		k, other := rng.Intn(len(wires)), rng.Intn(len(wires))
		more := b.with(k, wires[k].CurrentA+20*math.Pow(rng.Float64(), 4))
		was, is := b.Steady(), more.Steady()
		for i := range wires {
			if is.ConductorC[i] < was.ConductorC[i]-1e-6 {
				t.Fatalf("wire %d falls from %g to %g °C with more current in wire %d", i, was.ConductorC[i], is.ConductorC[i], k)
			}
		}
		if other != k && more.AllowedA(other) > b.AllowedA(other)*(1+1e-6)+1e-9 {
			t.Fatalf("wire %d may carry %g, then %g A", other, b.AllowedA(other), more.AllowedA(other))
		}
		idle := mixed(rng, 1, 0.5)[0]
		idle.CurrentA = 0
		with := ready(t, append(wires[:len(wires):len(wires)], idle), 40)
		if got := with.Steady(); got.MediumC != was.MediumC || got.OuterMm != was.OuterMm ||
			with.CommonFactor() != b.CommonFactor() || with.AllowedA(other) != b.AllowedA(other) {
			t.Fatalf("a wire without current changes %+v into %+v", was, got)
		}
	}
}

// The factor falls with every loaded wire, up to 80.
func TestMoreLoadedWiresNeverAllowMore(t *testing.T) {
	before := math.Inf(1)
	for n := 1; n <= 80; n++ {
		f := factor(t, thin25, 80, n, 105, 30)
		if !(f < before) || !(f > 0.2) {
			t.Errorf("%d loaded: %g after %g", n, f, before)
		}
		before = f
	}
}

// The questions answer each other: at its allowed current a wire is at its limit,
// and at the common factor the first of them is.
func TestAllowedIsWhereTheLimitIs(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	limited := 0
	for range 300 {
		wires := mixed(rng, 1+rng.Intn(12), 0.5)
		b, i := ready(t, wires, 40), rng.Intn(len(wires))
		amps := b.AllowedA(i)
		if c := b.with(i, amps).Steady().ConductorC[i] - wires[i].LimitC; amps > 0 && math.Abs(c) > 1e-3 {
			t.Errorf("at %g A wire %d is %g K over its limit", amps, i, c)
		}
		if amps < b.AloneA(i)*0.999 {
			limited++
		}
		f := b.CommonFactor()
		if math.IsInf(f, 1) || f == 0 {
			continue
		}
		all, hottest := append([]Wire(nil), wires...), math.Inf(-1)
		for k := range all {
			all[k].CurrentA *= f
		}
		for k, c := range ready(t, all, 40).Steady().ConductorC {
			if all[k].CurrentA > 0 {
				hottest = max(hottest, c-all[k].LimitC)
			}
		}
		if math.Abs(hottest) > 1e-3 {
			t.Errorf("at the common factor %g the hottest is %g K over its limit", f, hottest)
		}
	}
	if limited < 100 {
		t.Errorf("only %d of 300 wires were limited by others", limited)
	}
}

// A cover never cools; one by resistance and one by share go the same way. IEC
// 60287-2-1 gives some 1.2 K·m/W for the air in a plastic duct round 10 mm (from
// memory); the library's conduit leaves 0.85.
func TestCovers(t *testing.T) {
	wires := alike(t, thin25, 7, 7, 15, 105, 30).wires
	last := -1.0
	for _, k := range []float64{0, 0.2, 1.2, 3} {
		b, err := New(wires, Place{AmbientC: 30, CoverKmPerW: k})
		if err != nil {
			t.Fatal(err)
		}
		if hot := b.Steady().MediumC; hot <= last {
			t.Errorf("%g K·m/W: %g °C, without so much %g °C", k, hot, last)
		} else {
			last = hot
		}
		lone, _ := New(wires[:1], b.place)
		if over := lone.with(0, lone.AloneA(0)).overC(0); math.Abs(over) > 1e-3 {
			t.Errorf("%g K·m/W: alone at %g A it is %g K over its limit", k, lone.AloneA(0), over)
		}
	}
	bare := ready(t, wires, 30)
	duct, _ := New(wires, Place{AmbientC: 30, CoverKmPerW: 1.2})
	if f := duct.CommonFactor() / bare.CommonFactor(); math.Abs(f-0.85) > 0.05 {
		t.Errorf("air in a duct leaves %.3f", f)
	}
	share, _ := New(wires, Place{AmbientC: 30, Share: 0.85})
	if f := share.CommonFactor() / bare.CommonFactor(); math.Abs(f-0.85) > 1e-6 {
		t.Errorf("a share of 0.85 leaves %g", f)
	}
}

// What has no data has no answer, and says which wire.
func TestNewRefuses(t *testing.T) {
	good := Wire{Insulated: thin25, CurrentA: 5, LimitC: 105}
	bad := func(change func(*Wire)) []Wire {
		w := good
		change(&w)
		return []Wire{good, w}
	}
	for what, c := range map[string]struct {
		wires []Wire
		place Place
	}{
		"wire 2 of the bundle: no diameters":            {bad(func(w *Wire) { w.OuterMm = 0 }), Place{}},
		"wire 2 of the bundle: no area or resistance":   {bad(func(w *Wire) { w.OhmPerM20 = 0 }), Place{}},
		"wire 2 of the bundle: no current or limit":     {bad(func(w *Wire) { w.CurrentA = math.NaN() }), Place{}},
		"wire 2 of the bundle: no thermal data":         {bad(func(w *Wire) { w.Emissivity = 9 }), Place{}},
		"an ambient of NaN °C has no meaning here":      {nil, Place{AmbientC: math.NaN()}},
		"a cover that leaves -1 of the current has no ": {nil, Place{Share: -1}},
		"a cover of -1 K·m/W has no meaning":            {nil, Place{CoverKmPerW: -1}},
	} {
		if _, err := New(c.wires, c.place); err == nil || !strings.HasPrefix(err.Error(), what) {
			t.Errorf("%v, want %q", err, what)
		}
	}
}

// A bundle without current is as warm as its place and has no common factor.
func TestNothingFlows(t *testing.T) {
	b := alike(t, thin25, 3, 0, 0, 105, 30)
	s := b.Steady()
	if s.MediumC != 30 || s.ConductorC[2] != 30 || s.Held != 0 || !math.IsInf(b.CommonFactor(), 1) {
		t.Errorf("%+v, %g", s, b.CommonFactor())
	}
	if got := b.AllowedA(0); got != b.AloneA(0) {
		t.Errorf("%g A, alone %g A", got, b.AloneA(0))
	}
}

// No input makes an answer that is no number, or none at all.
func FuzzBundle(f *testing.F) {
	f.Add(1.0, 0.0076, 2.2, 3.0, 5.0, 20.0, 105.0, 40.0, 0.9, 0.0, 30.0, 60.0, uint8(7))
	f.Add(1e-6, 1e6, 1e-3, 1e3, 1e3, 1e9, -1e4, 1082.0, 0.01, 1e3, 1e300, -1.0, uint8(40))
	f.Add(1e6, 1e-9, 1e3, 1e3, 0.0, 1e-9, 1e4, -200.0, 1.0, 0.0, 1e-300, 1e300, uint8(2))
	// A limit above the melting point, which nothing comes to.
	f.Add(1.0, 0.0076, 0.44, 1.0, 95.0, 19.95, 1100.0, 83.0, 0.9, 0.0, -78.0, 2716.0, uint8(3))
	f.Fuzz(func(t *testing.T, area, ohm, inner, outer, resistivity, amps, limit, ambient, share, cover, on, every float64, n uint8) {
		wires := make([]Wire, n%12)
		for i := range wires {
			grow := 1 + float64(i)/10
			wires[i] = Wire{Insulated: conductor.Insulated{AreaMm2: area, OhmPerM20: ohm * grow, ConductorMm: inner,
				OuterMm: outer * grow, ResistivityKmPerW: resistivity, Emissivity: 0.9, InsulationJPerMm3K: 2e-3},
				CurrentA: amps * grow * float64(i%3), LimitC: limit, Pulsed: i%2 == 0}
		}
		b, err := New(wires, Place{ambient, share, cover})
		if err != nil || len(wires) == 0 {
			return
		}
		fuzztest.Within(t, func() {
			s := b.Steady()
			all := append(s.ConductorC, s.MediumC, s.SurfaceC, s.LossWPerM, b.CommonFactor(), b.HotAfterS(0))
			for i := range wires {
				all = append(all, b.AllowedA(i))
			}
			c := b.Course(len(wires)-1, Cycle{on, every})
			for _, p := range []Peak{c.First, c.Settled} {
				all = append(all, p.ConductorC, p.InsulationC, p.BundleC)
			}
			for i, x := range all {
				if math.IsNaN(x) {
					t.Fatalf("answer %d is no number: %v", i, all)
				}
			}
		})
	})
}

// A bundle of 40 mixed wires, and of 10 and 1.
func BenchmarkBundle(b *testing.B) {
	for _, n := range []int{1, 10, 40} {
		wires := mixed(rand.New(rand.NewSource(4)), n, 0.3)
		wires[0].CurrentA, wires[0].Pulsed = 10, true
		x := ready(b, wires, 40)
		name := map[int]string{1: "1 wire", 10: "10 wires", 40: "40 wires"}[n]
		for what, ask := range map[string]func(){
			"new":     func() { ready(b, wires, 40) },
			"steady":  func() { x.Steady() },
			"allowed": func() { x.AllowedA(n / 2) },
			"common":  func() { x.CommonFactor() },
			"hot":     func() { x.HotAfterS(0) },
			"course":  func() { x.Course(0, Cycle{OnS: 45, EveryS: 900}) },
		} {
			b.Run(name+"/"+what, func(b *testing.B) {
				for b.Loop() {
					ask()
				}
			})
		}
	}
}
