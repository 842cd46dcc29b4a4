package together

import (
	"slices"
	"testing"

	"fusewright/harness/design"
)

// Sums meet the capacity to within a billionth of an ampere.
func TestCapacityAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		name     string
		amps     []float64
		capacity float64
		want     []Set
	}{
		{"exactly", []float64{1}, 1, []Set{1}}, {"a rounding below", []float64{1}, 1 - 5e-10, []Set{1}},
		{"more than a rounding below", []float64{1}, 1 - 5e-9, []Set{0}}, {"nothing left over", []float64{3}, 0, []Set{0}},
		{"less than nothing", []float64{3}, -1e-6, nil},
	} {
		if got, complete := MaximalSets(c.amps, c.capacity, MostSets); !slices.Equal(got, c.want) || !complete {
			t.Errorf("%s: %b, want %b", c.name, got, c.want)
		}
	}
}

func TestRanksByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		load   design.Load
		rank   int
		stated bool
	}{
		{"stated", design.Load{Priority: 3, Sign: design.SignLamp}, 3, true}, {"a lamp", design.Load{Sign: design.SignLamp}, 2, false},
		{"a heater", design.Load{Sign: design.SignHeater}, 8, false}, {"any other", design.Load{}, 6, false},
	} {
		if rank, stated := Rank(&c.load); rank != c.rank || stated != c.stated {
			t.Errorf("%s: %d, stated %t", c.name, rank, stated)
		}
	}
}
