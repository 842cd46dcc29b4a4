package diagnosis

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// drawn is a fault that is put in: what the suspects are, each kind as often, of a size that matters.
func drawn(rng *rand.Rand, suspects []*fault) *fault {
	byKind := map[string][]*fault{}
	var kinds []string
	for _, f := range suspects {
		if f.kind == thinnerWire {
			continue // see TestThinnerWires
		}
		if byKind[f.kind] == nil {
			kinds = append(kinds, f.kind)
		}
		byKind[f.kind] = append(byKind[f.kind], f)
	}
	of := byKind[kinds[rng.IntN(len(kinds))]]
	f := of[rng.IntN(len(of))]
	switch {
	case f.open || !f.free:
		return f
	case f.kind == loadPower && rng.IntN(2) == 0:
		return f.sized(even(rng, 0.3, 0.6))
	case f.kind == loadPower:
		return f.sized(even(rng, 1.6, 3))
	case f.kind == coilBad:
		return f.sized([]float64{0.25, 4}[rng.IntN(2)]) // of half or twice the voltage
	case f.kind == jointOfWire || f.kind == jointAtPlug:
		return f.sized(byLog(rng, 0.2, 5))
	}
	return f.sized(byLog(rng, 0.1, 3))
}

func modelOf(w *world, t *bench.Test, list []*readings.Reading) *model {
	placed, problems := readings.Match(t, list)
	if len(problems) > 0 {
		panic(problems)
	}
	m := newModel(w.c, library.Default().Meter("common"), library.Default())
	m.take(t, placed)
	m.settle()
	return m
}

// tally counts how well explanations name what was put in.
type tally struct{ benches, unseen, first, firstSet, three, cried int }

func sameElements(fs, truth []*fault) bool {
	if len(fs) != len(truth) {
		return false
	}
	for _, f := range truth {
		if !slices.ContainsFunc(fs, func(x *fault) bool { return touches(x, f) }) {
			return false
		}
	}
	return true
}

// touches tells whether two faults are of the same element: of swapped wires one names both.
func touches(x, f *fault) bool {
	if f.kind == swappedWires || x.kind == swappedWires {
		return x.element() == f.element()
	}
	return x.element() == f.element() || x.branch != nil && x.branch.Load != nil && x.branch == f.branch
}

func (y *tally) add(m *model, sound *fit, fits []*fit, truth []*fault) (named bool) {
	y.benches++
	if len(fits) == 0 || fits[0].logP-sound.logP < cryLogP {
		y.unseen++
		return false
	}
	y.cried++
	place, seen := 0, []*fit{}
	for _, f := range fits {
		if slices.ContainsFunc(seen, func(o *fit) bool { return sameElements(o.faults, f.faults) }) {
			continue
		}
		seen = append(seen, f)
		place++
		if sameElements(f.faults, truth) {
			if place == 1 {
				y.first++
				named = true
			}
			if place <= 3 {
				y.three++
			}
			if place == 1 || alike(fits[0], f) {
				y.firstSet++
				named = true
			}
			break
		}
	}
	return named
}

const cryLogP = 3.0

func TestTry(t *testing.T) {
	class := library.Default().Meter("common")
	for _, name := range []string{"fen-runner", "hay-wain"} {
		c, test := load(t, name)
		suspects := newModel(c, class, library.Default()).suspects()
		var healthy, one, two tally
		kinds := map[string]*tally{}
		for seed := range uint64(try) {
			rng := rand.New(rand.NewPCG(seed, 1))
			var fs []*fault
			y := &healthy
			if seed%4 > 0 {
				fs, y = append(fs, drawn(rng, suspects)), &one
			}
			if seed%4 == 3 {
				fs, y = append(fs, drawn(rng, suspects)), &two
				if fs[0].branch == fs[1].branch {
					continue
				}
			}
			w := newWorld(c, rng, fs...)
			list := w.read(test, newGauge(rng, class, apart), func(*bench.Section) bool { return true })
			m := modelOf(w, test, list)
			sound, fits := m.explain()
			ok := y.add(m, sound, fits, fs)
			if y == &healthy {
				if fits[0].logP-sound.logP > 0 {
					t.Logf("healthy %d: %.1f %s", seed, fits[0].logP-sound.logP, show(fits[0].faults))
				}
				continue
			}
			if y == &one {
				if kinds[fs[0].kind] == nil {
					kinds[fs[0].kind] = &tally{}
				}
				kinds[fs[0].kind].add(m, sound, fits, fs)
			}
			if !ok && (y == &two && seed < 120 || y == &one) {
				out := fmt.Sprintf("seed %d truth %v: sound chi2 %.1f", seed, show(fs), sound.chi2)
				for _, x := range fits[:min(3, len(fits))] {
					out += fmt.Sprintf("\n    %s %.1f chi2 %.1f", show(x.faults), x.logP-sound.logP, x.chi2)
				}
				t.Log(out)
			}
		}
		t.Logf("%s healthy %+v\n one %+v\n two %+v", name, healthy, one, two)
		for k, y := range kinds {
			t.Logf("   %s %+v", k, *y)
		}
	}
}

const try, apart = 240, false

func show(fs []*fault) (s string) {
	for _, f := range fs {
		name := ""
		if f.branch != nil {
			name = f.branch.Name
		}
		s += fmt.Sprintf("[%s %s %.3g open=%v r=%d] ", f.kind, name, f.size, f.open, f.reading)
	}
	return s
}

func BenchmarkExplain(b *testing.B) {
	for _, name := range []string{"fen-runner", "hay-wain", "sedge-sloop"} {
		b.Run(name, func(b *testing.B) {
			c, test := load(b, name)
			suspects := newModel(c, library.Default().Meter("common"), library.Default()).suspects()
			rng := rand.New(rand.NewPCG(7, 1))
			w := newWorld(c, rng, drawn(rng, suspects))
			list := w.read(test, newGauge(rng, library.Default().Meter("common"), false), func(*bench.Section) bool { return true })
			b.ReportMetric(float64(len(list)), "readings")
			b.ResetTimer()
			for range b.N {
				modelOf(w, test, list).explain()
			}
		})
	}
}
