package derivation

import (
	"cmp"
	"math"
	"slices"
)

// shares are how much of a value rests on what, 0..1 each, together 1.
type shares [onKinds]float64

// What a value rests on.
const (
	onPublished = iota
	onDesign
	onComputed // solved, or physics
	onMemory
	onNothing
	onKinds
)

var onWords = [onKinds]string{"published", "your design", "computed", "from memory", "without a source"}

func (s *shares) unsure() float64 { return s[onMemory] + s[onNothing] }

// restsOn is what a value rests on: as the value that carries it, else by its parts.
func (x *value) restsOn() shares {
	if x.sure != nil {
		return *x.sure
	}
	x.sure = &shares{onComputed: 1} // of a value that rests on itself
	s := x.rests
	switch {
	case x.formula == "" && len(x.from) > 0:
		s = x.byChecks()
	case len(x.from) == 0:
	case x.carries != nil:
		s = x.carries.restsOn()
	default:
		s = x.byParts()
	}
	x.sure = &s
	return s
}

// byParts shares a value out to those of its formula.
func (x *value) byParts() (s shares) {
	moves := x.moves()
	if moves == nil {
		return shares{onComputed: 1}
	}
	for i, y := range x.from {
		if moves[i] == 0 {
			continue
		}
		for k, part := range y.restsOn() {
			s[k] += part * moves[i]
		}
	}
	return s
}

// byChecks shares a solved value out to what it was solved from.
func (x *value) byChecks() (s shares) {
	for _, y := range x.from {
		for k, part := range y.restsOn() {
			s[k] += part / float64(len(x.from))
		}
	}
	return s
}

// moves are how much each of its values moves a formula, together 1: of a sum by its terms,
// of a product all factors alike. Nil = nothing moves it.
func (x *value) moves() []float64 {
	const little = 1e-6
	values, moves := make([]float64, len(x.from)), make([]float64, len(x.from))
	for i, y := range x.from {
		values[i] = y.v
	}
	whole, total := x.work(values), 0.0
	for i, y := range x.from {
		moves[i] = math.Abs(y.v)
		if !x.sums {
			values[i] = y.v * (1 + little)
			moves[i] = math.Abs(x.work(values)-whole) / little
			values[i] = y.v
		}
		total += moves[i]
	}
	if !(total > 0) || math.IsInf(total, 0) {
		return nil
	}
	for i := range moves {
		moves[i] /= total
	}
	return moves
}

// unsure are the values from memory or without a source that a value rests on, those that
// move it most first.
func (x *value) unsure() (list []string) {
	weight, on := map[string]float64{}, map[*value]bool{}
	var walk func(y *value, share float64)
	walk = func(y *value, share float64) {
		if len(y.from) == 0 {
			if y.mark == Unsure {
				text := y.label + ": " + y.text()
				if _, known := weight[text]; !known {
					list = append(list, text)
				}
				weight[text] += share
			}
			return
		}
		if on[y] || share < leastShare {
			return
		}
		on[y] = true
		var moves []float64
		if y.formula != "" {
			moves = y.moves()
		}
		for i, z := range y.from {
			switch {
			case y.formula == "":
				walk(z, share/float64(len(y.from)))
			case moves == nil:
			case y.carries == nil:
				walk(z, share*moves[i])
			case y.carries == z:
				walk(z, share)
			default:
				walk(z, 2*leastShare)
			}
		}
		delete(on, y)
	}
	walk(x, 1)
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Compare(weight[b], weight[a]) })
	return list
}

// leastShare is the share of a figure below which what it rests on is not looked at.
const leastShare = 1e-4

// rank orders marks, the least sure last.
var rank = map[Mark]int{Computed: 0, TwoSources: 1, OneSource: 2, Yours: 3, Unsure: 4}

// weakest is the least sure leaf under a value; of equals the first.
func (x *value) weakest() *value {
	var worst *value
	seen := map[*value]bool{}
	var walk func(y *value)
	walk = func(y *value) {
		if seen[y] {
			return
		}
		seen[y] = true
		if len(y.from) == 0 && (worst == nil || rank[y.mark] > rank[worst.mark]) {
			worst = y
		}
		for _, z := range y.from {
			walk(z)
		}
	}
	walk(x)
	return worst
}
