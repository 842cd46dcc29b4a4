package together

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"fusewright/harness/design"
)

// bruteForce tries every subset.
func bruteForce(amps []float64, capacityA float64) []Set {
	var out []Set
	sum := func(s Set) (total float64) {
		for i, a := range amps {
			if s.Has(i) {
				total += a
			}
		}
		return total
	}
	for s := Set(0); s < 1<<len(amps); s++ {
		maximal := sum(s) <= capacityA+slackA
		for i := range amps {
			maximal = maximal && (s.Has(i) || sum(s|1<<i) > capacityA+slackA)
		}
		if maximal {
			out = append(out, s)
		}
	}
	return out
}

// TestSetsAgainstBruteForce on random accessories, whole numbers among them so
// that sums meet the capacity exactly.
func TestSetsAgainstBruteForce(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for round := range 400 {
		amps := make([]float64, random.Intn(13))
		total := 0.0
		for i := range amps {
			amps[i] = 8 * random.Float64() * random.Float64()
			if round%2 == 0 {
				amps[i] = float64(random.Intn(5))
			}
			total += amps[i]
		}
		capacity := total * 1.1 * random.Float64()
		if round%2 == 0 {
			capacity = math.Round(capacity)
		}
		got, complete := MaximalSets(amps, capacity, MostSets)
		want := bruteForce(amps, capacity)
		sorted := slices.Clone(got)
		slices.Sort(sorted)
		if !complete || !slices.Equal(sorted, want) {
			t.Fatalf("%v in %.3f A: %b, want %b", amps, capacity, sorted, want)
		}
	}
}

func TestSetEdges(t *testing.T) {
	cases := []struct {
		name     string
		amps     []float64
		capacity float64
		want     []Set
		complete bool
	}{
		{"nothing to choose", nil, 5, []Set{0}, true},
		{"the vehicle alone asks too much", []float64{1, 2}, -0.1, nil, true},
		{"no accessory fits", []float64{3, 4}, 2, []Set{0}, true},
		{"all fit, exactly", []float64{0.1, 0.2, 0.3}, 0.6, []Set{0b111}, true},
		{"two of three, important first", []float64{4, 3, 3}, 7, []Set{0b011, 0b101, 0b110}, true},
		{"no current is no reason to leave it off", []float64{5, 0}, 4, []Set{0b10}, true},
		{"too many to tell apart", make([]float64, 65), 4, nil, false},
	}
	for _, c := range cases {
		got, complete := MaximalSets(c.amps, c.capacity, MostSets)
		if !slices.Equal(got, c.want) || complete != c.complete {
			t.Errorf("%s: %b %v, want %b %v", c.name, got, complete, c.want, c.complete)
		}
	}
	if got, complete := MaximalSets([]float64{1, 1, 1, 1}, 2, 3); len(got) != 3 || complete {
		t.Errorf("six sets cut at three: %d, complete %v", len(got), complete)
	}
}

// items makes loads from name, current, rank and criticality.
func items(list ...*Item) []*Item {
	byImportance(list)
	return list
}

func item(name string, amps float64, sign design.Sign, priority int, critical bool) *Item {
	l := &design.Load{Common: design.Common{Name: name}, Sign: sign, Priority: priority, Critical: critical}
	i := &Item{Name: name, Loads: []*design.Load{l}, CurrentA: amps, Critical: critical}
	i.Rank, i.Stated = Rank(l)
	i.kept = !GivenUp(l)
	return i
}

func names(list []*Item) []string {
	out := []string{}
	for _, i := range list {
		out = append(out, i.Name)
	}
	return out
}

func TestGiveUp(t *testing.T) {
	lamp := item("lamp", 4, design.SignLamp, 0, true)
	grips := item("grips", 3, design.SignHeater, 0, false)
	seat := item("seat", 2, design.SignHeater, 1, false) // the rider keeps this longest
	phone := item("phone", 1, design.SignSocket, 0, false)
	map1 := item("map", 0.5, design.SignElectronics, 0, false)
	on := items(phone, grips, lamp, seat, map1)
	if got := names(on); !slices.Equal(got, []string{"lamp", "seat", "map", "phone", "grips"}) {
		t.Fatalf("order %v", got)
	}
	cases := []struct {
		name  string
		overA float64
		want  []string
		left  float64
	}{
		{"nothing missing", 0, []string{}, 0},
		{"comfort goes first", 2.5, []string{"grips"}, 0},
		{"exactly", 3, []string{"grips"}, 0},
		{"one more", 3.2, []string{"grips", "phone"}, 0},
		{"the small one is not needed beside the large", 5.4, []string{"grips", "phone", "seat"}, 0},
		{"all but the critical", 6.5, []string{"grips", "phone", "map", "seat"}, 0},
		{"critical ones stay on", 7, []string{"grips", "phone", "map", "seat"}, 0.5},
	}
	for _, c := range cases {
		off, left := giveUp(on, c.overA)
		if !slices.Equal(names(off), c.want) || math.Abs(left-c.left) > 1e-9 {
			t.Errorf("%s: %v, %.2f A left; want %v, %.2f A", c.name, names(off), left, c.want, c.left)
		}
	}
}

// A fan behind the cabin's switch does not come back without the cabin.
func TestGiveUpWhatHangsOnIt(t *testing.T) {
	cabin, fan := item("cabin", 5, design.SignLamp, 1, false), item("fan", 0.5, design.SignMotor, 1, false)
	fan.needs = []*Item{cabin}
	off, left := giveUp(items(fan, cabin), 4.8)
	if got := names(off); !slices.Equal(got, []string{"fan", "cabin"}) || left != 0 {
		t.Errorf("off %v, %g A left", got, left)
	}
}

// TestSwitchableAgainstBruteForce on random items, each of which may hang on an earlier one.
func TestSwitchableAgainstBruteForce(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 200 {
		p, needs := &Plan{}, []Set{}
		amps := make([]float64, 1+random.Intn(8))
		for i := range amps {
			amps[i] = float64(random.Intn(5))
			p.Items = append(p.Items, &Item{})
			needs = append(needs, 0)
			if i > 0 && random.Intn(2) == 0 {
				on := random.Intn(i)
				p.Items[i].needs = append([]*Item{p.Items[on]}, p.Items[on].needs...)
				needs[i] = needs[on] | 1<<on
			}
		}
		capacity := float64(random.Intn(12))
		fits := func(s Set) bool {
			sum, whole := 0.0, true
			for i, a := range amps {
				if s.Has(i) {
					sum, whole = sum+a, whole && needs[i]&^s == 0
				}
			}
			return whole && sum <= capacity
		}
		var want []Set
		for s := Set(0); s < 1<<len(amps); s++ {
			full := fits(s)
			for more := Set(1); full && more < 1<<len(amps); more++ {
				full = more&s != 0 || !fits(s|more)
			}
			if full {
				want = append(want, s)
			}
		}
		sets, _ := MaximalSets(amps, capacity, MostSets)
		got := p.switchable(sets, amps, capacity)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("%v, needs %b, in %g A: %b, want %b", amps, needs, capacity, got, want)
		}
	}
}

// TestGiveUpIsEnoughAndNoMore on random loads: never a critical one, enough
// unless all others are off, and none that could stay on.
func TestGiveUpIsEnoughAndNoMore(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	for range 500 {
		var list []*Item
		free := 0.0
		for range 1 + random.Intn(8) {
			i := item("", 0.1+5*random.Float64(), design.SignPump, random.Intn(4), random.Intn(2) == 0)
			if !i.Critical {
				free += i.CurrentA
			}
			list = append(list, i)
		}
		over := 10 * random.Float64()
		off, left := giveUp(items(list...), over)
		sum := 0.0
		for _, i := range off {
			sum += i.CurrentA
			if i.Critical {
				t.Fatal("a critical load is given up")
			}
		}
		if math.Abs(left-math.Max(over-free, 0)) > 1e-6 {
			t.Fatalf("%.4f A left of %.4f A over %.4f A that may go", left, over, free)
		}
		for _, i := range off {
			if left == 0 && sum-i.CurrentA > over+1e-6 {
				t.Fatalf("%.3f A of %.3f A could stay on", i.CurrentA, sum)
			}
		}
	}
}

// BenchmarkTwenty: twenty like accessories, ten of which fit, have the most sets
// there can be (184 756); unlike ones have fewer.
func BenchmarkTwenty(b *testing.B) {
	alike, unlike := make([]float64, 20), make([]float64, 20)
	random := rand.New(rand.NewSource(1))
	for i := range alike {
		alike[i], unlike[i] = 1, 0.2+6*random.Float64()
	}
	b.Run("alike", func(b *testing.B) { benchmarkSets(b, alike, 10) })
	b.Run("unlike", func(b *testing.B) { benchmarkSets(b, unlike, 30) })
}

func benchmarkSets(b *testing.B, amps []float64, capacityA float64) {
	var sets []Set
	for b.Loop() {
		sets, _ = MaximalSets(amps, capacityA, MostSets)
	}
	b.ReportMetric(float64(len(sets)), "sets")
}
