package together

import (
	"math"
	"math/bits"
	"slices"
	"sort"

	"fusewright/harness/design"
)

// Set is a choice among at most MostItems things: bit i stands for thing i.
type Set uint64

// MostItems is how many things a Set can tell apart.
const MostItems = 64

// Has tells whether thing i is in the set.
func (s Set) Has(i int) bool { return s&(1<<i) != 0 }

// Len is how many things are in the set.
func (s Set) Len() int { return bits.OnesCount64(uint64(s)) }

// slackA is what rounding may add to a sum of currents.
const slackA = 1e-9

// MaximalSets finds every set of currents whose sum a capacity carries and to
// which no further one can be added. Sets come in descending order of their
// first members, so that one with thing 0 stands before those without. There
// are at most most of them; complete says whether that was all. A capacity
// below zero carries nothing: no set, complete. Currents are not negative.
//
// The search decides thing by thing from the largest current down. A branch ends
// as soon as even all that is left cannot push the smallest refused thing out of
// the remaining room; every other branch leads to at least one maximal set (put
// in whatever fits: if something is left over, it is smaller than all that was
// refused), so the work is proportional to the number of sets found.
func MaximalSets(amps []float64, capacityA float64, most int) (sets []Set, complete bool) {
	if capacityA < 0 || math.IsNaN(capacityA) {
		return nil, true
	}
	if len(amps) > MostItems {
		return nil, false
	}
	s := &search{capacityA: capacityA + slackA, most: most, complete: true}
	s.prepare(amps)
	s.decide(0, 0, 0, math.Inf(1))
	sort.Slice(s.sets, func(i, j int) bool {
		return bits.Reverse64(uint64(s.sets[i])) > bits.Reverse64(uint64(s.sets[j]))
	})
	return s.sets, s.complete
}

type search struct {
	capacityA float64
	most      int
	amps      []float64 // descending
	bit       []Set     // of each
	restA     []float64 // sum from each on
	restSet   []Set
	sets      []Set
	complete  bool
}

func (s *search) prepare(amps []float64) {
	order := make([]int, len(amps))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return amps[order[i]] > amps[order[j]] })
	n := len(amps)
	s.restA, s.restSet = make([]float64, n+1), make([]Set, n+1)
	for _, i := range order {
		s.amps = append(s.amps, math.Max(amps[i], 0))
		s.bit = append(s.bit, 1<<i)
	}
	for i := n - 1; i >= 0; i-- {
		s.restA[i] = s.restA[i+1] + s.amps[i]
		s.restSet[i] = s.restSet[i+1] | s.bit[i]
	}
}

// decide goes on from thing i with a sum already chosen and the smallest refused.
func (s *search) decide(i int, set Set, sumA, refusedA float64) {
	all := sumA + s.restA[i]
	switch {
	case !s.complete, all+refusedA <= s.capacityA:
		return // full, or the refused one would still fit
	case all <= s.capacityA:
		s.add(set | s.restSet[i]) // leaving any out would leave room for it
		return
	}
	if with := sumA + s.amps[i]; with <= s.capacityA {
		s.decide(i+1, set|s.bit[i], with, refusedA)
	}
	s.decide(i+1, set, sumA, s.amps[i])
}

func (s *search) add(set Set) {
	if len(s.sets) >= s.most {
		s.complete = false
		return
	}
	s.sets = append(s.sets, set)
}

// byPositions are the largest sets with every handle in one position; what hangs on positions
// alone is on in them, whatever else is. What a set has on is not all on in another one.
func (p *Plan) byPositions(amps []float64, capacityA float64, most int) (sets []Set, complete bool) {
	settings := p.settings()
	if settings == nil {
		return MaximalSets(amps, capacityA, most)
	}
	complete = true
	for _, at := range settings {
		some, of, leftA := []float64{}, []int{}, capacityA
		for i, a := range amps {
			switch {
			case at.on.Has(i):
				leftA -= a
			case !at.shut.Has(i):
				some, of = append(some, a), append(of, i)
			}
		}
		if at.on != 0 && leftA < 0 && leftA >= -slackA {
			leftA = 0
		}
		found, all := MaximalSets(some, leftA, most-len(sets))
		complete = complete && all
		for _, f := range found {
			s := at.on
			for k, i := range of {
				if f.Has(k) {
					s |= 1 << i
				}
			}
			sets = append(sets, s)
		}
	}
	return p.largest(sets), complete
}

// setting is what all handles do in one position each.
type setting struct {
	hands    []Hand
	shut, on Set // items that need another position; those that need nothing but these
}

// mostSettings is how many ways of setting all handles are gone through.
const mostSettings = 1 << 10

// settings are the ways of setting all handles that differ in what they do; nil where no item
// needs a position, and where there are too many.
func (p *Plan) settings() []setting {
	list, met := []setting{{}}, map[design.Part]bool{}
	for _, item := range p.Items {
		for _, h := range item.hands {
			if h.Position == "" || met[h.Part] {
				continue
			}
			met[h.Part] = true
			var next []setting
			for _, position := range p.words(h) {
				for _, s := range list {
					s = p.with(append(slices.Clip(s.hands), Hand{h.Part, position}))
					if !slices.ContainsFunc(next, func(o setting) bool { return o.shut == s.shut && o.on == s.on }) {
						next = append(next, s)
					}
				}
			}
			if list = next; len(list) > mostSettings {
				return nil
			}
		}
	}
	if len(met) == 0 {
		return nil
	}
	return list
}

// with is the setting of some handles.
func (p *Plan) with(hands []Hand) setting {
	s := setting{hands: hands}
	for i, x := range p.Items[:min(len(p.Items), MostItems)] {
		if slices.ContainsFunc(x.hands, func(h Hand) bool { return slices.ContainsFunc(hands, h.against) }) {
			s.shut |= 1 << i
		}
		if len(x.hands) > 0 && !slices.ContainsFunc(x.hands, func(h Hand) bool { return !slices.Contains(hands, h) }) {
			s.on |= 1 << i
		}
	}
	return s
}

// mostCompared is how many sets are held against each other.
const mostCompared = 1 << 10

// largest leaves out what is on in another set too, the first of equal ones stays; in the
// order of MaximalSets.
func (p *Plan) largest(sets []Set) (out []Set) {
	loads := func(s Set) (list []*design.Load) {
		for _, item := range p.Members(s) {
			list = append(list, item.Loads...)
		}
		return list
	}
	sort.SliceStable(sets, func(i, j int) bool { return bits.Reverse64(uint64(sets[i])) > bits.Reverse64(uint64(sets[j])) })
	sets = slices.Compact(sets)
	if len(sets) > mostCompared {
		return sets
	}
	within := func(a, b []*design.Load) bool {
		return !slices.ContainsFunc(a, func(l *design.Load) bool { return !slices.Contains(b, l) })
	}
	on := make([][]*design.Load, len(sets))
	for i, s := range sets {
		on[i] = loads(s)
	}
	for i, s := range sets {
		if !slices.ContainsFunc(slices.Concat(on[:i], on[i+1:]), func(o []*design.Load) bool {
			return within(on[i], o) && !within(o, on[i])
		}) && !slices.ContainsFunc(on[:i], func(o []*design.Load) bool { return within(on[i], o) }) {
			out = append(out, s)
		}
	}
	return out
}

// switchable are the sets that hands can make: what stands behind the switch of another
// item is on with that one only. They are what is left of all the sets without the rest,
// where nothing more fits with what it needs.
func (p *Plan) switchable(sets []Set, amps []float64, capacityA float64) []Set {
	needs, foes, any := make([]Set, len(p.Items)), make([]Set, len(p.Items)), false
	for i, item := range p.Items {
		for j, other := range p.Items {
			if j < MostItems && item.against(other) {
				foes[i] |= 1 << j
			}
			if j < MostItems && slices.Contains(item.needs, other) {
				needs[i], any = needs[i]|1<<j, true
			}
		}
	}
	if !any {
		return sets
	}
	sum := func(s Set) (sumA float64) {
		for i, a := range amps {
			if s.Has(i) {
				sumA += a
			}
		}
		return sumA
	}
	var out []Set
	seen := map[Set]bool{}
	for _, s := range sets {
		whole := s
		for i := range needs {
			if s.Has(i) && needs[i]&^s != 0 {
				whole &^= 1 << i
			}
		}
		full := true
		for i := range needs {
			full = full && (whole.Has(i) || whole&foes[i] != 0 || sum(whole|needs[i]|1<<i) > capacityA+slackA)
		}
		if full && !seen[whole] {
			seen[whole], out = true, append(out, whole)
		}
	}
	return out
}
