package derivation

import "math"

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
	case x.formula == "":
	case x.carries != nil:
		s = x.carries.restsOn()
	default:
		s = x.byParts()
	}
	x.sure = &s
	return s
}

// byParts shares a value out to those of its formula by how much each moves it: of a sum
// by its terms, of a product to all factors alike.
func (x *value) byParts() (s shares) {
	values := make([]float64, len(x.from))
	for i, y := range x.from {
		values[i] = y.v
	}
	whole, total := evaluate(x.formula, values), 0.0
	moves := make([]float64, len(x.from))
	for i, y := range x.from {
		const little = 1e-6
		values[i] = y.v * (1 + little)
		moves[i] = math.Abs(evaluate(x.formula, values)-whole) / little
		values[i] = y.v
		total += moves[i]
	}
	if !(total > 0) || math.IsInf(total, 0) {
		return shares{onComputed: 1}
	}
	for i, y := range x.from {
		if moves[i] == 0 {
			continue
		}
		for k, part := range y.restsOn() {
			s[k] += part * moves[i] / total
		}
	}
	return s
}

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
