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

// restsOn is what a value rests on: of a sum each term by its part, of another formula as
// the value that carries it, else as the least sure one.
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
	case onlySums(x.formula):
		s = x.byParts()
	default:
		for i, y := range x.from {
			if of := y.restsOn(); i == 0 || of.unsure() > s.unsure() || of.unsure() == s.unsure() && of[onComputed] < s[onComputed] {
				s = of
			}
		}
	}
	x.sure = &s
	return s
}

func (x *value) byParts() (s shares) {
	total := 0.0
	for _, y := range x.from {
		total += math.Abs(y.v)
	}
	if total == 0 {
		return shares{onComputed: 1}
	}
	for _, y := range x.from {
		for i, part := range y.restsOn() {
			s[i] += part * math.Abs(y.v) / total
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
