package diagnosis

import (
	"fmt"
	"math/rand/v2"
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

func TestTry(t *testing.T) {
	for _, name := range []string{"fen-runner"} {
		c, test := load(t, name)
		suspects := newModel(c, library.Default().Meter("common"), library.Default()).suspects()
		for seed := range uint64(30) {
			rng := rand.New(rand.NewPCG(seed, 1))
			f := drawn(rng, suspects)
			if seed < 5 {
				f = nil
			}
			var fs []*fault
			if f != nil {
				fs = append(fs, f)
			}
			w := newWorld(c, rng, fs...)
			list := w.read(test, newGauge(rng, library.Default().Meter("common"), false), func(*bench.Section) bool { return true })
			m := modelOf(w, test, list)
			sound, fits := m.explain()
			out := fmt.Sprintf("seed %d truth %v: n=%d sound %.1f chi2 %.1f", seed, show(fs), len(m.sensors), sound.logP, sound.chi2)
			for _, x := range fits[:min(3, len(fits))] {
				out += fmt.Sprintf("\n    %s %.1f chi2 %.1f", show(x.faults), x.logP-sound.logP, x.chi2)
			}
			t.Log(out)
		}
	}
}

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
