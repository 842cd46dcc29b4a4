package diagnosis

import (
	"math"
	"runtime"
	"slices"
	"sync"
)

// How far explanations are sought.
const (
	refined     = 10   // single faults that are worked out on the whole network
	paired      = 3    // of them, of those that move the readings alike one, that get a second one
	pairs       = 8    // second faults that are worked out, of each
	mostAlike   = 40   // at most, where many are about as likely
	oneWayShare = 0.99 // of what they move, as the square of a cosine, from where two faults move the readings alike
	promised    = 60   // that break or join, of which it is solved what they do beside another
	worthLogP   = 2    // by how much more than its odds a second fault must better what the other explains alone
	alikeLogP   = 2    // by the natural logarithm
	swaps       = 2    // times that either fault of the best pair is given up for every other
	poorLogP    = 30   // and from how far below a sound circuit's evidence, for each fault of it
	poorSigma   = 2.5  // from how many standard deviations of χ² on an explanation leaves something
)

// explain lists explanations, likeliest first; the first return is the sound circuit's. Two faults are
// tried where a reading failed or one fault is likelier than none: what a second one has to explain is
// weighed by its odds and the cost of its size, as the first is.
func (m *model) explain(failed bool) (sound *fit, list []*fit) {
	sound = m.weigh(m.solved(nil))
	m.soundPred = sound.pred
	if sound.chol == nil {
		return sound, nil
	}
	m.expected = -0.5*float64(len(m.sensors)) - 0.5*sound.logDet
	suspects := m.suspects()
	list = append(m.worked(sound, sound, suspects, refined), m.misread(sound)...)
	m.singles = len(list)
	best(list)
	if len(list) > 0 && (failed || list[0].logP > sound.logP) {
		list = m.second(sound, list, suspects)
	}
	return sound, list
}

// second adds explanations by two faults, of which each explains what the other leaves: the best single ones
// each with every other beside it, then the best pair with either of its faults given up for every other,
// until none is better; then what stands for the one and what stands for the other together.
func (m *model) second(sound *fit, list []*fit, suspects []*fault) []*fit {
	known, alone := map[[2]int]bool{}, map[int]float64{} // known tells of those weighed which are listed
	for _, f := range list {
		if f.tried {
			alone[f.key()[1]] = f.logP
		}
	}
	add := func(fits ...*fit) {
		for _, f := range fits {
			idle := false
			for i, x := range f.faults {
				other, known := alone[f.faults[1-i].id()]
				idle = idle || known && f.logP < other+math.Log(x.odds)+worthLogP
			}
			if k := f.key(); !known[k] {
				if known[k] = !idle; !idle {
					list = append(list, f)
				}
			}
		}
	}
	beside := func(base *fit) { add(append(m.worked(sound, base, suspects, pairs), m.misread(base)...)...) }
	var bases []*fit
	for _, f := range list {
		if len(bases) < paired && f.tried && f.chol != nil && f.faults[0].kind != wrongReading && !slices.ContainsFunc(bases, func(b *fit) bool { return m.oneWay(sound, b, f) }) {
			bases = append(bases, f)
		}
	}
	for _, f := range bases {
		beside(f)
	}
	best(list)
	for range swaps {
		top := list[0]
		for _, f := range top.faults {
			if len(top.faults) == 2 && f.kind != wrongReading {
				base, _ := m.at(sound, []*fault{f})
				beside(base)
			}
		}
		if best(list); list[0] == top {
			break
		}
	}
	if top := list[0]; len(top.faults) == 2 {
		var instead [2][]*fault
		for _, f := range list {
			if !f.tried || len(f.faults) != 2 || !alike(f, top) {
				continue
			}
			for i, x := range top.faults {
				if k := slices.IndexFunc(f.faults, func(y *fault) bool { return y.number == x.number }); k >= 0 && f.faults[1-k].number > 0 {
					instead[1-i] = append(instead[1-i], f.faults[1-k])
				}
			}
		}
		for _, a := range instead[0] {
			for _, b := range instead[1] {
				if f := (&fit{faults: []*fault{a, b}}); len(instead[0])*len(instead[1]) <= mostAlike && a.element() != b.element() && !known[f.key()] {
					add(m.refine(sound, f.faults))
				}
			}
		}
	}
	best(list)
	m.pairs = len(known)
	return list
}

// oneWay tells of two explanations that move the readings in the same proportions, or nearly: what one of them
// leaves to a second fault, the other does.
func (m *model) oneWay(sound, a, b *fit) bool {
	x, y := make([]float64, len(m.sensors)), make([]float64, len(m.sensors))
	for i, was := range m.soundPred {
		x[i], y[i] = a.pred[i]-was, b.pred[i]-was
	}
	xy := sound.product(x, y)
	return xy > 0 && xy*xy > oneWayShare*sound.product(x, x)*sound.product(y, y)
}

// key is the same for the same faults; of one it ends with its id.
func (f *fit) key() (k [2]int) {
	k[0] = math.MinInt
	for i, x := range f.faults {
		k[len(k)-1-i] = x.id()
	}
	slices.Sort(k[:])
	return k
}

// id tells suspects and wrong readings apart.
func (f *fault) id() int {
	if f.kind == wrongReading {
		return -1 - f.reading
	}
	return f.number
}

// worked are the suspects on top of a base, the likeliest of them worked out on the whole network.
func (m *model) worked(sound, base *fit, suspects []*fault, most int) []*fit {
	list := m.screen(base, suspects)
	best(list)
	top := math.Inf(-1)
	if len(list) > 0 {
		top = list[0].logP
	}
	var wait sync.WaitGroup
	limit := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, f := range list {
		if i >= most && (i >= mostAlike || f.logP < top-alikeLogP) {
			break
		}
		wait.Go(func() {
			limit <- struct{}{}
			defer func() { <-limit }()
			if g := m.refine(sound, f.faults); g != nil {
				list[i] = g
			}
		})
	}
	wait.Wait()
	best(list)
	return list
}

// poor tells that an explanation leaves more than the meter and a sound circuit do.
func (m *model) poor(f *fit) bool {
	n := float64(len(m.sensors))
	return f.chi2 > n+poorSigma*math.Sqrt(2*n) || f.logP < m.expected-poorLogP*float64(len(f.faults))
}

// toldApart is from which distance, in standard deviations, readings can tell two explanations apart:
// nearer, the wrong one of them agrees better one time in six or oftener.
const toldApart = 2.0

// alike tells whether two explanations expect the same of every reading, as near as the meter can tell,
// and take the same ones for wrong.
func alike(a, b *fit) bool {
	if a.point == nil || b.point == nil || a.chol == nil || !slices.Equal(a.misread(), b.misread()) {
		return false
	}
	d := make([]float64, len(a.pred))
	for i := range d {
		if d[i] = a.pred[i] - b.pred[i]; math.Abs(d[i]) > toldApart*a.scale[i] { // by one reading alone
			return false
		}
	}
	return a.product(d, d) < toldApart*toldApart
}

// misread are the readings that an explanation takes for wrong.
func (f *fit) misread() (list []int) {
	for _, x := range f.faults {
		if x.kind == wrongReading {
			list = append(list, x.reading)
		}
	}
	return list
}
