package sizing

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
)

// open is a harness with everything left open, on an invented machine.
const open = `fusewright: 1
title: "open"
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 14 Ah, rate: 10 h, resistance: 9 mΩ, at: battery tray}
charging: {regulated: 14.2 V, output: {1000 rpm: 12 A, 2500 rpm: 27 A, 7000 rpm: 34 A}, idle: 1300 rpm, cruise: 4000 rpm}
places:
  battery tray: {ambient: 45 °C}
  under seat: {ambient: 40 °C}
  headstock: {ambient: 50 °C}
  handlebar: {ambient: 40 °C, wet: yes, moves: yes}
runs:
  - {from: battery tray, to: under seat, length: 240 mm, cover: auto}
  - {from: under seat, to: headstock, length: 780 mm, near: {what: cylinder head, ambient: 75 °C}, cover: auto}
  - {from: headstock, to: handlebar, length: 340 mm, flexes: yes, cover: auto}
wire: {insulation: ISO 6722 thin wall class C, slack: 60 mm}
taps:
  tail lamp feed: {at: under seat, hot: key, fuse: 10 A, spare: 500 mA, supervised: no}
grounds:
  rear stud: {kind: frame stud, at: under seat, limit: 30 A, frame resistance: 2 mΩ}
  front stud: {kind: frame stud, at: headstock, limit: 30 A, frame resistance: 3 mΩ}
fuses:
  main: {at: battery tray, fed by: battery, wire: {length: 150 mm}}
  pilot: {at: under seat, fed by: tail lamp feed, wire: {length: 120 mm}}
relays:
  keyed: {at: under seat, fed by: main, coil: {fed by: pilot, returns to: rear stud, suppressed by: resistor}}
blocks:
  rear: {at: under seat, fed by: keyed, ways: {1: auto, 2: auto, 3: {fuse: auto}, 4: {}}}
loads:
  left lamp: {type: halogen lamp 35 W, at: headstock, fed by: rear 1, returns to: front stud, critical: yes}
  heated grips: {type: heated grips, at: handlebar, fed by: rear 2, returns to: front stud, wire: {ends: {to: auto}}}
  navigation: {type: navigation unit, at: handlebar, fed by: rear 3, returns to: front stud}
  charger: {type: USB charger, at: handlebar, fed by: rear 4, returns to: front stud}
`

// printed is every choice in words.
func printed(p *Plan) string {
	var b strings.Builder
	for _, c := range p.Choices {
		fmt.Fprintf(&b, "%s|%s|%s|%s|%s|%s\n", c.Kind, c.Part, c.Value, c.Decided, c.RunnerUp, c.Lost)
	}
	return b.String()
}

// explained is what is chosen for a design, with the reasons.
func explained(d *design.Design) (*Plan, error) {
	p, err := Complete(d)
	if err != nil {
		return nil, err
	}
	return p, p.Explain()
}

// openExplained is the plan of the design with everything open, which several tests look at.
var openExplained = sync.OnceValues(func() (*Plan, error) {
	d, err := design.Read("test.yaml", []byte(open), nil)
	if err != nil {
		return nil, err
	}
	return explained(d)
})

// TestEverythingOpen: all is chosen, nothing about sizes is found afterwards,
// and every choice has its reason.
func TestEverythingOpen(t *testing.T) {
	p, err := openExplained()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range p.Remaining {
		t.Errorf("%s: %s", f.Rule, f.What)
	}
	kinds := map[Kind]int{}
	for _, c := range p.Choices {
		kinds[c.Kind]++
		if c.Decided == "" || c.Value == "" || len(c.Path) < 2 || c.RunnerUp != "" && c.Lost == "" {
			t.Errorf("incomplete: %+v", c)
		}
	}
	want := map[Kind]int{RunCover: 3, Fuse: 6, RelayForm: 1, BlockType: 1, WireSize: 14, CrimpPart: 1}
	for k, n := range want {
		if kinds[k] != n {
			t.Errorf("%d choices of kind %s, want %d", kinds[k], k, n)
		}
	}
}

// TestDeterministic: the same design gives the same choices and reasons, and
// choosing again changes nothing.
func TestDeterministic(t *testing.T) {
	p, err := openExplained()
	if err != nil {
		t.Fatal(err)
	}
	first := printed(p)
	d := read(t, open)
	for range 2 {
		p, err := explained(d)
		if err != nil {
			t.Fatal(err)
		}
		if got := printed(p); got != first {
			t.Fatalf("first\n%s\nthen\n%s", first, got)
		}
	}
}

// TestNothingOpen: a design that gives everything costs nothing.
func TestNothingOpen(t *testing.T) {
	d := read(t, string(synth.YAML(40, 1)))
	if p, err := Complete(d); p != nil || err != nil {
		t.Fatalf("plan %v, error %v", p, err)
	}
}

// TestSizesOfTheDefaults: a size that the wire section gives is no open value,
// and `auto` of a wire opens it.
func TestSizesOfTheDefaults(t *testing.T) {
	base := strings.Replace(open, "slack: 60 mm}", "slack: 60 mm, size: 2.5 mm²}", 1)
	wires := func(src string) (n int) {
		for _, s := range collect(read(t, src)) {
			if s.kind == WireSize {
				n++
			}
		}
		return n
	}
	if n := wires(base); n != 0 {
		t.Errorf("%d open wires under a default size", n)
	}
	if n := wires(strings.Replace(base, "wire: {length: 150 mm}", "wire: {length: 150 mm, size: auto}", 1)); n != 1 {
		t.Errorf("%d open wires, want the one with size: auto", n)
	}
}

// TestMoreLoadNeverThinner: on one circuit, whose wires share one open size
// each, a stronger load never gets a thinner wire, and the whole never becomes
// cheaper.
func TestMoreLoadNeverThinner(t *testing.T) {
	for seed := range uint64(12) {
		r := rand.New(rand.NewPCG(seed, 3))
		lengthM, behaves := 0.5+r.Float64()*5, []string{"resistor", "constant power", "motor"}[r.IntN(3)]
		critical := []string{"yes", "no"}[r.IntN(2)]
		lastMm2, lastG := 0.0, 0.0
		for watts := 10; watts <= 130; watts += 15 {
			src := fmt.Sprintf(`fusewright: 1
title: one circuit
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 8 mΩ, at: tray}
charging: {regulated: 14.2 V, output: {1300 rpm: 30 A, 4000 rpm: 42 A}, idle: 1300 rpm, cruise: 4000 rpm}
places: {tray: {ambient: 40 °C}, bar: {ambient: 35 °C}}
runs: [{from: tray, to: bar, length: %.0f mm}]
wire: {insulation: ISO 6722 thin wall class B, size: 10 mm²}
fuses: {f: {type: blade C, rating: 15 A, at: tray, fed by: battery, wire: {length: 100 mm}}}
loads: {l: {power: %d W, behaves: %s, critical: %s, at: bar, fed by: f, wire: {size: auto}, returns to: battery negative}}
`, lengthM*1000, watts, behaves, critical)
			p, err := Complete(read(t, src))
			if err != nil {
				t.Fatal(err)
			}
			if len(p.Remaining) > 0 {
				break // no wire does any more
			}
			mm2 := p.Design.Loads[0].FedBy[0].Wire.Size.AreaMm2
			if g := p.Cost.TotalG(); g < lastG-1e-9 {
				t.Errorf("seed %d: %d W costs %.2f, less than %.2f before\n%s", seed, watts, g, lastG, src)
			} else {
				lastG = g
			}
			// The fuse is held: a larger rating has less resistance, so that a wire
			// governed by drop may shrink one step where the rating steps up.
			if mm2 < lastMm2 {
				t.Errorf("seed %d: %d W gets %g mm², less than %g mm² before\n%s", seed, watts, mm2, lastMm2, src)
			}
			lastMm2 = mm2
		}
	}
}

// TestInfeasible: what cannot be met is said with tried ways out, and the
// design is left as it was chosen.
func TestInfeasible(t *testing.T) {
	src := strings.Replace(open, "length: 780 mm", "length: 24 m", 1)
	d := read(t, src)
	p, err := Complete(d)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Remaining) == 0 {
		t.Fatal("a lamp at 24 m is fed within 3 %")
	}
	before := labels(p.s, p.s.best)
	if err := p.Explain(); err != nil {
		t.Fatal(err)
	}
	if len(p.WaysOut) == 0 {
		t.Fatalf("no way out of %s", p.Remaining[0].What)
	}
	for _, want := range []string{"shorten the runs", "an LED lamp", "two wires in parallel"} {
		// At most advice is left: thick wires let a short draw more than a blade fuse surely breaks.
		if !slices.ContainsFunc(p.WaysOut, func(o *WayOut) bool {
			return strings.HasPrefix(o.What, want) && o.score[0]+o.score[1] == 0
		}) {
			t.Errorf("no way out says %s", want)
		}
	}
	for i, o := range p.WaysOut {
		if i > 0 && o.asked == p.WaysOut[i-1].asked && o.Left == p.WaysOut[i-1].Left && o.ExtraG < p.WaysOut[i-1].ExtraG {
			t.Errorf("%s is cheaper than %s", o.What, p.WaysOut[i-1].What)
		}
	}
	if d.Loads[0].Behaves != design.FilamentLamp || d.Runs[1].LengthM.Value != 24 {
		t.Error("a trial was not undone")
	}
	if after := labels(p.s, p.s.best); fmt.Sprint(before) != fmt.Sprint(after) {
		t.Errorf("chosen %v, then %v", before, after)
	}
}

// opened is a synthetic harness with every size, rating and form left open.
func opened(tb testing.TB, wires int) *design.Design {
	tb.Helper()
	return openedSeed(tb, wires, 1)
}

func openedSeed(tb testing.TB, wires int, seed int64) *design.Design {
	tb.Helper()
	d := buildtest.Design(tb, synth.YAML(wires, seed))
	reopen(d)
	return d
}

// reopen leaves all sizes, ratings, forms, types and plugs of a design to be
// chosen, as if it gave none; fuse types stay.
func reopen(d *design.Design) {
	for _, l := range leads(d) {
		for i := range *l.feeds {
			(*l.feeds)[i].Wire.SizeAuto = true
		}
	}
	var u undo
	freeFuses(&u, d, false)
	for _, x := range d.Relays {
		x.FormAuto = true
	}
	for _, x := range d.Blocks {
		x.TypeAuto = x.Type != nil
	}
	for _, x := range d.Loads {
		x.PlugAuto = x.Plug != nil
	}
	for _, x := range d.Switches {
		x.PlugAuto = x.Plug != nil
	}
}

// BenchmarkComplete sizes a harness in which everything is open.
func BenchmarkComplete(b *testing.B) {
	for _, wires := range []int{10, 40, 200, 1000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p, err := Complete(opened(b, wires))
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(p.s.judgements), "judgements")
				b.ReportMetric(float64(len(p.Choices)), "choices")
			}
		})
	}
}

// BenchmarkExplain sizes a harness and explains every choice: what the command
// size does. In seconds on a quiet machine of two cores (2026-11):
//
//	open wires      10     40    200   1 000
//	Complete      0.03   0.10   0.30    1.0
//	Explain       0.02   0.16   0.85    4.3
//
// A chain of 1 000 open wires is chosen in 1.6 s; its explanation takes some 50 s,
// since every wire of the trunk is judged by itself.
func BenchmarkExplain(b *testing.B) {
	for _, wires := range []int{10, 40, 200, 1000} {
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p, err := Complete(opened(b, wires))
				if err == nil {
					err = p.Explain()
				}
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(p.s.judgements), "judgements")
			}
		})
	}
}

// BenchmarkNothingOpen is what sizing costs a design that gives everything.
func BenchmarkNothingOpen(b *testing.B) {
	d := buildtest.Design(b, synth.YAML(40, 1))
	for b.Loop() {
		if p, err := Complete(d); p != nil || err != nil {
			b.Fatal("the synthetic harness leaves something open", err)
		}
	}
}
