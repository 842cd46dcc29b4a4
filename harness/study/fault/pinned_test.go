package fault

import (
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
)

// seen is a state in which one part has a voltage.
type seen float64

func (s seen) Volts(*circuit.Branch) float64 { return float64(s) }
func (s seen) Amps(*circuit.Branch) float64  { return 0 }
func (s seen) Closed(*circuit.Branch) bool   { return false }

// A load of 12 V on a source of at most 14.4 V, at and around each threshold.
func TestEffectsAtTheirEdges(t *testing.T) {
	load := &circuit.Branch{Load: &circuit.LoadSpec{RatedV: 12, Load: &design.Load{}}}
	load.Part = &circuit.Part{Source: load.Load.Load}
	c := &circuit.Circuit{}
	for _, k := range []struct {
		name     string
		was, now seen
		want     Effect
	}{
		{"up to what the source gives", 14, 14.4, ""},
		{"over it, by its own climb of 40 mV", 14.41, 14.45, ""},
		{"over it by 52 mV", 14.4, 14.452, Excessive},
		{"idle, a tenth of its voltage", 0.29, 1.19, ""},
		{"idle, more than a tenth", 0.29, 1.21, Woken},
		{"idle, the wrong way round", -0.29, -1.21, Woken},
		{"on already at 0.31 V", 0.31, 1.21, ""},
		{"1 V the wrong way round", 5, -0.99, Dead},
		{"more than 1 V the wrong way round", 5, -1.01, Backward},
		{"the wrong way round before, by less than 1 V", -0.5, -1.4, Dead},
		{"the wrong way round before, by more", -0.5, -1.6, Backward},
		{"4.9 % lost", 10, 9.51, ""},
		{"5.1 % lost", 10, 9.49, Weakened},
		{"30 % of 12 V left", 10, 3.61, Weakened},
		{"less left", 10, 3.59, Dead},
	} {
		if got := effect(c, load, k.was, k.now, 14.4); got != k.want {
			t.Errorf("%s, %g to %g V: %q, want %q", k.name, float64(k.was), float64(k.now), got, k.want)
		}
	}
}

func TestMarginsAtTheirEdges(t *testing.T) {
	for _, k := range []struct {
		flows, stands float64
		survives      bool
		margin        float64
	}{{1, 1.01, true, 1.01}, {1, 1, false, 1}, {1.01, 1, false, 1 / 1.01}, {1, math.Inf(1), true, math.Inf(1)},
		{math.Inf(1), 1, false, 0}, {math.Inf(1), math.Inf(1), true, math.Inf(1)}} {
		h := Heat{Seconds: k.flows, DamageS: k.stands}
		if h.Survives() != k.survives || h.Margin() != k.margin {
			t.Errorf("%g s against %g s: survives %t, margin %g", k.flows, k.stands, h.Survives(), h.Margin())
		}
	}
	for _, k := range []struct {
		high, bears float64
		over        bool
	}{{18, 18.1, false}, {18, 18, false}, {18.1, 18, true}, {18, 0, false}, {math.NaN(), 16, false}} {
		e := Exposure{HighV: k.high, BearsV: k.bears}
		if e.Over() != k.over {
			t.Errorf("%g V on %g V: %t", k.high, k.bears, e.Over())
		}
	}
}

const one = `fusewright: 1
title: one
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 12 mΩ, at: tray}
places: {tray: {ambient: 30 °C}}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  main: {type: blade C, rating: 10 A, at: tray, fed by: battery, wire: {length: 1 m}}
`

func studied(t *testing.T, src string) *Study {
	t.Helper()
	c := buildtest.Circuit(t, src)
	return Compute(c)
}

// The short-circuit limit holds for currents of up to 5 s, the overload limit
// for longer ones.
func TestWhichLimitHolds(t *testing.T) {
	s := studied(t, one)
	w := s.Circuit.Wires[0]
	d := s.Wires.Damage(w)
	if d.ShortC <= d.OverloadC {
		t.Fatalf("short-circuit limit %g °C, overload limit %g °C", d.ShortC, d.OverloadC)
	}
	for seconds, want := range map[float64]float64{0.1: d.ShortC, 5: d.ShortC, 5.01: d.OverloadC, math.Inf(1): d.OverloadC} {
		if got := s.Wires.Heat(w, 50, seconds).LimitC; got != want {
			t.Errorf("50 A for %g s: limit %g °C, want %g °C", seconds, got, want)
		}
	}
}

// The strong source is a full battery, the weak one a fifth full: 12.8 V and
// 11.8 V of the AGM table, with 1.8 times the resistance, twice as much empty.
func TestSourcesByHand(t *testing.T) {
	c := studied(t, one).Circuit
	chem := c.Design.Battery.Chemistry
	src := sources(c)
	for _, k := range []struct {
		name      string
		got, want float64
	}{
		{"strong, V", src[Strong].emfV, chem.OpenCircuitV(1)}, {"strong, Ω", src[Strong].ohm, 0.012},
		{"weak, V", src[Weak].emfV, chem.OpenCircuitV(0.2)}, {"weak, Ω", src[Weak].ohm, 0.012 * 1.8},
		{"copper of no known type", hottest(&circuit.Wire{AmbientC: 10}), 20},
		{"copper of no known type in a hot place", hottest(&circuit.Wire{AmbientC: 60}), 60},
		{"copper of a type", hottest(c.Wires[0]), c.Wires[0].Spec.Type.ClassC},
		{"across the posts", closed(c, false)[0].Ohm, 5000},
	} {
		if math.Abs(k.got-k.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", k.name, k.got, k.want)
		}
	}
	if !strings.Contains(src[Strong].words, "wires at 20 °C") || !strings.Contains(src[Weak].words, "20 %") {
		t.Errorf("%q and %q", src[Strong].words, src[Weak].words)
	}
}

// A point with less than 50 mV counts as not fed.
func TestWhatIsFed(t *testing.T) {
	c := studied(t, one).Circuit
	p := point{draws: []solve.Draw{{Node: c.Wires[0].To.Node, Amps: 1}}}
	for volts, fed := range map[float64]bool{0.0495: false, 0.051: true, 12: true} {
		n := newLoom(solve.Prepare(c), c, source{emfV: volts, ohm: 0.001}, Strong, false).nets[0]
		if _, ok := n.short(p, 0); ok != fed {
			t.Errorf("%g V: fed %t", volts, ok)
		}
	}
}

// A branch with less than a fiftieth of a short's current does not carry it.
func TestWhatCarriesAShort(t *testing.T) {
	c := studied(t, one).Circuit
	b := c.Wires[0].Branch
	p := point{draws: []solve.Draw{{Node: c.Wires[0].To.Node, Amps: 1}}}
	n := newLoom(solve.Prepare(c), c, source{emfV: 12, ohm: 0.001}, Strong, false).nets[0]
	seen, ok := n.short(p, 0)
	if !ok {
		t.Fatal("no short")
	}
	whole := n.ohm[b.Index]
	for share, carries := range map[float64]bool{0.019: false, 0.021: true, 1: true} {
		n.ohm[b.Index] = whole / share // as if the rest of the current came another way
		w := &walk{flow: &flow{net: n, point: p, amps: seen.CurrentA()}}
		if got := w.carries(b); got != carries {
			t.Errorf("with %g of the current: carries %t", share, got)
		}
	}
}
