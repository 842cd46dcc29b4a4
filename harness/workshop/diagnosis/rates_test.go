package diagnosis

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

var (
	benches = flag.Int("benches", 20, "simulated benches with faults of a whole run, and as many healthy ones")
	apart   = flag.Bool("apart", false, "the meter's share of error differs from reading to reading")
	misses  = flag.Bool("misses", false, "tell of benches that are not named")
)

// Rates as measured, which docs/diagnosis.md gives with their counts; that of healthy ones is the aim.
const (
	quietRate      = 0.99
	oneFirstRate   = 0.973
	oneInThreeRate = 0.986
	twoFirstRate   = 0.917
	twoInThreeRate = 0.954
	bothFirstRate  = 0.957 // of two that one fault could not stand for

	significance = 0.01
)

// drawn is a fault that is put in: each kind as often, in any place of the harness, of a size that matters
// to a fitter.
func drawn(rng *rand.Rand, suspects []*fault) *fault {
	byKind := map[string][]*fault{}
	var kinds []string
	for _, f := range suspects {
		if f.kind == thinnerWire {
			continue // in a harness of a few metres a size too thin is milliohms, which a two-wire meter does not tell
		}
		if byKind[f.kind] == nil {
			kinds = append(kinds, f.kind)
		}
		byKind[f.kind] = append(byKind[f.kind], f)
	}
	kind := byKind[kinds[rng.IntN(len(kinds))]]
	f := kind[rng.IntN(len(kind))]
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

// tally counts how well faults are named.
type tally struct {
	benches int
	silent  int // the readings of the sheet do not tell of it, whatever the meter: by less than tellable
	first   int // all elements named, alone and first
	inSet   int // named first, or together with what the readings cannot tell from it
	three   int // among the first three
	inThree int // so, sets of what cannot be told apart counted once
	asOne   int // of two faults: one would give the readings as well, whatever the meter: by less than tellable
	named   int // of those, named first with what cannot be told from them
	ofThree int // of those, among the first three
	cried   int // something said to be wrong
}

func (y *tally) String() string {
	told := y.benches - y.silent
	share := func(n int) string { return fmt.Sprintf("%d (%.1f %%)", n, 100*float64(n)/max(1, float64(told))) }
	text := fmt.Sprintf("%d benches, %d of them silent; of the other %d: first alone %s, first with its like %s, among three alone %s, among three with their like %s; cried %d",
		y.benches, y.silent, told, share(y.first), share(y.inSet), share(y.three), share(y.inThree), y.cried)
	if y.asOne > 0 {
		told -= y.asOne
		text += fmt.Sprintf("; of %d one fault would give the readings, of the other %d: first with its like %s, among three with their like %s",
			y.asOne, told, share(y.inSet-y.named), share(y.inThree-y.ofThree))
	}
	return text
}

// tellable is from how many standard deviations on the readings of a sheet tell of a fault: its
// expected effect on all of them, before any meter errs.
const tellable = 4.0

// silent tells whether the readings could not tell of faults even when nothing else were off.
func (m *model) silent(truth []*fault) bool {
	sound := m.weigh(m.solved(nil))
	for i := range truth { // each of them must show beside the other
		others := slices.Delete(slices.Clone(truth), i, i+1)
		base, with := m.solved(nil, others...), m.solved(nil, truth...)
		d := make([]float64, len(m.sensors))
		for k := range d {
			d[k] = with.pred[k] - base.pred[k]
		}
		if sound.product(d, d) < tellable*tellable {
			return true
		}
	}
	return false
}

// asOne tells whether some one fault would give the readings of two, as near as the meter can tell, even when
// nothing else were off. What is read in truth has no part in it.
func (m *model) asOne(truth []*fault) bool {
	exact := *m
	exact.sensors = nil
	of := m.solved(nil, truth...)
	for i, s := range m.sensors {
		as := *s
		as.y = of.pred[i]
		exact.sensors = append(exact.sensors, &as)
	}
	exact.alone = map[int][]float64{}
	sound := exact.weigh(exact.solved(nil))
	return slices.ContainsFunc(exact.worked(sound, sound, exact.suspects(), refined), func(f *fit) bool { return f.tried && f.chi2 < tellable*tellable })
}

// add counts a bench with faults.
func (y *tally) add(m *model, d *Diagnosis, list []*candidate, truth []*fault) (named bool) {
	y.benches++
	if m.silent(truth) {
		y.silent++
		return true
	}
	one := len(truth) == 2 && m.asOne(truth)
	if one {
		y.asOne++
	}
	if !d.Wrong {
		return false
	}
	y.cried++
	var groups [][]*candidate
	for place, c := range list {
		if g := slices.IndexFunc(groups, func(g []*candidate) bool { return alike(g[0].fit, c.fit) }); g >= 0 {
			groups[g] = append(groups[g], c)
		} else {
			groups = append(groups, []*candidate{c})
		}
		if !sameFaultElements(c.faults, truth) {
			continue
		}
		at := slices.IndexFunc(groups, func(g []*candidate) bool { return slices.Contains(g, c) })
		if place == 0 {
			y.first++
		}
		if place < 3 {
			y.three++
		}
		if at == 0 {
			if y.inSet++; one {
				y.named++
			}
		}
		if at < 3 || place < 3 {
			if y.inThree++; one {
				y.ofThree++
			}
		}
		return at == 0
	}
	return false
}

func (y *tally) sum(o tally) {
	y.benches, y.silent, y.first, y.inSet = y.benches+o.benches, y.silent+o.silent, y.first+o.first, y.inSet+o.inSet
	y.three, y.inThree, y.cried = y.three+o.three, y.inThree+o.inThree, y.cried+o.cried
	y.asOne, y.named, y.ofThree = y.asOne+o.asOne, y.named+o.named, y.ofThree+o.ofThree
}

// rounds are the tallies of a run over some designs.
type rounds struct{ healthy, one, two tally }

// rated simulates benches of a design: healthy ones and, of three with faults, two with one and one with two.
func rated(t testing.TB, name string, count int, keep func(*bench.Section) bool) (out rounds) {
	class := library.Default().Meter(UsualMeter)
	c, test := load(t, name)
	suspects := newModel(c, class, library.Default()).suspects()
	one := func(seed uint64, rng *rand.Rand, faults ...*fault) (*Diagnosis, *model, []*candidate) {
		w := newWorld(c, rng, faults...)
		d, m, list, err := of(c, test, &readings.File{Readings: w.read(test, newGauge(rng, class, *apart), keep)})
		if err != nil {
			t.Fatalf("%s, seed %d: %v", name, seed, err)
		}
		return d, m, list
	}
	for seed := range uint64(count) {
		rng := rand.New(rand.NewPCG(seed, 2))
		d, _, list := one(seed, rng)
		out.healthy.benches++
		if d.Wrong {
			out.healthy.cried++
			if *misses {
				t.Logf("%s healthy %d: sound %.3g, failed %d, %s", name, seed, d.Sound, d.Failed, told(list))
			}
		}
		rng = rand.New(rand.NewPCG(seed, 3))
		truth, y := []*fault{drawn(rng, suspects)}, &out.one
		if seed%3 == 2 {
			for y = &out.two; len(truth) < 2; {
				if f := drawn(rng, suspects); f.branch != truth[0].branch && f.kind != swappedWires && truth[0].kind != swappedWires {
					truth = append(truth, f)
				} else if truth[0].kind == swappedWires {
					truth[0] = drawn(rng, suspects)
				}
			}
		}
		d, m, list := one(seed, rng, truth...)
		if named := y.add(m, d, list, truth); !named && *misses {
			t.Logf("%s %d: %s sound %.3g failed %d\n%s", name, seed, show(truth), d.Sound, d.Failed, told(list))
		}
	}
	return out
}

func told(list []*candidate) (text string) {
	for _, c := range list[:min(4, len(list))] {
		text += fmt.Sprintf("    %.3f %s chi2 %.1f\n", c.share, show(c.faults), c.chi2)
	}
	return text
}

func show(fs []*fault) (s string) {
	for _, f := range fs {
		name := fmt.Sprint("reading ", f.reading)
		if f.branch != nil {
			name = f.branch.Name
		}
		s += fmt.Sprintf("[%s %s %.3g open=%v] ", f.kind, name, f.size, f.open)
	}
	return s
}

// harnessOnly leaves out what a running engine and chargers give: those readings are held against their
// bounds alone.
func harnessOnly(s *bench.Section) bool { return s.Kind != bench.Live && s.Kind != bench.Charging }

// Simulated benches: what is wrong is named, and nothing is where nothing is. The world that is read
// differs from the design within the bounds that the bench test allows; the meter errs as its class says.
// A small share by default; the whole by -benches. It fails where a count is by the binomial law
// significantly below the rate that was measured.
func TestRates(t *testing.T) {
	var all rounds
	var lock sync.Mutex
	t.Run("designs", func(t *testing.T) {
		for _, of := range []struct {
			name  string
			share float64
		}{{"fen-runner", 0.7}, {"hay-wain", 0.25}, {"sedge-sloop", 0.05}} {
			t.Run(of.name, func(t *testing.T) {
				t.Parallel()
				r := rated(t, of.name, int(math.Ceil(float64(*benches)*of.share)), harnessOnly)
				t.Logf("\n  healthy %v\n  one fault %v\n  two faults %v", &r.healthy, &r.one, &r.two)
				lock.Lock()
				defer lock.Unlock()
				all.healthy.sum(r.healthy)
				all.one.sum(r.one)
				all.two.sum(r.two)
			})
		}
	})
	seen, both := all.one.benches-all.one.silent, all.two.benches-all.two.silent
	for _, x := range []struct {
		what    string
		got, of int
		rate    float64
	}{
		{"nothing cried on healthy ones", all.healthy.benches - all.healthy.cried, all.healthy.benches, quietRate},
		{"one fault named first, with what cannot be told from it", all.one.inSet, seen, oneFirstRate},
		{"one fault among the first three", all.one.inThree, seen, oneInThreeRate},
		{"two faults named first, with what cannot be told from them", all.two.inSet, both, twoFirstRate},
		{"two faults named so where one could not stand for both", all.two.inSet - all.two.named, both - all.two.asOne, bothFirstRate},
		{"two faults among the first three", all.two.inThree, both, twoInThreeRate},
	} {
		if chance := (distuv.Binomial{N: float64(x.of), P: x.rate}).CDF(float64(x.got)); x.of > 0 && chance < significance {
			t.Errorf("%s: %d of %d; by the rate of %.1f %% so few or fewer come with a chance of %.2g", x.what, x.got, x.of, 100*x.rate, chance)
		}
	}
	t.Logf("all\n  healthy %v\n  one fault %v\n  two faults %v", &all.healthy, &all.one, &all.two)
}

func BenchmarkDiagnosis(b *testing.B) {
	for _, name := range []string{"fen-runner", "hay-wain", "sedge-sloop"} {
		b.Run(name, func(b *testing.B) {
			class := library.Default().Meter(UsualMeter)
			c, test := load(b, name)
			rng := rand.New(rand.NewPCG(7, 1))
			w := newWorld(c, rng, drawn(rng, newModel(c, class, library.Default()).suspects()))
			file := &readings.File{Readings: w.read(test, newGauge(rng, class, false), func(*bench.Section) bool { return true })}
			b.ResetTimer()
			for range b.N {
				if _, err := Of(c, test, file); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(file.Readings)), "readings")
		})
	}
}
